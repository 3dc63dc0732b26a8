#pragma once

#include <vector>

#include "core/geometry/homography.h"
#include "core/seen/circles.h"
#include "core/seen/lettering.h"

namespace inchwright::seen {

/// A dimension line straight from one circle's centre to another's, neither level nor plumb.
struct CentreLine {
  int from = 0;  ///< indices of the circles; the first lies further left
  int to = 0;
  PlanePoint figure;  ///< where its lettering should be, pixels
  double sure = 0;
};

/// Lines between circles that are inked all the way but for one gap with lettering in it.
std::vector<CentreLine> centreLinesOf(const std::vector<Circle>& holes, const Grey& cover,
                                      const Lettering& lettering, double inch, const Stop& stop);

}  // namespace inchwright::seen
