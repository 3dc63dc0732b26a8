#include "core/plan/setup_warnings.h"

#include <algorithm>

namespace inchwright {
namespace {

using Kind = SetupWarning::Kind;

SetupWarning warning(Kind kind, MachineAxis axis) {
  SetupWarning one;
  one.kind = kind;
  one.axis = axis;
  return one;
}

// A hole that this setup is to make can't be picked up, unless an earlier one had the same face up.
bool isYetToBeMade(const WorkAt& work, const Id& place) {
  const Feature* feature = featureOfPlace(work.part, place);
  if (!feature || feature->face != work.setup.face) return false;
  if (!feature->drilled() && !feature->is<kind::Slot>()) return false;
  for (const Setup& earlier : work.part.setups) {
    if (earlier.name == work.setup.name) break;
    if (earlier.face == work.setup.face) return false;
  }
  return true;
}

void warnOfZero(const WorkAt& work, const TableAxis& axis, std::vector<SetupWarning>& all) {
  const auto add = [&](Kind kind) -> SetupWarning& {
    return all.emplace_back(warning(kind, axis.machine));
  };
  if (!axis.zero) {
    add(Kind::noZero);
    return;
  }
  const FoundZero& zero = *axis.zero;
  if (zero.assumed) add(Kind::zeroAssumed);
  if (zero.disputed) add(Kind::zeroDisputed);
  if (zero.asked.ofStock && zero.asked.middle.empty())
    add(Kind::ofStockAlone).place = zero.asked.at;
  if (!zero.stockShift.isZero()) {
    const Rational shift = zero.stockShift.magnitude();
    add(Kind::stockOffMiddle).apart = nearestTick(shift).value_or(Length());
  }
  const std::optional<Side>& stop = work.setup.stop;
  if (work.part.quantity > 1 && zero.asked.middle.size() == 2 && stop &&
      axisAcross(*stop) == axis.part.axis) {
    add(Kind::stopAndMiddle);
  }
  std::vector<Id> places = zero.asked.middle;
  if (places.empty()) places.push_back(zero.asked.at);
  for (const Id& place : places) {
    if (isYetToBeMade(work, place)) add(Kind::zeroNotThere).place = place;
  }
}

void warnOfStock(const WorkAt& work, std::vector<SetupWarning>& all) {
  for (const Side side : kSides) {
    if (work.setup.stockOn(side).isZero() || axisAcross(side) == axisAcross(work.setup.face))
      continue;
    const auto& features = work.part.features;
    const bool named = std::any_of(features.begin(), features.end(), [&](const Feature& feature) {
      return outerSideOf(feature, axisAcross(side)) == side;
    });
    if (named) continue;
    const Feature* other = standInFor(work, side);
    SetupWarning one = warning(other ? Kind::sideStoodFor : Kind::sideMissing, MachineAxis::x);
    if (const TableAxis* axis = work.along(axisAcross(side))) one.axis = axis->machine;
    if (other) one.place = other->id;
    one.side = side;
    all.push_back(std::move(one));
  }
}

// What holds the work, and how far to keep off it: a parallel that is thinner than it is taken to
// be is drilled into.
template <class Ask>
void askOfHolding(const WorkAt& work, const Ask& ask) {
  using Of = SetupWarning::Of;
  const auto of = [&](Of what, const std::optional<Lettered>& figure) {
    ask(what, figure, std::nullopt, MachineAxis::x);
  };
  const Holding& held = work.setup.held;
  for (const LaidParallel& one : held.parallels.value_or(std::vector<LaidParallel>{})) {
    for (const auto* figure : {&one.thick, &one.tall, &one.gap, &one.from, &one.to}) {
      of(Of::parallel, *figure);
    }
  }
  for (const Side side : kSides) {
    ask(Of::overhang, held.overhang[static_cast<std::size_t>(side)], side, MachineAxis::x);
  }
  for (const auto* things : {&held.clamps, &held.clearOf}) {
    for (const Obstacle& one : *things) {
      of(Of::inTheWay, one.tall);
      for (const auto& span : one.along) {
        if (!span) continue;
        of(Of::inTheWay, span->first);
        of(Of::inTheWay, span->second);
      }
    }
  }
  for (const StockPiece& one : held.pieces) {
    for (const auto& size : one.size) ask(Of::piece, size, std::nullopt, MachineAxis::x, one.name);
  }
  if (const auto& vice = work.job.shop.vice; vice && work.setup.jaw) {
    for (const auto* figure : {&vice->jawWidth, &vice->jawHeight, &vice->opens}) {
      of(Of::vice, *figure);
    }
  }
  if (const auto& margins = work.job.shop.margins) {
    for (const auto* figure : {&margins->around, &margins->wall, &margins->below}) {
      of(Of::margin, *figure);
    }
  }
}

void warnOfFigures(const WorkAt& work, std::vector<SetupWarning>& all) {
  const auto ask = [&](SetupWarning::Of of, const std::optional<Lettered>& figure,
                       std::optional<Side> side, MachineAxis axis, const std::string& place = {}) {
    if (!figure || figure->questions.empty()) return;
    SetupWarning one = warning(Kind::oddFigure, axis);
    one.of = of;
    one.figure = *figure;
    one.side = side;
    one.place = place;
    // Both parallels of a pair are lettered alike.
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(std::move(one));
  };
  for (const Side side : kSides) {
    ask(SetupWarning::Of::stock, work.setup.stockLettered(side), side, MachineAxis::x);
  }
  for (const TableAxis* axis : {&work.x, &work.y}) {
    if (axis->zero) {
      ask(SetupWarning::Of::offset, axis->zero->asked.offset, std::nullopt, axis->machine);
    }
  }
  if (const ZeroAlong* depth = work.setup.zeroAlong(axisAcross(work.setup.face))) {
    ask(SetupWarning::Of::offset, depth->offset, std::nullopt, MachineAxis::z);
  }
  for (const GivenCurve& curve : work.setup.curves) {
    ask(SetupWarning::Of::cutter, curve.cutter, std::nullopt, MachineAxis::x, curve.of);
    ask(SetupWarning::Of::ridge, curve.ridge, std::nullopt, MachineAxis::x, curve.of);
  }
  askOfHolding(work, ask);
  const auto& finder = work.machine.finder;
  ask(SetupWarning::Of::finder, finder, std::nullopt, MachineAxis::x);
  // Tips are .200, .250, .375, .500, 4, 6, 10 mm and the like (common practice, no source).
  constexpr Length kThinnest = Length::ticks(Length::kTicksPerInch / 16);
  constexpr Length kThickest = Length::ticks(Length::kTicksPerInch * 3 / 4);
  if (finder && (finder->value < kThinnest || finder->value > kThickest)) {
    all.push_back(warning(Kind::finderUnlikely, MachineAxis::x));
    all.back().figure = *finder;
  }
}

void warnOfMisspelt(const WorkAt& work, std::vector<SetupWarning>& all) {
  for (const Extra* extra : {&work.machine.extra, &work.machine.travelExtra}) {
    for (const UnknownMember& one : *extra) {
      if (one.meant.empty()) continue;
      all.push_back(warning(Kind::misspelt, MachineAxis::x));
      all.back().member = {one.name, one.meant, "machine"};
    }
  }
}

}  // namespace

std::vector<SetupWarning> setupWarnings(const WorkAt& work, const FinderTip& tip) {
  std::vector<SetupWarning> all;
  warnOfZero(work, work.x, all);
  warnOfZero(work, work.y, all);
  warnOfStock(work, all);
  if (!tip.lettered) all.push_back(warning(Kind::finderAssumed, MachineAxis::x));
  warnOfFigures(work, all);
  warnOfMisspelt(work, all);
  return all;
}

}  // namespace inchwright
