#pragma once

#include <vector>

#include "core/geometry/homography.h"
#include "core/seen/strokes.h"

namespace inchwright::seen {

/// A quarter of a circle in place of the corner at which a level side and a plumb one would meet.
struct Rounding {
  std::size_t level = 0;  ///< which of the level strokes, and whether at its last end
  bool levelPast = false;
  std::size_t plumb = 0;
  bool plumbPast = false;
  PlanePoint corner;  ///< where the sides would meet, pixels
  PlanePoint centre;
  double radius = 0;
  double drawn = 0;  ///< how much of the arc is, 0 … 1

  /// Where the arc meets the level side, and where the plumb one.
  PlanePoint onLevel() const { return {centre.x, corner.y}; }
  PlanePoint onPlumb() const { return {corner.x, centre.y}; }
};

/// An arc drawn to so much of it takes a corner's place with no doubt.
inline constexpr double kWholeArc = 0.97;

/// The rounded corners of level and plumb strokes (of these x runs down), outside ones and inside
/// ones, up to an inch of the sheet in radius. Both sides are tangent to the arc, so that its
/// radius follows from where it is drawn. An end of a stroke is at one corner at most.
/// Example: two sides that end 50 pixels short of their corner, and a quarter circle from end to
/// end → one of radius 50.
std::vector<Rounding> roundingsOf(const std::vector<Stroke>& level,
                                  const std::vector<Stroke>& plumb, const Grey& cover, double inch,
                                  const Stop& stop = Stop());

}  // namespace inchwright::seen
