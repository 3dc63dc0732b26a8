#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/seen/figure.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// A pen for small pictures of ink: 255 where it went.
class Pen {
 public:
  Pen(int width, int height) : cover(width, height) {}

  void line(double x0, double y0, double x1, double y1, double thick) {
    const double length = std::hypot(x1 - x0, y1 - y0);
    within({std::min(x0, x1), std::min(y0, y1), std::max(x0, x1), std::max(y0, y1)}, thick,
           [&](double x, double y) {
             const double t =
                 length > 0
                     ? std::clamp(((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / (length * length),
                                  0.0, 1.0)
                     : 0;
             return std::hypot(x - x0 - t * (x1 - x0), y - y0 - t * (y1 - y0)) - thick / 2;
           });
  }
  void circle(double cx, double cy, double radius, double thick) {
    within({cx - radius, cy - radius, cx + radius, cy + radius}, thick, [&](double x, double y) {
      return std::abs(std::hypot(x - cx, y - cy) - radius) - thick / 2;
    });
  }

  Grey cover;

 private:
  struct Bounds {
    double left, top, right, bottom;
  };

  /// `off` is how far outside the ink a place lies; what is inked lies within the bounds but for
  /// the pen's thickness.
  template <class Off>
  void within(Bounds bounds, double thick, Off off) {
    const int left = std::max(0, static_cast<int>(bounds.left - thick - 1));
    const int top = std::max(0, static_cast<int>(bounds.top - thick - 1));
    const int right = std::min(cover.width, static_cast<int>(bounds.right + thick + 2));
    const int bottom = std::min(cover.height, static_cast<int>(bounds.bottom + thick + 2));
    for (int y = top; y < bottom; ++y) {
      for (int x = left; x < right; ++x) {
        const double c = std::clamp(0.5 - off(x, y), 0.0, 1.0);
        cover.row(y)[x] =
            std::max(cover.row(y)[x], static_cast<std::uint8_t>(std::lround(255 * c)));
      }
    }
  }
};

/// A mark that is plainly of a kind: odds of `sure`, the rest even.
inline Mark mark(char kind, Box box, double sure = 0.99) {
  Mark m{box, {}};
  m.odds.fill(static_cast<float>((1 - sure) / static_cast<double>(m.odds.size() - 1)));
  m.odds[kGlyphKinds.find(kind)] = static_cast<float>(sure);
  return m;
}

}  // namespace inchwright::seen
