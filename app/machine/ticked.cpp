#include "app/machine/ticked.h"

#include <algorithm>

#include "core/measure/writing.h"
#include "core/say/done_words.h"

namespace inchwright::app {
namespace {

std::optional<Lettered> named(Length value) {
  const auto figure = readLength(writeDecimal(value, Unit::millimetre) + " mm");
  return figure.ok() ? std::optional(*figure) : std::nullopt;
}

}  // namespace

bool tickedAsItIs(const MadePlace& made, const TableRow& row) {
  const bool x = !made.tickedX || made.tickedX->value == row.x.value;
  const bool y = !made.tickedY || made.tickedY->value == row.y.value;
  return x && y;
}

void noteTicked(MadePlace& made, const TableRow& row) {
  made.tickedX = made.ticks.empty() ? std::nullopt : named(row.x.value);
  made.tickedY = made.ticks.empty() ? std::nullopt : named(row.y.value);
}

bool isAllDone(const MadePlace& made, const TableRow& row) {
  const std::vector<const HoleStep*> steps = fittingsOf(*row.plan);
  return tickedAsItIs(made, row) &&
         std::all_of(steps.begin(), steps.end(),
                     [&](const HoleStep* step) { return isDone(made, *step); });
}

}  // namespace inchwright::app
