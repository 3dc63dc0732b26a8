#pragma once

#include <compare>
#include <cstdint>
#include <optional>

#include "core/base/rational.h"

namespace inchwright {

/// Units a print or a sheet can be in.
enum class Unit { inch, millimetre };

/// A length, exactly: a whole number of ticks of 10 pm (see Decision 1).
///
/// 1 in = 2 540 000 000 ticks (25.4 mm exactly: Federal Register, 1 July 1959), 1 mm =
/// 100 000 000 ticks, 1/256 in = 9 921 875 ticks, 0.0001 in = 254 000 ticks. The range is about
/// 92 000 km either way. Signed: a coordinate is a length too. `1 3/16` is 3 016 250 000 ticks.
class Length {
 public:
  static constexpr std::int64_t kTicksPerInch = 2'540'000'000;
  static constexpr std::int64_t kTicksPerMillimetre = 100'000'000;

  constexpr Length() = default;
  static constexpr Length ticks(std::int64_t count) { return Length(count); }

  constexpr std::int64_t ticks() const { return ticks_; }
  constexpr bool isZero() const { return ticks_ == 0; }
  constexpr Rational rational() const { return Rational(ticks_); }

  /// Checked: empty on overflow.
  std::optional<Length> plus(Length other) const;
  std::optional<Length> minus(Length other) const;
  std::optional<Length> times(std::int64_t factor) const;
  /// Requires: not the lowest 64-bit integer, which no reader or solver produces.
  constexpr Length negated() const { return Length(-ticks_); }
  constexpr Length magnitude() const { return ticks_ < 0 ? negated() : *this; }

  /// For plotting and for evidence from a tracing only, never for a size.
  double toInches() const { return static_cast<double>(ticks_) / kTicksPerInch; }
  double toMillimetres() const { return static_cast<double>(ticks_) / kTicksPerMillimetre; }

  constexpr auto operator<=>(const Length&) const = default;

 private:
  explicit constexpr Length(std::int64_t count) : ticks_(count) {}
  std::int64_t ticks_ = 0;
};

constexpr std::int64_t ticksPer(Unit unit) {
  return unit == Unit::inch ? Length::kTicksPerInch : Length::kTicksPerMillimetre;
}

/// The nearest whole tick, ties away from zero; empty when out of range.
std::optional<Length> nearestTick(const Rational& ticks);

}  // namespace inchwright
