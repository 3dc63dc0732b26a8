#include "core/sheet/part_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "core/sheet/style.h"

namespace inchwright {
namespace {

using Polygon = std::vector<PlanePoint>;

const Stroke kOutline{Ink::black, 0.7, {}};
const Stroke kDashed{Ink::black, 0.35, {2.2, 1.2}};

Polygon onPaper(const std::vector<PlanePoint>& points, const PartOnPaper& frame) {
  Polygon polygon;
  for (const PlanePoint& point : points) polygon.push_back(frame.at(point));
  return polygon;
}

/// Where the line x + y = sum crosses the sides of a polygon, as x.
void crossings(const Polygon& polygon, double sum, std::vector<double>& xs) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PlanePoint& a = polygon[i];
    const PlanePoint& b = polygon[(i + 1) % polygon.size()];
    const double da = a.x + a.y - sum;
    const double db = b.x + b.y - sum;
    if ((da < 0) == (db < 0)) continue;
    xs.push_back(a.x + (b.x - a.x) * da / (da - db));
  }
}

/// Hatches what lies in exactly one of the two outlines: what is still to come off.
void hatchBetween(Sketch& sketch, const Polygon& stock, const Polygon& part) {
  constexpr double kPitch = 1.5;
  double low = stock[0].x + stock[0].y;
  double high = low;
  for (const PlanePoint& point : stock) {
    low = std::min(low, point.x + point.y);
    high = std::max(high, point.x + point.y);
  }
  std::vector<double> xs;
  // A little off the corners, which would count twice.
  for (double sum = low + 0.7531; sum < high; sum += kPitch) {
    xs.clear();
    crossings(stock, sum, xs);
    crossings(part, sum, xs);
    std::sort(xs.begin(), xs.end());
    for (std::size_t i = 0; i + 1 < xs.size(); i += 2) {
      if (xs[i + 1] - xs[i] < 0.05) continue;
      sketch.line({xs[i], sum - xs[i]}, {xs[i + 1], sum - xs[i + 1]}, {Ink::black, kHairline, {}});
    }
  }
}

void drawOutline(Sketch& sketch, const DrawnPart& picture, const Polygon& outline,
                 LabelPlacer& placer) {
  if (outline.empty()) return;
  PolylineItem whole;
  whole.points = outline;
  whole.closed = true;
  whole.stroke = kOutline;
  const PaperBox box = boundsOf(DrawItem(whole)).grownBy(-kOutline.width / 2);
  if (picture.missing.empty()) sketch.add(whole);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanePoint& a = outline[i];
    const PlanePoint& b = outline[(i + 1) % outline.size()];
    if (a.x == b.x || a.y == b.y) placer.avoid(a, b);
    if (!picture.missing.empty()) {
      sketch.line(a, b, isGuessed(picture, a, b, box) ? kDashed : kOutline);
    }
  }
}

