#pragma once

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
    each([&](double x, double y) {
      const double t =
          length > 0 ? std::clamp(((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / (length * length),
                                  0.0, 1.0)
                     : 0;
      return std::hypot(x - x0 - t * (x1 - x0), y - y0 - t * (y1 - y0)) - thick / 2;
    });
  }
  void circle(double cx, double cy, double radius, double thick) {
    each([&](double x, double y) {
      return std::abs(std::hypot(x - cx, y - cy) - radius) - thick / 2;
    });
  }

  Grey cover;

 private:
  /// `off` is how far outside the ink a place lies.
  template <class Off>
  void each(Off off) {
    for (int y = 0; y < cover.height; ++y) {
      for (int x = 0; x < cover.width; ++x) {
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
