#pragma once

#include <cstddef>
#include <vector>

#include "core/geometry/homography.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// An end of an outline's stroke at which no other stroke goes on, pixels.
struct LooseEnd {
  PlanePoint at;
  std::size_t stroke = 0;  ///< of those of an outline
  bool past = false;       ///< whether it is the stroke's last end
  bool plumb = false;      ///< the stroke is plumb, else level
  double thick = 0;        ///< of the stroke, pixels
};

/// What is drawn from one loose end to another: a slanted side or a curved one.
struct Join {
  LooseEnd one;
  LooseEnd other;
  PlanePoint from;  ///< where it begins and ends; of an arc as far as it is one, pixels
  PlanePoint to;
  bool arc = false;
  PlanePoint centre;  ///< of an arc
  double radius = 0;
  double drawn = 0;  ///< how much of it is, 0 … 1
};

/// A side is drawn to so much that it ends in corners with no doubt.
inline constexpr double kWholeJoin = 0.97;

/// The slanted and curved sides between loose ends, as thick as an outline, up to three inches of
/// the sheet long. The longer come first; an end belongs to one at most. An arc is no more than a
/// good half of its circle, and its circle is not drawn on: a hole's rim is no side.
/// Example: two sides that end 50 and 80 pixels short of their corner, and a thick line from end to
/// end → one that is no arc.
std::vector<Join> joinsOf(const std::vector<LooseEnd>& ends, const Grey& cover, double inch,
                          const Stop& stop = Stop());

/// Whether a place lies on an arc, within so many pixels.
bool isOnArc(const Join& arc, PlanePoint p, double within);

}  // namespace inchwright::seen
