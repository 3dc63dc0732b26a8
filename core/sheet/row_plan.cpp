#include "core/sheet/row_plan.h"

#include <algorithm>
#include <string_view>

#include "core/sheet/sketch.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kLeastPencil = 8;

/// The widest of all figures on both sides of the point.
void measureFigures(const SetupTable& table, RowPlan& plan) {
  for (const TableRow& row : table.rows) {
    for (const Coordinate* coordinate : {&row.x, &row.y}) {
      const std::string text = signedText(*coordinate);
      const std::size_t point = std::min(text.find('.'), text.size());
      const std::string_view view = text;
      const double whole = figureWidth(view.substr(0, point), plan.figureHeight, kFigureFace);
      plan.before = std::max(plan.before, whole);
      plan.after =
          std::max(plan.after, textWidth(view.substr(point), plan.figureHeight, kFigureFace));
    }
  }
}

double widestFraction(const SheetContent& content) {
  double widest = 0;
  for (const TableRow& row : content.table.rows) {
    for (const std::string* text : {&row.xFraction, &row.yFraction}) {
      if (text->empty()) continue;
      widest = std::max(widest, textWidth("X " + *text, fractionHeight(content.style)));
    }
  }
  return widest;
}

void measureTicks(const SheetContent& content, RowPlan& plan, double& ticksWidth) {
  std::size_t most = 1;
  for (const TableRow& row : content.table.rows) {
    most = std::max(most, row.steps.size());
    for (const MakingStep& step : row.steps) {
      const double label = textWidth(tickLabel(step.kind, content.options.english),
                                     tickLabelHeight(content.style), Typeface::bold);
      plan.tickPitch = std::max(plan.tickPitch, label + 1.4);
    }
  }
  plan.tickPitch = std::max(plan.tickPitch, 7.6 * content.style.hand);
  ticksWidth = plan.tickPitch * static_cast<double>(most);
}

}  // namespace

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

RowPlan planRows(const SheetContent& content, RowShape shape, double figureHeight) {
  RowPlan plan;
  plan.shape = shape;
  plan.figureHeight = figureHeight;
  plan.letter = std::min(content.style.tool(), figureHeight * 0.8);
  measureFigures(content.table, plan);
  double ticksWidth = 0;
  measureTicks(content, plan, ticksWidth);

  // A long id is broken into lines rather than push the figures off the page.
  const double idCap = figureHeight * 3.2;
  plan.idLeft = 2.4;
  for (const TableRow& row : content.table.rows) {
    plan.idWidth = std::max(plan.idWidth, textWidth(row.id, figureHeight, Typeface::bold));
  }
  plan.idWidth = std::clamp(plan.idWidth, figureHeight * 0.9, idCap);

  const double between = figureHeight * 0.45;
  const double figure = plan.before + plan.after;
  const double widest = hasFractionsBelow(shape) ? 0 : widestFraction(content);
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
  if (widest > 0) at += widest + 2;
  plan.ticks = at;
  plan.pencil = at + ticksWidth + 1.5;
  plan.width = plan.pencil + kLeastPencil;
  return plan;
}

}  // namespace inchwright
