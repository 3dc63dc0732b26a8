#pragma once

#include <cmath>
#include <numbers>

#include "core/geometry/homography.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// How much of a line from a to b is inked within a pixel or two across, 0 … 1, and its longest
/// bare stretch: from `bareFrom` to `barePast`, of 1.
struct InkAlong {
  double share = 0;
  double bareFrom = 0;
  double barePast = 0;
};

inline bool inkNear(const Grey& cover, double x, double y, int reach) {
  const int u = static_cast<int>(std::lround(x)), v = static_cast<int>(std::lround(y));
  for (int j = v - reach; j <= v + reach; ++j) {
    for (int i = u - reach; i <= u + reach; ++i) {
      if (cover.holds(i, j) && cover.row(j)[i] > 76) return true;
    }
  }
  return false;
}

inline InkAlong inkAlong(const Grey& cover, PlanePoint a, PlanePoint b, int reach) {
  InkAlong out;
  const int count = std::max(2, static_cast<int>(std::hypot(b.x - a.x, b.y - a.y)));
  int on = 0, start = -1;
  for (int i = 0; i <= count; ++i) {
    const double t = double(i) / count;
    const bool ink =
        i == count || inkNear(cover, a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t, reach);
    if (!ink && start < 0) start = i;
    if (!ink) continue;
    if (start >= 0 && i - start > (out.barePast - out.bareFrom) * count) {
      out.bareFrom = double(start) / count;
      out.barePast = t;
    }
    start = -1;
    on += i < count;
  }
  out.share = double(on) / count;
  return out;
}

/// How much of an arc is inked, degrees anticlockwise as seen on the picture (y down).
inline double inkOnArc(const Grey& cover, PlanePoint centre, double radius, double begin,
                       double end, int reach) {
  const int count = std::max(8, static_cast<int>(radius * (end - begin) / 57));
  int on = 0;
  for (int i = 0; i < count; ++i) {
    const double t = (begin + (end - begin) * (i + 0.5) / count) * std::numbers::pi / 180;
    on += inkNear(cover, centre.x + radius * std::cos(t), centre.y - radius * std::sin(t), reach);
  }
  return double(on) / count;
}

}  // namespace inchwright::seen
