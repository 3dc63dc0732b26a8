#include "core/checks/plan_shapes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace inchwright {
namespace {

std::int64_t hypotenuse(std::int64_t a, std::int64_t b) {
  const long double x = static_cast<long double>(a), y = static_cast<long double>(b);
  return std::llroundl(std::sqrt(x * x + y * y));
}

}  // namespace

std::int64_t distanceBetween(const Spot& a, const Spot& b) {
  return hypotenuse(a[0] - b[0], a[1] - b[1]);
}

std::int64_t distanceTo(const Rectangle& rectangle, const Spot& spot) {
  Spot beyond{};
  std::int64_t within = std::numeric_limits<std::int64_t>::max();
  for (std::size_t i = 0; i < 2; ++i) {
    if (rectangle.low[i]) {
      beyond[i] = std::max(beyond[i], *rectangle.low[i] - spot[i]);
      within = std::min(within, spot[i] - *rectangle.low[i]);
    }
    if (rectangle.high[i]) {
      beyond[i] = std::max(beyond[i], spot[i] - *rectangle.high[i]);
      within = std::min(within, *rectangle.high[i] - spot[i]);
    }
  }
  if (beyond[0] == 0 && beyond[1] == 0) {
    // Without a side all lies in it, and how far in is not known.
    return within == std::numeric_limits<std::int64_t>::max() ? 0 : -within;
  }
  return hypotenuse(beyond[0], beyond[1]);
}

Rectangle grownBack(const Rectangle& rectangle, std::size_t axis, std::int64_t length) {
  Rectangle grown = rectangle;
  if (grown.low[axis]) grown.low[axis] = *grown.low[axis] - length;
  return grown;
}

}  // namespace inchwright
