#include "core/sheet/symbols.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/sheet/style.h"

namespace inchwright {

void drawZeroMark(Sketch& sketch, PlanePoint at, double size) {
  const auto lozenge = [&](double half) {
    return std::vector<PlanePoint>{
        {at.x, at.y - half}, {at.x + half, at.y}, {at.x, at.y + half}, {at.x - half, at.y}};
  };
  PolylineItem outer;
  outer.points = lozenge(size);
  outer.closed = true;
  outer.stroke.width = kMedium;
  outer.filled = true;
  sketch.add(std::move(outer));
  sketch.fill(lozenge(size * 0.45));
}

void drawArrowHead(Sketch& sketch, PlanePoint tip, double dx, double dy, double length) {
  const double half = length * 0.38;
  const PlanePoint back{tip.x - dx * length, tip.y - dy * length};
  sketch.fill(
      {tip, {back.x - dy * half, back.y + dx * half}, {back.x + dy * half, back.y - dx * half}});
}

void drawTornEdge(Sketch& sketch, double x, double top, double bottom) {
  constexpr double kTooth = 1.4;
  const int teeth = std::max(2, static_cast<int>(std::lround((bottom - top) / kTooth)));
  std::vector<PlanePoint> points;
  for (int i = 0; i <= teeth; ++i) {
    points.push_back({x + (i % 2 == 0 ? 0 : kTooth), top + (bottom - top) * i / teeth});
  }
  sketch.polyline(std::move(points), {Ink::black, kMedium, {}});
}

void drawMindMark(Sketch& sketch, PlanePoint centre, double size) {
  const double half = size / 2;
  sketch.polyline({{centre.x, centre.y - half},
                   {centre.x + half * 1.1, centre.y + half},
                   {centre.x - half * 1.1, centre.y + half}},
                  {Ink::black, kMedium, {}}, true);
  sketch.line({centre.x, centre.y - half * 0.3}, {centre.x, centre.y + half * 0.35},
              {Ink::black, kMedium, {}});
  sketch.disc({centre.x, centre.y + half * 0.68}, size * 0.07, Ink::black);
}

void drawQueryMark(Sketch& sketch, PlanePoint centre, double size) {
  sketch.circle(centre, size / 2, {Ink::black, kThin, {}});
  const double height = size * 0.56;
  sketch.text(centre.x, centre.y + height / 2, "?",
              {height, Typeface::bold, TextAlign::centre, Ink::black, 0});
}

void drawTickBox(Sketch& sketch, PlanePoint at, double size) {
  sketch.box({at.x, at.y, at.x + size, at.y + size}, {Ink::black, 0.35, {}});
}

void drawHatchedBox(Sketch& sketch, const PaperBox& box, double pitch, double width) {
  // Lines x + y = sum, cut off at the box.
  for (double sum = box.left + box.top + pitch; sum < box.right + box.bottom; sum += pitch) {
    const double upperX = std::min(box.right, sum - box.top);
    const double lowerX = std::max(box.left, sum - box.bottom);
    if (upperX <= lowerX) continue;
    sketch.line({lowerX, sum - lowerX}, {upperX, sum - upperX}, {Ink::black, width, {}});
  }
}

}  // namespace inchwright
