#include "core/seen/drawn_features.h"

#include <cmath>

#include "core/seen/sets.h"

namespace inchwright::seen {
namespace {

constexpr double kOutline = 0.0125;  // an outline, inches of the sheet

struct Thick {
  Stroke stroke;
  bool plumb;

  PlanePoint end(bool second) const {
    const double along = second ? stroke.x1 : stroke.x0, across = second ? stroke.y1 : stroke.y0;
    return plumb ? PlanePoint{across, along} : PlanePoint{along, across};
  }
  /// How far a place is off the stroke.
  double off(PlanePoint p) const {
    const double u = plumb ? p.y : p.x, w = plumb ? p.x : p.y;
    return std::max(std::abs(w - stroke.yAt(u)), std::max(stroke.x0 - u, u - stroke.x1));
  }
};

std::vector<Thick> thickOf(const View& view, bool plumb) {
  std::vector<Thick> out;
  std::vector<Stroke> heavy;
  for (const Stroke& s : view.strokes) {
    if (s.thick > kOutline * view.inch) heavy.push_back(s);
  }
  for (const Chain& c : chained(heavy, 0.12 * view.inch, 0.02 * view.inch + 1)) {
    const Stroke s = through(c);
    if (s.length() > 0.12 * view.inch) out.push_back({s, plumb});
  }
  return out;
}

double gapTo(const ViewBox& v, double x, double y) {
  return std::hypot(std::max({0.0, v.x0 - x, x - v.x1}), std::max({0.0, v.y0 - y, y - v.y1}));
}

}  // namespace

Outlines outlinesOf(const View& level, const View& plumb, const Frame& frame) {
  const double inch = level.inch, near = 0.05 * inch;
  std::vector<Thick> all = thickOf(level, false);
  const std::vector<Thick> other = thickOf(plumb, true);
  all.insert(all.end(), other.begin(), other.end());
  Sets sets(static_cast<int>(all.size()));
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (k != i && std::min(all[k].off(all[i].end(false)), all[k].off(all[i].end(true))) < near) {
        sets.join(static_cast<int>(i), static_cast<int>(k));
      }
    }
  }
  struct Group {
    ViewBox box{1e9, 1e9, -1e9, -1e9};
    int level = 0, plumb = 0;
    std::vector<int> members;
  };
  std::vector<Group> groups(all.size());
  ViewBox whole{1e9, 1e9, -1e9, -1e9};
  const auto grow = [](ViewBox& b, PlanePoint p) {
    b = {std::min(b.x0, p.x), std::min(b.y0, p.y), std::max(b.x1, p.x), std::max(b.y1, p.y)};
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    Group& g = groups[sets.of(static_cast<int>(i))];
    for (const bool end : {false, true}) grow(g.box, all[i].end(end)), grow(whole, all[i].end(end));
    (all[i].plumb ? g.plumb : g.level) += 1;
    g.members.push_back(static_cast<int>(i));
  }
  const auto frames = [&](const Group& g) {
    return g.box.x1 - g.box.x0 > 0.9 * (whole.x1 - whole.x0) &&
           g.box.y1 - g.box.y0 > 0.5 * (whole.y1 - whole.y0) &&
           std::any_of(groups.begin(), groups.end(), [&](const Group& o) {
             return &o != &g && o.level > 1 && o.plumb > 1 && o.box.x0 > g.box.x0 &&
                    o.box.x1 < g.box.x1 && o.box.y0 > g.box.y0 && o.box.y1 < g.box.y1;
           });
  };
  std::vector<const Group*> kept;
  for (const Group& g : groups) {
    if (g.level >= 1 && g.plumb >= 1 && g.level + g.plumb >= 3 && !frames(g)) kept.push_back(&g);
  }
  const PlanePoint zero = frame.pixel({0, 0});
  std::stable_sort(kept.begin(), kept.end(), [&](const Group* a, const Group* b) {
    const double da = gapTo(a->box, zero.x, zero.y), db = gapTo(b->box, zero.x, zero.y);
    if (std::abs(da - db) > 0.1 * inch) return da < db;
    return a->members.size() > b->members.size();
  });
  Outlines out;
  for (const Group* g : kept) {
    const int view = static_cast<int>(out.views.size());
    out.views.push_back(g->box);
    for (const int i : g->members) out.sides.push_back({all[i].stroke, all[i].plumb, view});
  }
  return out;
}

int viewAt(const Outlines& outlines, double x, double y) {
  int best = 0;
  for (std::size_t i = 1; i < outlines.views.size(); ++i) {
    if (gapTo(outlines.views[i], x, y) < gapTo(outlines.views[best], x, y))
      best = static_cast<int>(i);
  }
  return best;
}

std::vector<FeatureOffer> featuresOf(const Outlines& outlines, const std::vector<Circle>& circles,
                                     const Frame& frame, double inch) {
  std::vector<FeatureOffer> out;
  for (const Outlines::Side& s : outlines.sides) {
    FeatureOffer f;
    f.kind = OfferedFeature::edge;
    const auto at = [&](double along, double across) {
      return s.plumb ? frame.inches(across, along) : frame.inches(along, across);
    };
    const double middle = (s.stroke.x0 + s.stroke.x1) / 2;
    f.at = at(middle, s.stroke.yAt(middle));
    f.from = at(s.stroke.x0, s.stroke.y0);
    f.to = at(s.stroke.x1, s.stroke.y1);
    if (f.from.x + f.from.y > f.to.x + f.to.y) std::swap(f.from, f.to);
    f.alongX = s.plumb;
    f.view = s.view;
    f.sure = 1;
    out.push_back(f);
  }
  for (const Circle& c : circles) {
    if (c.cross <= kCross) continue;
    const int view = viewAt(outlines, c.x, c.y);
    if (!outlines.views.empty() && !outlines.views[view].holds(c.x, c.y, 0.02 * inch)) continue;
    FeatureOffer f;
    f.kind = OfferedFeature::hole;
    f.at = frame.inches(c.x, c.y);
    f.drawnRadius = c.radius / frame.perInch;
    f.view = view;
    f.sure = c.round * std::min(1.0, c.cross);
    out.push_back(f);
  }
  return out;
}

}  // namespace inchwright::seen
