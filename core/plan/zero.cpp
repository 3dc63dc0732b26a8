#include "core/plan/zero.h"

#include <algorithm>
#include <string>

#include "core/plan/machine_axes.h"

namespace inchwright {
namespace {

Error tooFar(std::string_view place) {
  return {ErrorCode::outOfRange, "a length is beyond what can be held", std::string(place), {}};
}

Result<const Position*> positionForZero(const PartAt& at, const Id& place, Axis axis) {
  const std::string along(nameOf(axis));
  const Feature* feature = featureOfPlace(at.part, place);
  if (!feature) {
    return Error{
        ErrorCode::notFound, "zero is on " + place + ", which the part does not have", place, {}};
  }
  if (!axesOf(*feature).has(axis)) {
    return Error{ErrorCode::badRequest,
                 "zero along " + along + " can't be on " + place + ", which has no position there",
                 place,
                 {}};
  }
  const Position* position = at.position(place, axis);
  if (!position) {
    return Error{ErrorCode::unsolvable,
                 "zero is on " + place + ", which nothing places along " + along,
                 place,
                 {}};
  }
  return position;
}

// The offset and the shift by the stock come last, so that `ticks` is built in one place.
Result<FoundZero> finish(FoundZero zero) {
  std::optional<Rational> ticks = zero.ticks;
  if (zero.asked.ofStock && zero.asked.middle.size() == 2) ticks = ticks->plus(zero.stockShift);
  if (ticks && zero.asked.offset) {
    ticks = ticks->plus(zero.asked.offset->value.rational());
    zero.exact = zero.exact && zero.asked.offset->exact;
  }
  if (!ticks) return tooFar({});
  zero.ticks = *ticks;
  return zero;
}

Result<FoundZero> middleZero(const PartAt& at, FoundZero zero) {
  const Axis axis = zero.asked.axis;
  if (zero.asked.middle.size() != 2) {
    return Error{ErrorCode::badRequest, "a middle lies between two places", {}, {}};
  }
  std::optional<Rational> sum = Rational(0);
  std::optional<Rational> stock = Rational(0);
  for (const Id& place : zero.asked.middle) {
    const Result<const Position*> position = positionForZero(at, place, axis);
    if (!position) return position.error();
    sum = sum->plus((*position)->ticks);
    // The position was found, so the part has the feature.
    stock = stock->plus(at.stockBeyond(*featureOfPlace(at.part, place), axis).rational());
    if (!sum || !stock) return tooFar(place);
    zero.exact = zero.exact && (*position)->isExact();
    zero.disputed = zero.disputed || (*position)->disputed;
  }
  const std::optional<Rational> middle = sum->over(Rational(2));
  const std::optional<Rational> shift = stock->over(Rational(2));
  if (!middle || !shift) return tooFar(zero.asked.middle.front());
  zero.ticks = *middle;
  zero.stockShift = *shift;
  return finish(std::move(zero));
}

}  // namespace

Result<std::optional<FoundZero>> findZero(const PartAt& at, Axis axis) {
  FoundZero zero;
  if (const ZeroAlong* asked = at.setup.zeroAlong(axis)) {
    zero.asked = *asked;
  } else {
    const std::optional<ZeroAlong> taken = customaryZero(at.part, at.solution, axis);
    if (!taken) return std::optional<FoundZero>();
    zero.asked = *taken;
    zero.assumed = true;
  }
  Result<FoundZero> found = FoundZero();
  if (!zero.asked.middle.empty()) {
    found = middleZero(at, std::move(zero));
  } else {
    const Result<const Position*> position = positionForZero(at, zero.asked.at, axis);
    if (!position) return position.error();
    zero.ticks = (*position)->ticks;
    zero.exact = (*position)->isExact();
    zero.disputed = (*position)->disputed;
    found = finish(std::move(zero));
  }
  if (!found) return found.error();
  return std::optional<FoundZero>(*std::move(found));
}

std::optional<ZeroAlong> customaryZero(const Part& part, const Solution& solution, Axis axis) {
  ZeroAlong zero;
  zero.axis = axis;
  for (const Feature& feature : part.features) {
    const std::optional<Side> side = outerSideOf(feature, axis);
    if (side && outward(*side) < 0 && placedPosition(solution, feature.id, axis)) {
      zero.at = feature.id;
      return zero;
    }
  }
  for (const Feature& feature : part.features) {
    if (placedPosition(solution, feature.id, axis)) {
      zero.at = feature.id;
      return zero;
    }
  }
  return std::nullopt;
}

const Feature* featureOfPlace(const Part& part, std::string_view place) {
  if (const Feature* feature = part.feature(place)) return feature;
  for (const Feature& feature : part.features) {
    if (!place.starts_with(feature.id)) continue;
    for (const Place& one : placesOf(feature)) {
      if (one.id == place) return &feature;
    }
  }
  return nullptr;
}

std::optional<Side> outerSideOf(const Feature& feature, Axis axis) {
  const std::optional<Side> side = sideOf(feature);
  return side && axisAcross(*side) == axis ? side : std::nullopt;
}

std::optional<Side> PartAt::sideOf(const Feature& feature, Axis axis) const {
  if (const std::optional<Side> named = outerSideOf(feature, axis)) return named;
  if (!feature.is<kind::Edge>() || inchwright::sideOf(feature)) return std::nullopt;
  for (const Side side : kSides) {
    if (axisAcross(side) != axis || setup.stockOn(side).isZero()) continue;
    if (standInFor(*this, side) == &feature) return side;
  }
  return std::nullopt;
}

const Feature* standInFor(const PartAt& at, Side side) {
  const Axis axis = axisAcross(side);
  const Feature* outermost = nullptr;
  const Position* reach = nullptr;
  for (const Feature& feature : at.part.features) {
    if (outerSideOf(feature, axis) == side) return nullptr;
    if (!feature.is<kind::Edge>()) continue;
    const Position* position = at.position(feature.id, axis);
    if (!position) continue;
    const bool further = !reach || (outward(side) > 0 ? position->ticks > reach->ticks
                                                      : position->ticks < reach->ticks);
    if (!further) continue;
    outermost = &feature;
    reach = position;
  }
  return outermost && !sideOf(*outermost) ? outermost : nullptr;
}

Length PartAt::stockBeyond(const Feature& feature, Axis axis) const {
  const std::optional<Side> side = sideOf(feature, axis);
  if (!side) return Length();
  const Length allowance = setup.stockOn(*side);
  return outward(*side) > 0 ? allowance : allowance.negated();
}

const Position* placedPosition(const Solution& solution, std::string_view place, Axis axis) {
  const Position* position = solution.position(place, axis);
  return position && position->group == 0 ? position : nullptr;
}

}  // namespace inchwright
