#include "core/seen/angles.h"

#include <cmath>
#include <optional>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kLeastArc = 0.3, kMostArc = 6;  // of arcs, inches of the sheet
constexpr std::size_t kMostPairs = 30000;  // of corners and lettering: what has more is no print
constexpr double kLeastRun = 0.1;          // of an arc beside its figure, likewise
constexpr double kLineDrawn = 0.6;         // of either line, which may be a centre line

PlanePoint onArc(PlanePoint c, double radius, double degrees) {
  return {c.x + radius * std::cos(degrees * kDegree), c.y - radius * std::sin(degrees * kDegree)};
}

/// How far an arc is inked from `from` on, degrees with their sign; three bare pixels end it.
double inkedTo(const Grey& cover, PlanePoint c, double radius, double from, double most) {
  const double step = (most < 0 ? -1 : 1) / (radius * kDegree);
  int bare = 0;
  double turn = 0;
  for (; std::abs(turn) < std::abs(most); turn += step) {
    const PlanePoint p = onArc(c, radius, from + turn);
    bare = inkNear(cover, p.x, p.y, 1) ? 0 : bare + 1;
    if (bare == 3) return turn - 2 * step;
  }
  return turn;
}

std::vector<PlanePoint> cornersOf(const Outlines& outlines, const std::vector<Circle>& holes,
                                  double near) {
  std::vector<PlanePoint> out;
  const auto add = [&](PlanePoint p) {
    const bool had = std::any_of(out.begin(), out.end(), [&](PlanePoint o) {
      return std::hypot(o.x - p.x, o.y - p.y) < near;
    });
    if (!had) out.push_back(p);
  };
  for (const Outlines::Side& level : outlines.sides) {
    for (const Outlines::Side& plumb : outlines.sides) {
      if (level.plumb || !plumb.plumb || level.view != plumb.view) continue;
      const double x = plumb.stroke.yAt(level.stroke.y0), y = level.stroke.yAt(x);
      if (x > level.stroke.x0 - near && x < level.stroke.x1 + near && y > plumb.stroke.x0 - near &&
          y < plumb.stroke.x1 + near)
        add({x, y});
    }
  }
  for (const Rounding& r : outlines.rounds) add(r.corner);
  for (const Circle& h : holes) add({h.x, h.y});
  return out;
}

/// The arc round a corner that a block of lettering stands in.
std::optional<AngleArc> arcThrough(PlanePoint corner, const Box& block, const Grey& cover,
                                   double inch) {
  AngleArc arc;
  arc.corner = corner;
  arc.figure = {block.midX(), block.midY()};
  const double dx = arc.figure.x - corner.x, dy = corner.y - arc.figure.y;
  const double far = std::hypot(dx, dy), phi = std::atan2(dy, dx) / kDegree;
  if (far < kLeastArc * inch || far > kMostArc * inch || std::abs(phi) > 85) return {};
  // From beside the figure to the level line, and the other way to the slanting one.
  const double clear = (std::hypot(block.w, block.h) / 2 + 0.05 * inch) / (far * kDegree);
  const double way = phi < 0 ? -1 : 1, least = kLeastRun * inch / (far * kDegree);
  if (std::abs(phi) - clear < least) return {};
  for (double off = -0.06 * inch; off <= 0.06 * inch; off += 1) {
    const double radius = far + off;
    const double down = inkedTo(cover, corner, radius, phi - way * clear, -2 * phi),
                 up = inkedTo(cover, corner, radius, phi + way * clear, way * 90);
    const double low = phi - way * clear + down, high = phi + way * clear + up;
    if (std::min(std::abs(down), std::abs(up)) < least || std::abs(high) > 89) continue;
    if (low * way > 0.03 * inch / (far * kDegree)) continue;
    const double drawn = std::min(
        inkAlong(cover, onArc(corner, 0.3 * radius, 0), onArc(corner, radius, 0), 1).share,
        inkAlong(cover, onArc(corner, 0.3 * radius, high), onArc(corner, radius, high), 2).share);
    if (drawn < kLineDrawn || drawn <= arc.sure) continue;
    arc.radius = radius;
    arc.degrees = high;
    arc.to = onArc(corner, radius, high);
    arc.sure = drawn;
  }
  return arc.sure > 0 ? std::optional(arc) : std::nullopt;
}

}  // namespace

std::vector<AngleArc> angleArcsOf(const Outlines& outlines, const std::vector<Circle>& holes,
                                  const Grey& cover, const Lettering& whole, const Lettering& bare,
                                  double inch, const Stop& stop) {
  std::vector<AngleArc> out;
  const std::vector<PlanePoint> corners = cornersOf(outlines, holes, 0.06 * inch);
  std::vector<Box> blocks;
  for (const Lettering* lettering : {&whole, &bare}) {
    for (const Block& block : lettering->blocks) {
      if (block.box.w <= 0.9 * inch && block.box.h <= 0.3 * inch) blocks.push_back(block.box);
    }
  }
  if (corners.size() * blocks.size() > kMostPairs) return out;
  for (const PlanePoint corner : corners) {
    if (stop.asked()) return {};
    for (const Box& block : blocks) {
      std::optional<AngleArc> arc = arcThrough(corner, block, cover, inch);
      const bool had =
          arc && std::any_of(out.begin(), out.end(), [&](const AngleArc& o) {
            return o.corner == corner &&
                   std::hypot(o.figure.x - arc->figure.x, o.figure.y - arc->figure.y) < 0.1 * inch;
          });
      if (!arc || had) continue;
      // The line leads to the first hole that lies on it, from where the arc meets it.
      double nearest = std::numeric_limits<double>::infinity();
      for (const Circle& h : holes) {
        const double dx = h.x - corner.x, dy = corner.y - h.y, far = std::hypot(dx, dy);
        const double off = far * std::abs(std::atan2(dy, dx) - arc->degrees * kDegree);
        if (far < arc->radius || off > 0.04 * inch || far >= nearest) continue;
        nearest = far;
        arc->to = {h.x, h.y};
      }
      // A hole says where the line runs better than the arc's end does.
      if (std::isfinite(nearest))
        arc->degrees = std::atan2(corner.y - arc->to.y, arc->to.x - corner.x) / kDegree;
      out.push_back(*arc);
    }
  }
  return out;
}

}  // namespace inchwright::seen
