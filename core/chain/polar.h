#pragma once

#include <cstdint>
#include <utility>

#include "core/base/rational.h"

namespace inchwright {

/// A distance along one axis, in ticks.
struct Offset {
  Rational ticks;
  bool exact = true;  ///< false where it is irrational, and rounded to 2^-20 tick

  bool operator==(const Offset&) const = default;
};

/// diameter / 2 times the cosine and the sine of an angle in micro-arcseconds.
///
/// Exact where the product is rational, which for a rational angle only cosines of 0, ±1/2 and ±1
/// allow (Niven's theorem): 3 ticks across come to 3/2. Otherwise it comes out at the nearest 2^-20
/// tick, so that a sum of a few still finds its tick: the angle is brought into 0 … 45° exactly,
/// and the series is summed with 113 bits, so that the error before rounding is below 2^-44 tick
/// at any 64-bit diameter and below 2^-63 at 10^13 ticks.
/// A circle of 2 1/2 in at 60°: 5/8 in across, exactly, and 1.0825 in up.
/// Requires: diameter not negative.
std::pair<Offset, Offset> polarOffset(std::int64_t diameter, const Rational& microArcseconds);

}  // namespace inchwright
