#include "core/part/crooked_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace inchwright {

std::vector<KnownPoint> knownPoints(const std::vector<SquaringPoint>& points) {
  std::vector<KnownPoint> known;
  for (const SquaringPoint& one : points) {
    known.push_back({{one.pixelX, one.pixelY}, {one.x.value.toInches(), one.y.value.toInches()}});
  }
  return known;
}

std::optional<CrookedPicture> crookedBy(const std::vector<SquaringPoint>& points) {
  constexpr double kMostLean = 30, kMostStretch = 1.7;
  const std::vector<KnownPoint> known = knownPoints(points);
  if (known.empty()) return std::nullopt;
  const Result<SquaredUp> squared = squareUp(known);
  if (!squared) return std::nullopt;
  PlanePoint middle;
  for (const KnownPoint& one : known) {
    middle.x += one.pixel.x / static_cast<double>(known.size());
    middle.y += one.pixel.y / static_cast<double>(known.size());
  }
  const auto step = [&](double x, double y) {
    const PlanePoint from = squared->pixelToInches.map(middle);
    const PlanePoint to = squared->pixelToInches.map({middle.x + x, middle.y + y});
    return PlanePoint{to.x - from.x, to.y - from.y};
  };
  // One pixel to the right and one up.
  const PlanePoint right = step(1, 0), up = step(0, -1);
  const double across = std::hypot(right.x, right.y), high = std::hypot(up.x, up.y);
  const double turned = right.x * up.y - right.y * up.x;
  if (!(across > 0) || !(high > 0)) return std::nullopt;
  if (turned < 0) return CrookedPicture{true, 0, 1};
  const double sine = std::min(1.0, turned / (across * high));
  const CrookedPicture crooked{false, 90 - std::asin(sine) * 180 / std::numbers::pi,
                               std::max(across / high, high / across)};
  if (crooked.lean <= kMostLean && crooked.stretch <= kMostStretch) return std::nullopt;
  return crooked;
}

}  // namespace inchwright
