#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace inchwright {

/// An angle, exactly: a whole number of micro-arcseconds (1° = 3 600 000 000). Holds every angle
/// lettered in degrees, minutes and seconds, or in degrees to six places.
class Angle {
 public:
  static constexpr std::int64_t kPerDegree = 3'600'000'000;

  constexpr Angle() = default;
  static constexpr Angle microArcseconds(std::int64_t count) { return Angle(count); }
  static constexpr Angle degrees(std::int64_t whole) { return Angle(whole * kPerDegree); }

  constexpr std::int64_t microArcseconds() const { return count_; }
  double toDegrees() const { return static_cast<double>(count_) / kPerDegree; }
  double toRadians() const;

  constexpr auto operator<=>(const Angle&) const = default;

 private:
  explicit constexpr Angle(std::int64_t count) : count_(count) {}
  std::int64_t count_ = 0;
};

/// An angle as lettered, such as `55`, `22.5°`, `22° 30'`, `30 1/2`, `45° ±1/2°`.
struct LetteredAngle {
  std::string text;
  Angle value;
  std::optional<Angle> plusMinus;
  bool reference = false;

  bool operator==(const LetteredAngle&) const = default;
};

/// Reads an angle in degrees, minutes and seconds, decimal degrees or fractions of a degree.
/// Errors: `badText` or `outOfRange` with the byte offset in `at`. Bounds: within ±360 000°.
Result<LetteredAngle> readAngle(std::string_view text);

}  // namespace inchwright
