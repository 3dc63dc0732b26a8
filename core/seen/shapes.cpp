#include "core/seen/shapes.h"

#include <cmath>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostSides = 4000;  // what has more strokes is no print
constexpr double kHalfRound = 0.88;       // of a slot's end or side that is inked
constexpr double kLeastHalf = 0.3;        // of its radius: what is shorter is a circle
constexpr double kCentreLine = 0.3;       // of its centre line: a 0 has none
constexpr double kPlainShape = 0.94;      // of ends and sides of one that one Enter may take
constexpr double kPlainCentre = 0.6;      // and of its centre line
constexpr double kPlainRing = 0.6;        // of a ring's dashed circle

/// Holes on a circle, by how far round; empty unless they are evenly spaced.
std::vector<double> evenlyOn(const std::vector<Circle>& holes, double size, PlanePoint c,
                             double radius, double slack) {
  std::vector<double> turns;
  for (const Circle& h : holes) {
    if (std::abs(h.radius - size) > 0.08 * size + 1) continue;
    if (std::abs(std::hypot(h.x - c.x, h.y - c.y) - radius) < slack)
      turns.push_back(std::atan2(h.y - c.y, h.x - c.x));
  }
  std::sort(turns.begin(), turns.end());
  if (turns.size() < 3) return {};
  const double step = 2 * std::numbers::pi / static_cast<double>(turns.size());
  for (std::size_t i = 0; i < turns.size(); ++i) {
    const double next = i + 1 < turns.size() ? turns[i + 1] : turns[0] + 2 * std::numbers::pi;
    if (std::abs(next - turns[i] - step) * radius > 2 * slack) return {};
  }
  return turns;
}

/// Which of the holes, seen from the middle, lies straight up, else to the right, the left or down.
std::optional<int> squareOf(const std::vector<double>& turns, double radius, double slack) {
  for (const int degrees : {90, 0, 180, 270}) {
    const double turn = -degrees * std::numbers::pi / 180;  // y runs down
    if (std::any_of(turns.begin(), turns.end(), [&](double t) {
          return std::abs(std::remainder(t - turn, 2 * std::numbers::pi)) * radius < slack;
        }))
      return degrees;
  }
  return std::nullopt;
}

bool centreOf(const Circle& a, const Circle& b, const Circle& c, PlanePoint& out) {
  const double d = 2 * (a.x * (b.y - c.y) + b.x * (c.y - a.y) + c.x * (a.y - b.y));
  if (std::abs(d) < 1) return false;
  const double aa = a.x * a.x + a.y * a.y, bb = b.x * b.x + b.y * b.y, cc = c.x * c.x + c.y * c.y;
  out = {(aa * (b.y - c.y) + bb * (c.y - a.y) + cc * (a.y - b.y)) / d,
         (aa * (c.x - b.x) + bb * (a.x - c.x) + cc * (b.x - a.x)) / d};
  return true;
}

}  // namespace

namespace {

/// A slot along a view's level lines, in pixels.
struct Slot {
  PlanePoint middle;
  double half = 0;  ///< from the middle to the centre of either end
  double radius = 0;
  double ends = 0;    ///< how much of the worse end is drawn, 0 … 1
  double sides = 0;   ///< and of the worse side
  double centre = 0;  ///< and of the centre line, between the ends
};

/// The slot that two strokes beside one another may be the sides of; its `ends` are 0 where none
/// fits. The straight sides end where the round begins, and ink of the round lengthens them.
Slot slotBetween(const Grey& cover, const Stroke& a, const Stroke& b) {
  Slot s;
  s.radius = (b.y0 - a.y0) / 2;
  s.middle = {(a.x0 + a.x1 + b.x0 + b.x1) / 4, (a.y0 + b.y0) / 2};
  const double seen = (a.length() + b.length()) / 4, y = s.middle.y;
  for (double half = std::max(kLeastHalf * s.radius, seen - 0.6 * s.radius); half <= seen + 1;
       half += 1) {
    const double ends = std::min(inkOnArc(cover, {s.middle.x - half, y}, s.radius, 95, 265, 1),
                                 inkOnArc(cover, {s.middle.x + half, y}, s.radius, -85, 85, 1));
    if (ends > s.ends) s.ends = ends, s.half = half;
    if (s.ends >= kHalfRound) break;
  }
  const auto drawn = [&](double off) {
    return inkAlong(cover, {s.middle.x - s.half, y + off}, {s.middle.x + s.half, y + off}, 1).share;
  };
  s.sides = std::min(drawn(-s.radius), drawn(s.radius));
  s.centre = drawn(0);
  return s;
}

}  // namespace

