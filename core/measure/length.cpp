#include "core/measure/length.h"

#include "core/base/checked.h"

namespace inchwright {
namespace {

std::optional<Length> wrap(std::optional<std::int64_t> ticks) {
  if (!ticks) return std::nullopt;
  return Length::ticks(*ticks);
}

}  // namespace

std::optional<Length> Length::plus(Length other) const {
  return wrap(addChecked(ticks_, other.ticks_));
}

std::optional<Length> Length::minus(Length other) const {
  return wrap(subtractChecked(ticks_, other.ticks_));
}

std::optional<Length> Length::times(std::int64_t factor) const {
  return wrap(multiplyChecked(ticks_, factor));
}

std::optional<Length> nearestTick(const Rational& ticks) {
  return wrap(ticks.rounded());
}

}  // namespace inchwright
