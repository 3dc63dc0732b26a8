#include "core/sheet/row_plan.h"

#include <algorithm>

#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kLeastPencil = 8;

}  // namespace

RowPlan planRows(const SheetContent& content, RowShape shape, double figureHeight) {
  RowPlan plan;
  plan.shape = shape;
  plan.figureHeight = figureHeight;
  plan.letter = std::min(content.style.tool(), figureHeight * 0.8);
  const RowExtents& widest = content.rows;
  plan.before = widest.before * figureHeight;
  plan.after = widest.after * figureHeight;
  plan.tickPitch =
      std::max(widest.tickLabel * tickLabelHeight(content.style) + 1.4, 7.6 * content.style.hand);

  // A long id is broken into lines rather than push the figures off the page.
  const double idCap = figureHeight * 3.2;
  plan.idLeft = 2.4;
  plan.idWidth = std::clamp(widest.id * figureHeight, figureHeight * 0.9, idCap);

  const double between = figureHeight * 0.45;
  const double figure = plan.before + plan.after;
  const double fraction =
      hasFractionsBelow(shape) ? 0 : widest.fraction * fractionHeight(content.style);
  double at = plan.idLeft + plan.idWidth + between;
  if (isStacked(shape)) {
    at += textWidth("X", plan.letter, Typeface::bold) + 1.5;
    plan.xPoint = plan.yPoint = at + plan.before;
  } else {
    plan.xPoint = at + plan.before;
    at += figure + between;
    plan.yPoint = at + plan.before;
  }
  at += figure + 2;
  plan.fractions = at;
  if (fraction > 0) at += fraction + 2;
  plan.ticks = at;
  plan.pencil = at + plan.tickPitch * static_cast<double>(widest.steps) + 1.5;
  plan.width = plan.pencil + kLeastPencil;
  return plan;
}

}  // namespace inchwright
