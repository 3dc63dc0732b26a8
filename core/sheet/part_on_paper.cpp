#include "core/sheet/part_on_paper.h"

#include <algorithm>
#include <vector>

namespace inchwright {
namespace {

struct Extent {
  double left = 0;
  double near = 0;
  double right = 0;
  double far = 0;
};

Extent extentOf(const DrawnPart& picture) {
  std::vector<PlanePoint> points = picture.outline;
  points.insert(points.end(), picture.stock.begin(), picture.stock.end());
  for (const DrawnHole& circle : picture.circles) {
    const double radius = std::max(circle.diameter, circle.seatDiameter) / 2;
    points.push_back({circle.centre.x - radius, circle.centre.y - radius});
    points.push_back({circle.centre.x + radius, circle.centre.y + radius});
  }
  for (const DrawnSlot& slot : picture.slots) {
    points.push_back({std::min(slot.from.x, slot.to.x) - slot.width / 2,
                      std::min(slot.from.y, slot.to.y) - slot.width / 2});
    points.push_back({std::max(slot.from.x, slot.to.x) + slot.width / 2,
                      std::max(slot.from.y, slot.to.y) + slot.width / 2});
  }
  for (const DrawnMilled& milled : picture.milled) {
    points.insert(points.end(), milled.ring.begin(), milled.ring.end());
  }
  for (const DrawnMark& mark : picture.marks) points.push_back(mark.at);
  if (points.empty()) return {-1, -1, 1, 1};
  Extent extent{points[0].x, points[0].y, points[0].x, points[0].y};
  for (const PlanePoint& point : points) {
    extent.left = std::min(extent.left, point.x);
    extent.right = std::max(extent.right, point.x);
    extent.near = std::min(extent.near, point.y);
    extent.far = std::max(extent.far, point.y);
  }
  return extent;
}

/// Takes zero into the picture unless it lies further off than half the work's longer side.
bool takeInZero(Extent& extent, const PlanePoint& zero) {
  const double most = std::max({extent.right - extent.left, extent.far - extent.near, 1.0}) / 2;
  if (zero.x < extent.left - most || zero.x > extent.right + most || zero.y < extent.near - most ||
      zero.y > extent.far + most) {
    return false;
  }
  extent.left = std::min(extent.left, zero.x);
  extent.right = std::max(extent.right, zero.x);
  extent.near = std::min(extent.near, zero.y);
  extent.far = std::max(extent.far, zero.y);
  return true;
}

}  // namespace

PartOnPaper laidOnPaper(const DrawnPart& picture, double width, double mostHeight, double hand) {
  PartOnPaper frame;
  Extent extent = extentOf(picture);
  frame.zeroInside = takeInZero(extent, picture.zero);
  const auto margin = [&](TableSide side) {
    const bool held = picture.jaw == side || picture.stop == side;
    return (held ? 12.5 : 8.0) * hand;
  };
  const double left = margin(TableSide::left);
  const double right = margin(TableSide::right);
  const double top = margin(TableSide::far);
  const double bottom = margin(TableSide::near);
  const double wide = std::max(extent.right - extent.left, 1e-3);
  const double deep = std::max(extent.far - extent.near, 1e-3);
  const double roomX = std::max(width - left - right, 5.0);
  const double roomY = std::max(mostHeight - top - bottom, 5.0);
  frame.scale = std::min(roomX / wide, roomY / deep);
  frame.left = extent.left;
  frame.far = extent.far;
  const double spare = roomX - wide * frame.scale;
  frame.work.left = left + spare / 2;
  frame.work.right = frame.work.left + wide * frame.scale;
  frame.work.top = top;
  frame.work.bottom = top + deep * frame.scale;
  frame.region = {frame.work.left - left, 0, frame.work.right + right, frame.work.bottom + bottom};
  return frame;
}

}  // namespace inchwright
