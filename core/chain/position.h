#pragma once

#include "core/base/rational.h"

namespace inchwright {

/// How a position came about.
enum class How {
  exact,    ///< follows from the print's figures alone
  rounded,  ///< exactly, but for a ring's cosine, or a divided figure rounded to the tick on the
            ///< way
  numeric,  ///< hangs on what was placed numerically (centre distances, angles, tangents)
};

/// Where a place lies along one axis, in the part's own axes.
struct Position {
  /// Ticks from an origin that all positions with the same `group` share.
  Rational ticks;
  /// Places whose distances follow from the print share a group. Group 0 is the part itself (see
  /// `AxisSystem`): a place outside it is loose.
  int group = 0;
  How how = How::exact;
  /// Of what was placed numerically: how far its readings miss at the answer, in ticks; else 0.
  double residual = 0;
  bool assumed = false;   ///< rests on an understanding that is assumed, and not accepted
  bool disputed = false;  ///< lies on a loop that does not close: the figure can't be trusted

  bool isExact() const { return how == How::exact; }
  bool operator==(const Position&) const = default;
};

}  // namespace inchwright
