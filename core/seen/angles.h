#pragma once

#include <vector>

#include "core/seen/circles.h"
#include "core/seen/drawn_features.h"
#include "core/seen/lettering.h"

namespace inchwright::seen {

/// An arc with a gap for its figure, from a level line to a slanting one, pixels and degrees
/// anticlockwise as seen from the level line to the right.
struct AngleArc {
  PlanePoint corner;  ///< where both lines start
  double radius = 0;
  double degrees = 0;  ///< as drawn; below 0 where the slanting line runs downwards
  PlanePoint figure;   ///< the middle of the lettering in the gap
  PlanePoint to;       ///< on the slanting line: the hole it leads to, else where the arc ends
  double sure = 0;     ///< how much of both lines is drawn, 0 … 1
};

/// Arcs round the corners of outlines and round holes. The arc runs on from both sides of a block
/// of lettering to the two lines; a line through it may have been taken out (`bare`).
std::vector<AngleArc> angleArcsOf(const Outlines& outlines, const std::vector<Circle>& holes,
                                  const Grey& cover, const Lettering& whole, const Lettering& bare,
                                  double inch, const Stop& stop);

}  // namespace inchwright::seen