void drawSlot(Sketch& sketch, const DrawnSlot& slot, const PartOnPaper& frame,
              LabelPlacer& placer) {
  const PlanePoint from = frame.at(slot.from);
  const PlanePoint to = frame.at(slot.to);
  const double radius = std::max(slot.width / 2 * frame.scale, kLeastRadius);
  const double along = std::atan2(to.y - from.y, to.x - from.x);
  constexpr int kParts = 16;
  PolylineItem item;
  for (int end = 0; end < 2; ++end) {
    const PlanePoint& centre = end == 0 ? to : from;
    for (int i = 0; i <= kParts; ++i) {
      const double angle =
          along + std::numbers::pi * (-0.5 + end + static_cast<double>(i) / kParts);
      item.points.push_back(
          {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
    }
  }
  item.closed = true;
  item.stroke = {Ink::black, kMedium, {}};
  item.filled = true;
  placer.keepOff(boundsOf(DrawItem(item)));
  sketch.add(std::move(item));
}

void drawMilled(Sketch& sketch, const DrawnMilled& milled, const PartOnPaper& frame,
                LabelPlacer& placer) {
  PolylineItem item;
  for (const PlanePoint point : milled.ring) item.points.push_back(frame.at(point));
  item.closed = true;
  item.stroke = {Ink::black, kMedium, {}};
  for (std::size_t i = 0; i < item.points.size(); ++i) {
    placer.avoid(item.points[i], item.points[(i + 1) % item.points.size()]);
  }
  sketch.add(std::move(item));
}

/// A circle of any size, cut off at the region.
void drawRound(Sketch& sketch, const DrawnRound& round, const PartOnPaper& frame) {
  constexpr int kParts = 240;
  const PlanePoint centre = frame.at(round.centre);
  const double radius = round.radius * frame.scale;
  std::vector<PlanePoint> run;
  const auto flush = [&] {
    if (run.size() > 1) sketch.polyline(run, {Ink::black, kThin, {}});
    run.clear();
  };
  for (int i = 0; i <= kParts; ++i) {
    const double angle = 2 * std::numbers::pi * i / kParts;
    const PlanePoint point{centre.x + radius * std::cos(angle),
                           centre.y + radius * std::sin(angle)};
    if (frame.work.grownBy(0.5).holds({point.x, point.y, point.x, point.y})) {
      run.push_back(point);
    } else {
      flush();
    }
  }
  flush();
}

void drawHole(Sketch& sketch, const DrawnHole& hole, const PartOnPaper& frame,
              LabelPlacer& placer) {
  const PlanePoint centre = frame.at(hole.centre);
  const double radius = std::max(hole.diameter / 2 * frame.scale, kLeastRadius);
  CircleItem circle;
  circle.centre = centre;
  circle.filled = true;
  if (hole.seatDiameter > hole.diameter) {
    circle.radius = std::max(hole.seatDiameter / 2 * frame.scale, radius);
    circle.stroke = {Ink::black, kThin, {}};
    sketch.add(circle);
  }
  circle.radius = radius;
  circle.stroke = {Ink::black, kMedium, {}};
  if (hole.disputed) circle.stroke.dash = {1.2, 0.8};
  sketch.add(circle);
  if (hole.tapped) {
    // Three quarters of a thin circle about the hole: ISO 6410-1.
    circle.radius = radius * 1.22 + 0.3;
    circle.filled = false;
    circle.stroke = {Ink::black, kThin, {}};
    circle.start = 100;
    circle.sweep = 250;
    sketch.add(circle);
  }
  placer.keepOff(centre, radiusOnPaper(hole, frame));
}

void drawPoint(Sketch& sketch, PlanePoint at, LabelPlacer& placer) {
  constexpr double kArm = 1.1;
  const Stroke stroke{Ink::black, 0.35, {}};
  sketch.line({at.x - kArm, at.y - kArm}, {at.x + kArm, at.y + kArm}, stroke);
  sketch.line({at.x - kArm, at.y + kArm}, {at.x + kArm, at.y - kArm}, stroke);
  placer.keepOff(at, kArm);
}

}  // namespace

bool isGuessed(const DrawnPart& picture, const PlanePoint& a, const PlanePoint& b,
               const PaperBox& box) {
  constexpr double kNear = 1e-6;
  return std::any_of(picture.missing.begin(), picture.missing.end(), [&](TableSide side) {
    switch (side) {
      case TableSide::left:
        return std::max(a.x, b.x) < box.left + kNear;
      case TableSide::right:
        return std::min(a.x, b.x) > box.right - kNear;
      case TableSide::far:
        return std::max(a.y, b.y) < box.top + kNear;
      case TableSide::near:
        break;
    }
    return std::min(a.y, b.y) > box.bottom - kNear;
  });
}

double radiusOnPaper(const DrawnHole& circle, const PartOnPaper& frame) {
  const double hole = std::max(circle.diameter / 2 * frame.scale, kLeastRadius);
  const double thread = circle.tapped ? hole * 1.22 + 0.45 : hole;
  return std::max(thread, circle.seatDiameter / 2 * frame.scale) + 0.25;
}

void drawWork(Sketch& sketch, const DrawnPart& picture, const PartOnPaper& frame,
              LabelPlacer& placer) {
  const Polygon outline = onPaper(picture.outline, frame);
  const Polygon stock = onPaper(picture.stock, frame);
  if (!stock.empty()) {
    if (!outline.empty()) hatchBetween(sketch, stock, outline);
    sketch.polyline(stock, kDashed, true);
  }
  drawOutline(sketch, picture, outline, placer);
  for (const DrawnEdge& edge : picture.edges) {
    if (edge.side) continue;
    sketch.line(frame.at(edge.from), frame.at(edge.to), {Ink::black, 0.35, {}});
    placer.avoid(frame.at(edge.from), frame.at(edge.to));
  }
  for (const DrawnRound& round : picture.rounds) drawRound(sketch, round, frame);
  for (const DrawnMilled& milled : picture.milled) drawMilled(sketch, milled, frame, placer);
  for (const DrawnSlot& slot : picture.slots) drawSlot(sketch, slot, frame, placer);
  for (const DrawnHole& hole : picture.circles) drawHole(sketch, hole, frame, placer);
  for (const DrawnMark& mark : picture.marks) drawPoint(sketch, frame.at(mark.at), placer);
}

}  // namespace inchwright
