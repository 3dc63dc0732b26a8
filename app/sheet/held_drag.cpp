#include "app/sheet/held_drag.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/writing.h"
#include "core/part/edit.h"
#include "core/plan/work_block.h"

namespace inchwright::app {
namespace {

const QString kMerge = QStringLiteral("held");

bool isOnASide(TargetKind kind) {
  return kind == TargetKind::fixedJaw || kind == TargetKind::movingJaw || kind == TargetKind::stop;
}

bool isObstacle(TargetKind kind) {
  return kind == TargetKind::clamp || kind == TargetKind::clearOf;
}

Lettered figureOf(Length value, Unit unit) {
  Lettered figure;
  figure.value = value;
  figure.unit = unit;
  figure.text = writePlain(value, unit);
  const auto read = readLength(figure.text, {unit});
  return read.ok() ? *read : figure;
}

/// In the job's unit, as one would set it with a rule; below 0 only where it may be.
Lettered ruleFigure(double millimetres, Unit unit, bool maybeBelow = false) {
  const std::int64_t grid =
      unit == Unit::inch ? Length::kTicksPerInch / 32 : Length::kTicksPerMillimetre / 2;
  const double ticks = millimetres * static_cast<double>(Length::kTicksPerMillimetre);
  const double steps =
      std::clamp(std::round(ticks / static_cast<double>(grid)), maybeBelow ? -1e6 : 0.0, 1e6);
  return figureOf(Length::ticks(static_cast<std::int64_t>(steps) * grid), unit);
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
  const Holding& held = desk.setup().held;
  if (target.kind == TargetKind::parallel) {
    if (!held.parallels || target.which >= held.parallels->size()) return std::nullopt;
    const LaidParallel& one = (*held.parallels)[target.which];
    if (one.gap) drag.gap_ = one.gap->value;
    return drag;
  }
  if (isObstacle(target.kind)) {
    const auto& those = target.kind == TargetKind::clamp ? held.clamps : held.clearOf;
    if (target.which >= those.size()) return std::nullopt;
    drag.obstacle_ = those[target.which];
    return drag;
  }
  return isOnASide(target.kind) ? std::optional(drag) : std::nullopt;
}

QString HeldDrag::tip(const PaperTarget& target) {
  switch (target.kind) {
    case TargetKind::fixedJaw:
      return QCoreApplication::translate("HeldDrag", "The fixed jaw: drag it to another side");
    case TargetKind::movingJaw:
      return QCoreApplication::translate("HeldDrag", "The moving jaw: drag it to another side");
    case TargetKind::stop:
      return QCoreApplication::translate("HeldDrag", "The stop: drag it to another side");
    case TargetKind::clamp:
      return QCoreApplication::translate("HeldDrag", "Clamp %1: drag it where it stands")
          .arg(target.which + 1);
    case TargetKind::clearOf:
      return QCoreApplication::translate("HeldDrag",
                                         "To be kept clear of: drag it where it stands");
    default:
      return QCoreApplication::translate("HeldDrag", "Parallel %1: drag it to and from its jaw")
          .arg(target.which + 1);
  }
}

void HeldDrag::to(Desk& desk, const Page& page, QPointF from, QPointF at) const {
  if (isOnASide(target_.kind)) return laySide(desk, page, at);
  if (isObstacle(target_.kind)) return layObstacle(desk, at - from);
  layParallel(desk, at - from);
}

void HeldDrag::layObstacle(Desk& desk, QPointF moved) const {
  Setup setup = desk.setup();
  auto& those = target_.kind == TargetKind::clamp ? setup.held.clamps : setup.held.clearOf;
  if (target_.which >= those.size()) return;
  const auto axes = axesIn(setup.face);
  for (const std::size_t k : {0U, 1U}) {
    const PlanePoint way = k == 0 ? target_.away : target_.up;
    const double scale = way.x * way.x + way.y * way.y;
    const auto& was = obstacle_.along[static_cast<std::size_t>(axes[k])];
    auto& span = those[target_.which].along[static_cast<std::size_t>(axes[k])];
    if (scale <= 0 || !was || !span) continue;
    const double by = (moved.x() * way.x + moved.y() * way.y) / scale;
    // Its low end on the rule's grid; as long as it was.
    Lettered low = ruleFigure(was->first.value.toMillimetres() + by, desk.job().unit, true);
    const auto length = was->second.value.minus(was->first.value);
    const auto high = length ? low.value.plus(*length) : std::nullopt;
    if (!high || low.value == span->first.value) continue;
    const bool back = low.value == was->first.value;
    *span = back ? *was : Obstacle::Span{low, figureOf(*high, desk.job().unit)};
  }
  lay(desk, setup,
      target_.kind == TargetKind::clamp
          ? QCoreApplication::translate("HeldDrag", "Shift a clamp")
          : QCoreApplication::translate("HeldDrag", "Shift what is to be kept clear of"));
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

void HeldDrag::laySide(Desk& desk, const Page& page, QPointF at) const {
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
  if (target_.kind == TargetKind::stop) {
    setup.stop = nearest;
    lay(desk, setup, QCoreApplication::translate("HeldDrag", "Set the stop"));
    return;
  }
  setup.jaw = target_.kind == TargetKind::fixedJaw ? *nearest : oppositeOf(*nearest);
  lay(desk, setup, QCoreApplication::translate("HeldDrag", "Set the fixed jaw"));
}

}  // namespace inchwright::app
