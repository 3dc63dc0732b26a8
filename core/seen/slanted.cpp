#include "core/seen/slanted.h"

#include <cmath>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

/// How far a line is drawn from one end, of 1; two bare pixels do not end it.
double drawnFrom(const Grey& cover, PlanePoint a, PlanePoint b) {
  const int count = std::max(2, static_cast<int>(std::hypot(b.x - a.x, b.y - a.y)));
  int bare = 0;
  for (int i = 0; i <= count; ++i) {
    const double t = double(i) / count;
    bare = inkNear(cover, a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t, 1) ? 0 : bare + 1;
    if (bare == 3) return double(i - 2) / count;
  }
  return 1;
}

}  // namespace

std::vector<CentreLine> centreLinesOf(const std::vector<Circle>& holes, const Grey& cover,
                                      const Lettering& lettering, double inch, const Stop& stop) {
  std::vector<CentreLine> out;
  const std::size_t n = std::min<std::size_t>(holes.size(), 80);
  for (std::size_t i = 0; i < n && !stop.asked(); ++i) {
    for (std::size_t k = 0; k < n; ++k) {
      const Circle &a = holes[i], &b = holes[k];
      const double dx = b.x - a.x, dy = b.y - a.y, length = std::hypot(dx, dy);
      if (dx <= 0 || length < 0.7 * inch || std::min(dx, std::abs(dy)) < 0.12 * length) continue;
      const double first = drawnFrom(cover, {a.x, a.y}, {b.x, b.y}),
                   last = 1 - drawnFrom(cover, {b.x, b.y}, {a.x, a.y});
      const double gap = (last - first) * length;
      // All of it is drawn but for the gap, and the gap is as long as a figure.
      if (gap < 0.15 * inch || gap > 1.4 * inch || first < 0.12 || last > 0.88) continue;
      const double t = (first + last) / 2;
      const PlanePoint middle{a.x + dx * t, a.y + dy * t};
      const bool lettered =
          std::any_of(lettering.blocks.begin(), lettering.blocks.end(), [&](const Block& block) {
            return std::abs(block.box.midX() - middle.x) < 0.15 * inch + block.box.w / 4.0 &&
                   std::abs(block.box.midY() - middle.y) < 0.12 * inch;
          });
      if (lettered)
        out.push_back({static_cast<int>(i), static_cast<int>(k), middle, 1 - (last - first)});
    }
  }
  return out;
}

}  // namespace inchwright::seen
