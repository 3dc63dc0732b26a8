#pragma once

#include <vector>

#include "core/seen/plane.h"

namespace inchwright::seen {

/// A circle drawn on a raster, in pixels.
struct Circle {
  double x = 0;
  double y = 0;
  double radius = 0;
  double round = 0;  ///< how much of the rim is drawn, 0 … 1
  double cross = 0;  ///< how much of a centre cross is, 0 … 1
  /// How much of its centre lines runs out over the rim, 0 … 1, on the third best of four sides.
  double beyond = 0;
};

/// A circle with so much of a centre cross is a hole.
inline constexpr double kCross = 0.5;

/// Circles between a 25th and half an inch of the sheet in radius: the slopes of the ink vote for
/// centres at half size, and the rim is fitted at full size. Those that carry a cross first.
std::vector<Circle> circlesOf(const Grey& cover, double inch, const Stop& stop);

}  // namespace inchwright::seen
