#include "app/canvas/inked.h"

#include <algorithm>
#include <iterator>

namespace inchwright::app {
namespace {

constexpr qreal kFarthest = 1e9;  // pixels: nothing so far off is seen

constexpr std::size_t kMostBoxes = 60;  // beyond that one box about all is quicker

}  // namespace

QRect pixelsOf(const QRectF& box) {
  const auto low = [](qreal at) {
    at = std::clamp(at, -kFarthest, kFarthest);
    const int whole = static_cast<int>(at);
    return at < whole ? whole - 1 : whole;
  };
  return {QPoint(low(box.left()), low(box.top())),
          QPoint(-low(-box.right()) - 1, -low(-box.bottom()) - 1)};
}

QRegion changedBetween(std::vector<Inked>& before, std::vector<Inked>& after) {
  // What was looked through last time is still in order.
  if (!std::is_sorted(before.begin(), before.end())) std::sort(before.begin(), before.end());
  std::sort(after.begin(), after.end());
  std::vector<Inked> changed;
  std::set_symmetric_difference(before.begin(), before.end(), after.begin(), after.end(),
                                std::back_inserter(changed));
  QRegion region;
  QRect all;
  for (const Inked& one : changed) all |= one.box;
  if (changed.size() > kMostBoxes) return all;
  for (const Inked& one : changed) region += one.box;
  return region;
}

}  // namespace inchwright::app