std::vector<FeatureOffer> slotsOf(const View& view, bool plumb, const Outlines& outlines,
                                  const std::vector<Circle>& circles, const Frame& frame,
                                  const Stop& stop) {
  std::vector<FeatureOffer> out;
  const double inch = view.inch, near = 0.04 * inch;
  if (view.strokes.size() > kMostSides) return out;
  const auto round = [&](const Slot& s) {
    const double x = plumb ? s.middle.y : s.middle.x, y = plumb ? s.middle.x : s.middle.y;
    return std::any_of(circles.begin(), circles.end(), [&](const Circle& c) {
      return std::hypot(c.x - x, c.y - y) < 0.6 * c.radius;
    });
  };
  for (const Stroke& a : view.strokes) {
    if (stop.asked()) return {};
    if (a.thick < 0.009 * inch || a.length() > 3 * inch) continue;
    for (const Stroke& b : view.strokes) {
      const double width = b.y0 - a.y0;
      if (b.thick < 0.009 * inch || width < 0.06 * inch || width > inch) continue;
      if (std::abs(a.x0 - b.x0) > near + 0.2 * width || std::abs(a.x1 - b.x1) > near + 0.2 * width)
        continue;
      const Slot s = slotBetween(view.cover, a, b);
      if (s.ends < kHalfRound || s.sides < kHalfRound || s.centre < kCentreLine || round(s))
        continue;
      FeatureOffer f;
      f.kind = OfferedFeature::slot;
      const auto at = [&](double along) {
        return plumb ? frame.inches(s.middle.y, along) : frame.inches(along, s.middle.y);
      };
      f.at = at(s.middle.x);
      f.from = at(s.middle.x + (plumb ? s.half : -s.half));
      f.to = at(s.middle.x - (plumb ? s.half : -s.half));
      f.drawnRadius = s.radius / frame.perInch;
      f.view = plumb ? viewAt(outlines, s.middle.y, s.middle.x)
                     : viewAt(outlines, s.middle.x, s.middle.y);
      if (!outlines.views.empty() &&
          !outlines.views[f.view].holds(plumb ? s.middle.y : s.middle.x,
                                        plumb ? s.middle.x : s.middle.y, 0))
        continue;
      f.sure = std::min(s.ends, s.sides);
      f.ready = f.sure > kPlainShape && s.half > s.radius && s.centre > kPlainCentre;
      const bool had = std::any_of(out.begin(), out.end(), [&](const FeatureOffer& o) {
        return std::hypot(o.at.x - f.at.x, o.at.y - f.at.y) < f.drawnRadius;
      });
      if (!had) out.push_back(f);
    }
  }
  return out;
}

std::vector<FeatureOffer> ringsOf(const std::vector<Circle>& holes, const Grey& cover,
                                  const Outlines& outlines, const Frame& frame, double inch,
                                  const Stop& stop) {
  std::vector<FeatureOffer> out;
  const std::size_t n = std::min<std::size_t>(holes.size(), 60);
  const double slack = 0.02 * inch + 1;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      if (stop.asked()) return {};
      for (std::size_t k = j + 1; k < n; ++k) {
        PlanePoint c;
        if (!centreOf(holes[i], holes[j], holes[k], c)) continue;
        const double radius = std::hypot(holes[i].x - c.x, holes[i].y - c.y);
        if (radius > 3 * inch || radius < 0.15 * inch) continue;
        const bool had = std::any_of(out.begin(), out.end(), [&](const FeatureOffer& o) {
          return std::hypot(frame.pixel(o.at).x - c.x, frame.pixel(o.at).y - c.y) < 2 * slack;
        });
        if (had) continue;
        const auto turns = evenlyOn(holes, holes[i].radius, c, radius, slack);
        if (turns.empty()) continue;
        const double ink = inkOnArc(cover, c, radius, 0, 360, 1);
        if (ink < 0.45) continue;
        FeatureOffer f;
        f.kind = OfferedFeature::ring;
        f.at = frame.inches(c.x, c.y);
        f.drawnRadius = radius / frame.perInch;
        f.count = static_cast<int>(turns.size());
        f.firstAngle = squareOf(turns, radius, slack);
        f.view = viewAt(outlines, c.x, c.y);
        f.sure = ink;
        f.ready = ink > kPlainRing;
        out.push_back(f);
      }
    }
  }
  return out;
}

}  // namespace inchwright::seen
