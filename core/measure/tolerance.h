#pragma once

#include "core/measure/length.h"

namespace inchwright {

/// How far a size may stray from its nominal: signed deviations, upper and lower.
///
/// `+.002 -.000` is upper 0.002 in, lower 0; both may have the same sign (a shaft `-.001 -.003`).
/// Requires: upper is not less than lower (the readers refuse it otherwise).
struct Tolerance {
  Length upper;
  Length lower;

  static Tolerance symmetric(Length plusMinus) { return {plusMinus, plusMinus.negated()}; }
  /// upper − lower; the readers keep both within range, so this does not overflow.
  Length width() const { return Length::ticks(upper.ticks() - lower.ticks()); }

  bool operator==(const Tolerance&) const = default;
};

}  // namespace inchwright
