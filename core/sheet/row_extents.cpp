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

std::vector<const HoleStep*> tickedSteps(const HolePlan& plan) {
  std::vector<const HoleStep*> steps = fittingsOf(plan);
  std::erase_if(steps, [](const HoleStep* step) { return step->op == Op::deburr; });
  return steps;
}

RowExtents extentsOf(const SetupTable& table, English english) {
  RowExtents extents;
  for (const TableRow& row : table.rows) {
    widenFor(row.x, extents);
    widenFor(row.y, extents);
    extents.id = std::max(extents.id, textWidth(row.id, 1, Typeface::bold));
    widenFor(row.xFraction, extents);
    widenFor(row.yFraction, extents);
    const std::vector<const HoleStep*> steps = tickedSteps(*row.plan);
    extents.steps = std::max(extents.steps, steps.size());
    for (const HoleStep* step : steps) {
      const double label = textWidth(tickLabel(step->op, english), 1, Typeface::bold);
      extents.tickLabel = std::max(extents.tickLabel, label);
    }
  }
  return extents;
}

std::string tickLabel(Op op, English english) {
  switch (op) {
    case Op::spot:
      return "SPOT";
    case Op::pilot:
      return "PILOT";
    case Op::drill:
      return "DRILL";
    case Op::ream:
      return "REAM";
    case Op::bore:
      return "BORE";
    case Op::tap:
      return "TAP";
    case Op::counterbore:
      return inEnglish("C'BORE", english);
    case Op::countersink:
      return inEnglish("C'SINK", english);
    case Op::spotface:
      return inEnglish("S'FACE", english);
    case Op::deburr:
      return "EDGE";
    case Op::mill:
      return "MILL";
    case Op::press:
      return "PRESS";
    case Op::mark:
      break;
  }
  return "MARK";
}

}  // namespace inchwright
