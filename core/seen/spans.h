#pragma once

#include <functional>
#include <vector>

#include "core/seen/ends.h"

namespace inchwright::seen {

/// A dimension line as its view shows it, from x1 to x2 at y (x1 < x2).
struct Span {
  double x1 = 0;
  double x2 = 0;
  double y = 0;
  bool outside = false;  ///< the arrows stand outside and point at one another
  double sure = 0;       ///< 0 … 1
};

/// Whether lettering lies along the stretch from x0 to x1, no more than `reach` inches of the
/// sheet off the height y.
using IsLettered = std::function<bool(double x0, double x1, double y, double reach)>;

/// Pairs ends on one height to dimension lines. The line between is drawn, but for a gap with
/// lettering in it; arrows outside a short dimension pair where there is lettering between them or
/// beside. The logarithm of a line's odds is above `least`.
std::vector<Span> spansOf(const View& view, const std::vector<End>& ends,
                          const IsLettered& lettered, double least, const Stop& stop = Stop());

}  // namespace inchwright::seen
