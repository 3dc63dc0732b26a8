#include "core/sheet/row_extents.h"

#include <algorithm>
#include <string_view>

#include "core/sheet/row_plan.h"
#include "core/sheet/sketch.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

void widenFor(const Coordinate& coordinate, RowExtents& extents) {
  const std::string figure = signedText(coordinate);
  const std::string_view text = figure;
  const std::size_t point = std::min(text.find('.'), text.size());
  extents.before = std::max(extents.before, figureWidth(text.substr(0, point), 1, kFigureFace));
  extents.after = std::max(extents.after, textWidth(text.substr(point), 1, kFigureFace));
}

void widenFor(const std::string& fraction, RowExtents& extents) {
  if (fraction.empty()) return;
  extents.fraction = std::max(extents.fraction, textWidth("X " + fraction, 1));
}

}  // namespace

RowExtents extentsOf(const SetupTable& table, English english) {
  RowExtents extents;
  for (const TableRow& row : table.rows) {
    widenFor(row.x, extents);
    widenFor(row.y, extents);
    extents.id = std::max(extents.id, textWidth(row.id, 1, Typeface::bold));
    widenFor(row.xFraction, extents);
    widenFor(row.yFraction, extents);
    extents.steps = std::max(extents.steps, row.steps.size());
    for (const MakingStep& step : row.steps) {
      const double label = textWidth(tickLabel(step.kind, english), 1, Typeface::bold);
      extents.tickLabel = std::max(extents.tickLabel, label);
    }
  }
  return extents;
}

std::string tickLabel(StepKind kind, English english) {
  switch (kind) {
    case StepKind::spot:
      return "SPOT";
    case StepKind::drill:
      return "DRILL";
    case StepKind::ream:
      return "REAM";
    case StepKind::bore:
      return "BORE";
    case StepKind::tap:
      return "TAP";
    case StepKind::counterbore:
      return inEnglish("C'BORE", english);
    case StepKind::countersink:
      return inEnglish("C'SINK", english);
    case StepKind::spotface:
      return inEnglish("S'FACE", english);
    case StepKind::mark:
      break;
  }
  return "MARK";
}

}  // namespace inchwright
