#include "core/sheet/label_placer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include "core/sheet/style.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kClear = 0.35;  // of white around a name

/// A text of which the middle of the box stands at `middle`.
TextItem textAbout(PlanePoint middle, std::string_view name, const Sketch::Look& look) {
  const TextReach reach = reachOf(name);
  TextItem item;
  item.text = std::string(name);
  item.height = look.height;
  item.face = look.face;
  item.ink = look.ink;
  item.at = {middle.x - textWidth(name, look.height, look.face) / 2,
             middle.y + (reach.above - reach.below) * look.height / 2};
  return item;
}

PaperBox movedBy(const PaperBox& box, PlanePoint by) {
  return {box.left + by.x, box.top + by.y, box.right + by.x, box.bottom + by.y};
}

/// Directions round a disc, from the upper right on anticlockwise.
const std::array<PlanePoint, 16>& waysAround() {
  static const std::array<PlanePoint, 16> kWays = [] {
    std::array<PlanePoint, 16> ways;
    for (std::size_t i = 0; i < ways.size(); ++i) {
      const double angle = (45.0 + 22.5 * static_cast<double>(i)) * std::numbers::pi / 180;
      ways[i] = {std::cos(angle), -std::sin(angle)};
    }
    return ways;
  }();
  return kWays;
}

bool isWithin(const PaperBox& box, PlanePoint point, double distance) {
  const double dx = std::max({box.left - point.x, 0.0, point.x - box.right});
  const double dy = std::max({box.top - point.y, 0.0, point.y - box.bottom});
  return dx * dx + dy * dy < distance * distance;
}

}  // namespace

void LabelPlacer::keepOff(const PaperBox& box) {
  boxesAt_.add(box, static_cast<std::uint32_t>(boxes_.size()));
  boxes_.push_back(box);
  mask_.mark(box);
}

void LabelPlacer::keepOff(PlanePoint centre, double radius) {
  const PaperBox around = PaperBox{centre.x, centre.y, centre.x, centre.y}.grownBy(radius);
  discsAt_.add(around, static_cast<std::uint32_t>(discs_.size()));
  discs_.push_back({centre, radius});
  mask_.mark(centre, radius);
}

void LabelPlacer::avoid(PlanePoint from, PlanePoint to) {
  lines_.push_back({std::min(from.x, to.x), std::min(from.y, to.y), std::max(from.x, to.x),
                    std::max(from.y, to.y)});
}

bool LabelPlacer::isClear(const PaperBox& box) const {
  return region_.holds(box) &&
         !boxesAt_.any(box, [&](std::uint32_t number) { return boxes_[number].meets(box); });
}

bool LabelPlacer::isFree(const PaperBox& box) const {
  if (!region_.holds(box) || mask_.isTaken(box)) return false;
  if (mask_.isEmpty(box)) return true;
  return isClear(box) && !discsAt_.any(box, [&](std::uint32_t number) {
    return isWithin(box, discs_[number].centre, discs_[number].radius);
  });
}

bool LabelPlacer::placeInside(Sketch& sketch, std::string_view name, const Sketch::Look& look,
                              PlanePoint centre, double radius) {
  constexpr double kSame = 1e-6;
  const TextItem item = textAbout(centre, name, look);
  const PaperBox box = boundsOf(item).grownBy(kClear);
  if (std::hypot(box.width(), box.height()) / 2 + kClear > radius || !isClear(box)) return false;
  const bool alone = !discsAt_.any(box, [&](std::uint32_t number) {
    const Disc& disc = discs_[number];
    const double apart = std::hypot(disc.centre.x - centre.x, disc.centre.y - centre.y);
    return apart > kSame && isWithin(box, disc.centre, disc.radius);
  });
  if (alone) set(sketch, item);
  return alone;
}

int LabelPlacer::crossings(const PaperBox& box) const {
  return static_cast<int>(std::count_if(lines_.begin(), lines_.end(), [&](const PaperBox& line) {
    return line.grownBy(0.01).meets(box);
  }));
}

void LabelPlacer::set(Sketch& sketch, const TextItem& item) {
  keepOff(boundsOf(item).grownBy(kClear));
  sketch.add(item);
}

bool LabelPlacer::placeAround(Sketch& sketch, std::string_view name, const Sketch::Look& look,
                              PlanePoint centre, double radius) {
  struct Found {
    PlanePoint middle;
    double cost;
    double gap;
    PlanePoint way;
  };
  std::optional<Found> best;
  const PaperBox shape = boundsOf(textAbout({0, 0}, name, look));
  const auto& ways = waysAround();
  constexpr std::array kGaps{0.7, 2.5, 5.0, 8.0, 12.0, 17.0};
  mask_.findRoomFor(shape.width() + 2 * kClear, shape.height() + 2 * kClear);
  for (const double gap : kGaps) {
    if (best && best->cost <= gap) break;
    for (std::size_t i = 0; i < ways.size(); ++i) {
      const PlanePoint way = ways[i];
      // So far off that the box just clears the disc in this direction.
      const double reach =
          radius + gap + std::abs(way.x) * shape.width() / 2 + std::abs(way.y) * shape.height() / 2;
      const PlanePoint middle{centre.x + way.x * reach, centre.y + way.y * reach};
      const PaperBox box = movedBy(shape, middle).grownBy(kClear);
      const bool mayBe = region_.holds(box) && mask_.mayHold(box);
      if (!mayBe || !isFree(box) || isWithin(box, centre, radius)) continue;
      const double cost =
          gap + 4.0 * crossings(box) + (i % 4 == 0 ? 0 : 0.4) + 0.02 * static_cast<double>(i);
      if (!best || cost < best->cost) best = Found{middle, cost, gap, way};
    }
  }
  if (!best) return false;
  if (best->gap > 2) {
    const PlanePoint way = best->way;
    sketch.line({centre.x + way.x * radius, centre.y + way.y * radius},
                {centre.x + way.x * (radius + best->gap), centre.y + way.y * (radius + best->gap)},
                {Ink::black, kHairline, {}});
  }
  set(sketch, textAbout(best->middle, name, look));
  return true;
}

bool LabelPlacer::placeAlong(Sketch& sketch, std::string_view name, const Sketch::Look& look,
                             PlanePoint from, PlanePoint to, double outX, double outY) {
  std::optional<TextItem> best;
  double least = 0;
  const PaperBox shape = boundsOf(textAbout({0, 0}, name, look));
  const double half = (std::abs(outX) * shape.width() + std::abs(outY) * shape.height()) / 2;
  for (const double gap : {1.0, 2.5, 5.0, 7.5, 10.0, 13.0}) {
    for (const double share : {0.5, 0.38, 0.62, 0.26, 0.74, 0.14, 0.86}) {
      const PlanePoint middle{from.x + (to.x - from.x) * share + outX * (half + gap),
                              from.y + (to.y - from.y) * share + outY * (half + gap)};
      const TextItem item = textAbout(middle, name, look);
      const PaperBox box = boundsOf(item).grownBy(kClear);
      if (!isFree(box)) continue;
      const double cost = gap + 4.0 * crossings(box) + std::abs(share - 0.5);
      if (!best || cost < least) {
        best = item;
        least = cost;
      }
    }
  }
  if (!best) return false;
  set(sketch, *best);
  return true;
}

}  // namespace inchwright
