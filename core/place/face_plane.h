#pragma once

#include <array>
#include <map>
#include <optional>
#include <vector>

#include "core/geometry/path.h"
#include "core/part/axis.h"
#include "core/part/feature.h"

namespace inchwright {

/// What lies in a face, where it is placed, along the face's own axes as it is seen (at turn 0),
/// in inches from the outer sides at the lower ends. What is not placed is not in it.
///
/// As seen: `bottom` is rolled over its X axis, so that its own Y runs towards the front; on `back`
/// and `left` the own X runs against the part's. Doubles: rounded once, to the tick, where a result
/// is given.
struct FacePlane {
  Face face = Face::top;
  /// The two places that coordinates count from: the outer sides at the lower ends, or, where there
  /// is no straight side, the place that most hangs on.
  std::array<Id, 2> from;
  std::map<Id, PlanePoint> places;
  std::map<Id, PlaneLine> lines;      ///< edges and lines, by id
  std::map<Id, PlaneCircle> circles;  ///< rounds, arcs, holes and pitch circles, by id
  /// Where things were traced, in the same frame: evidence for which of two crossings is meant.
  std::map<Id, std::vector<PlanePoint>> traced;
};

}  // namespace inchwright
