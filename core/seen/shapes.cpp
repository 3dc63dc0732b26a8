#include "core/seen/shapes.h"

#include <cmath>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr double kHalfRound = 0.88;  // of a slot's end that is inked

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

bool centreOf(const Circle& a, const Circle& b, const Circle& c, PlanePoint& out) {
  const double d = 2 * (a.x * (b.y - c.y) + b.x * (c.y - a.y) + c.x * (a.y - b.y));
  if (std::abs(d) < 1) return false;
  const double aa = a.x * a.x + a.y * a.y, bb = b.x * b.x + b.y * b.y, cc = c.x * c.x + c.y * c.y;
  out = {(aa * (b.y - c.y) + bb * (c.y - a.y) + cc * (a.y - b.y)) / d,
         (aa * (c.x - b.x) + bb * (a.x - c.x) + cc * (b.x - a.x)) / d};
  return true;
}

}  // namespace

std::vector<FeatureOffer> slotsOf(const View& view, bool plumb, const Outlines& outlines,
                                  const Frame& frame) {
  std::vector<FeatureOffer> out;
  const double inch = view.inch, near = 0.04 * inch;
  for (std::size_t i = 0; i < view.strokes.size(); ++i) {
    const Stroke& a = view.strokes[i];
    if (a.thick < 0.009 * inch || a.length() > 3 * inch) continue;
    for (std::size_t k = 0; k < view.strokes.size(); ++k) {
      const Stroke& b = view.strokes[k];
      const double width = b.y0 - a.y0;
      if (b.thick < 0.009 * inch || width < 0.06 * inch || width > inch) continue;
      if (std::abs(a.x0 - b.x0) > near + 0.2 * width || std::abs(a.x1 - b.x1) > near + 0.2 * width)
        continue;
      const double r = width / 2, y = (a.y0 + b.y0) / 2;
      // The straight sides end where the round begins, and ink of the round lengthens them.
      const double middle = (a.x0 + a.x1 + b.x0 + b.x1) / 4, seen = (a.length() + b.length()) / 4;
      for (double half = std::max(0.0, seen - 0.6 * r); half <= seen + 1; half += 1) {
        const double ends = std::min(inkOnArc(view.cover, {middle - half, y}, r, 95, 265, 1),
                                     inkOnArc(view.cover, {middle + half, y}, r, -85, 85, 1));
        if (ends < kHalfRound) continue;
        FeatureOffer f;
        f.kind = OfferedFeature::slot;
        const auto at = [&](double along) {
          return plumb ? frame.inches(y, along) : frame.inches(along, y);
        };
        f.at = at(middle);
        f.from = plumb ? at(middle + half) : at(middle - half);
        f.to = plumb ? at(middle - half) : at(middle + half);
        f.drawnRadius = r / frame.perInch;
        f.view = plumb ? viewAt(outlines, y, middle) : viewAt(outlines, middle, y);
        f.sure = ends;
        const bool had = std::any_of(out.begin(), out.end(), [&](const FeatureOffer& o) {
          return std::hypot(o.at.x - f.at.x, o.at.y - f.at.y) * frame.perInch < r;
        });
        if (!had) out.push_back(f);
        break;
      }
    }
  }
  return out;
}

std::vector<FeatureOffer> ringsOf(const std::vector<Circle>& holes, const Grey& cover,
                                  const Outlines& outlines, const Frame& frame, double inch) {
  std::vector<FeatureOffer> out;
  const std::size_t n = std::min<std::size_t>(holes.size(), 60);
  const double slack = 0.02 * inch + 1;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
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
        f.view = viewAt(outlines, c.x, c.y);
        f.sure = ink;
        out.push_back(f);
      }
    }
  }
  return out;
}

}  // namespace inchwright::seen
