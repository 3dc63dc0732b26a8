#include "core/making/bushing.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/shop/fits.h"

namespace inchwright {
namespace {

const Error kBeyondHolding{ErrorCode::outOfRange,
                           "a bush for this hole is larger than can be held"};

/// Up to the next round size.
std::optional<Length> upToRound(Length size, Unit unit) {
  const std::int64_t grid =
      unit == Unit::inch ? Length::kTicksPerInch / 64 : Length::kTicksPerMillimetre / 2;
  const std::int64_t steps = size.ticks() / grid + (size.ticks() % grid > 0 ? 1 : 0);
  return Length::ticks(1).times(grid)->times(steps);
}

/// The press fit in a bore of at least this size, without inside and wall.
Result<Bushing> pressedInto(std::optional<Length> least, Unit unit) {
  const auto bore = least ? upToRound(*least, unit) : std::nullopt;
  if (!bore) return kBeyondHolding;
  const Result<Fit> fit = fitByName(unit == Unit::inch ? "LN2" : "H7/p6", *bore);
  if (!fit) return fit.error();
  Lettered basic;
  basic.value = *bore;
  const auto hole = limitsOf(basic, fit->hole);
  const auto shaft = limitsOf(basic, fit->shaft);
  if (!hole || !shaft) return kBeyondHolding;
  Bushing bushing;
  bushing.bore = *bore;
  bushing.boreLimits = *hole;
  bushing.outsideLimits = *shaft;
  bushing.outside = Length::ticks(std::midpoint(shaft->least.ticks(), shaft->greatest.ticks()));
  bushing.press = fit->name;
  return bushing;
}

Bushing lined(Bushing bushing, Length inside, Length throwBy) {
  bushing.inside = inside;
  bushing.throwBy = throwBy;
  bushing.wall = Length::ticks((bushing.outside.ticks() - inside.ticks()) / 2 - throwBy.ticks());
  return bushing;
}

/// The inside, a wall and more on both sides.
std::optional<Length> around(Length inside, Length more, Unit unit) {
  const auto beside = leastBushWall(unit).plus(more);
  const auto both = beside ? beside->times(2) : std::nullopt;
  return both ? inside.plus(*both) : std::nullopt;
}

std::optional<Length> larger(std::optional<Length> a, std::optional<Length> b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

}  // namespace

Length WrongHole::off() const {
  const long double x = static_cast<long double>(offX.ticks());
  const long double y = static_cast<long double>(offY.ticks());
  return Length::ticks(static_cast<std::int64_t>(std::ceil(std::hypot(x, y))));
}

Length leastBushWall(Unit unit) {
  return Length::ticks(unit == Unit::inch ? Length::kTicksPerInch / 32
                                          : Length::kTicksPerMillimetre * 4 / 5);
}

Result<Bushing> bushOnWantedCentre(const WrongHole& hole) {
  const auto twice = hole.off().times(2);
  const auto takesIn = twice ? hole.found.plus(*twice) : std::nullopt;
  const auto least = larger(takesIn, around(hole.nominal, {}, hole.unit));
  Result<Bushing> bushing = pressedInto(least, hole.unit);
  if (!bushing) return bushing;
  return lined(*std::move(bushing), hole.nominal, {});
}

Result<Bushing> eccentricBush(const WrongHole& hole) {
  const auto least = larger(hole.found, around(hole.nominal, hole.off(), hole.unit));
  Result<Bushing> bushing = pressedInto(least, hole.unit);
  if (!bushing) return bushing;
  return lined(*std::move(bushing), hole.nominal, hole.off());
}

Result<Bushing> plugFor(const WrongHole& hole) {
  Result<Bushing> plug = pressedInto(hole.found, hole.unit);
  if (!plug) return plug;
  plug->inside = hole.nominal;
  const std::int64_t reach = hole.off().ticks() + hole.nominal.ticks() / 2;
  plug->cutsJoint = reach >= plug->outside.ticks() / 2;
  return plug;
}

}  // namespace inchwright
