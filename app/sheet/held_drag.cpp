#include "app/sheet/held_drag.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/writing.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

const QString kMerge = QStringLiteral("held");

/// In the job's unit, as one would set it with a rule.
Lettered ruleFigure(double millimetres, Unit unit) {
  const std::int64_t grid =
      unit == Unit::inch ? Length::kTicksPerInch / 32 : Length::kTicksPerMillimetre / 2;
  const double ticks = millimetres * static_cast<double>(Length::kTicksPerMillimetre);
  const double steps = std::clamp(std::round(ticks / static_cast<double>(grid)), 0.0, 1e6);
  Lettered figure;
  figure.value = Length::ticks(static_cast<std::int64_t>(steps) * grid);
  figure.unit = unit;
  figure.text = writePlain(figure.value, unit);
  const auto read = readLength(figure.text, {unit});
  return read.ok() ? *read : figure;
}

void lay(Desk& desk, const Setup& setup, const QString& title) {
  if (setup == desk.setup()) return;
  desk.applyPart(replaceSetup(desk.part(), desk.setup().name, setup), title, kMerge);
}

double distance(const PaperTarget& edge, QPointF at) {
  const QPointF from(edge.from.x, edge.from.y),
      along(edge.to.x - edge.from.x, edge.to.y - edge.from.y);
  const double length = QPointF::dotProduct(along, along);
  const double share =
      length > 0 ? std::clamp(QPointF::dotProduct(at - from, along) / length, 0.0, 1.0) : 0;
  const QPointF off = at - from - share * along;
  return std::hypot(off.x(), off.y());
}

}  // namespace

std::optional<HeldDrag> HeldDrag::of(const Desk& desk, const PaperTarget& target) {
  if (!desk.hasPart() || desk.part().setups.empty()) return std::nullopt;
  HeldDrag drag;
  drag.target_ = target;
  if (target.kind == TargetKind::fixedJaw) return drag;
  const auto& parallels = desk.setup().held.parallels;
  if (target.kind != TargetKind::parallel || !parallels || target.which >= parallels->size()) {
    return std::nullopt;
  }
  const LaidParallel& one = (*parallels)[target.which];
  if (one.gap) drag.gap_ = one.gap->value;
  return drag;
}

void HeldDrag::to(Desk& desk, const Page& page, QPointF from, QPointF at) const {
  if (target_.kind == TargetKind::fixedJaw) return layJaw(desk, page, at);
  layParallel(desk, at - from);
}

void HeldDrag::layParallel(Desk& desk, QPointF moved) const {
  const QPointF away(target_.away.x, target_.away.y);
  const double scale = QPointF::dotProduct(away, away);
  Setup setup = desk.setup();
  auto& parallels = setup.held.parallels;
  if (scale <= 0 || !parallels || target_.which >= parallels->size()) return;
  const double millimetres = gap_.toMillimetres() + QPointF::dotProduct(moved, away) / scale;
  std::optional<Lettered>& gap = (*parallels)[target_.which].gap;
  Lettered now = ruleFigure(millimetres, desk.job().unit);
  if (gap && gap->value == now.value) return;
  if (!gap && now.value.isZero()) return;
  gap = std::move(now);
  lay(desk, setup, QCoreApplication::translate("HeldDrag", "Shift a parallel"));
}

void HeldDrag::layJaw(Desk& desk, const Page& page, QPointF at) const {
  std::optional<Side> nearest;
  double least = std::numeric_limits<double>::infinity();
  for (const PaperTarget& target : page.targets) {
    if (target.kind != TargetKind::pictured) continue;
    const Feature* const feature = desk.part().feature(target.place);
    const auto* const edge = feature == nullptr ? nullptr : feature->as<kind::Edge>();
    if (edge == nullptr || !edge->side || distance(target, at) >= least) continue;
    least = distance(target, at);
    nearest = edge->side;
  }
  if (!nearest) return;
  Setup setup = desk.setup();
  setup.jaw = nearest;
  lay(desk, setup, QCoreApplication::translate("HeldDrag", "Set the fixed jaw"));
}

}  // namespace inchwright::app
