#include "core/seen/drawn_features.h"

#include <cmath>

#include "core/base/sets.h"
#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostThick = 3000;  // what has more thick strokes is no print
constexpr double kOutline = 0.0125;       // an outline, inches of the sheet
constexpr double kLeastView = 0.5;        // the longer side of a view, likewise
constexpr double kLongSide = 0.35;        // of a view's box: its longest side
constexpr double kMostlyDrawn = 0.8;      // of a side: the feet of letters in a row are not
constexpr double kCorner = 0.025;         // how near sides come to their corner, likewise
constexpr double kWhole = 0.97;           // of an edge that one Enter may take
constexpr double kBrokenBy = 0.8;         // a figure, inches of the sheet
constexpr double kRound = 0.9;            // and of a hole's rim
constexpr double kBeyond = 0.7;           // and of its centre lines outside it
constexpr double kMostLevel = 0.45;       // of an arc that runs level or plumb, inches of the sheet
constexpr double kLeastJoined = 0.35;     // a stroke that a slanted or curved side goes on from
constexpr double kWidest = 0.1;  // lettering has no circles wider than this, inches of the sheet

struct Thick {
  Stroke stroke;
  bool plumb;
  double whole;

  PlanePoint end(bool second) const {
    const double along = second ? stroke.x1 : stroke.x0, across = second ? stroke.y1 : stroke.y0;
    return plumb ? PlanePoint{across, along} : PlanePoint{along, across};
  }
  /// Where it and a stroke the other way cross, carried on.
  PlanePoint crossing(const Thick& other) const {
    const double u = other.stroke.yAt(stroke.y0), v = stroke.yAt(u);
    return plumb ? PlanePoint{v, u} : PlanePoint{u, v};
  }
  /// How far a place is off the stroke.
  double off(PlanePoint p) const {
    const double u = plumb ? p.y : p.x, w = plumb ? p.x : p.y;
    return std::max(std::abs(w - stroke.yAt(u)), std::max(stroke.x0 - u, u - stroke.x1));
  }
};

/// Whether a stroke is the top or the foot of a circle's rim.
bool ofRim(const Stroke& s, bool plumb, const std::vector<Circle>& circles) {
  const double along = (s.x0 + s.x1) / 2, across = (s.y0 + s.y1) / 2;
  return std::any_of(circles.begin(), circles.end(), [&](const Circle& c) {
    const double u = plumb ? c.y : c.x, v = plumb ? c.x : c.y;
    return std::abs(along - u) < 0.4 * c.radius && s.length() < 1.8 * c.radius &&
           std::abs(std::abs(across - v) - c.radius) < s.thick + 2;
  });
}

/// How much of a stroke is drawn at least as thick as an outline.
double drawnThick(const Grey& cover, const Stroke& s, double thick) {
  int on = 0, count = 0;
  const int reach = static_cast<int>(2 * thick + 2);
  for (double x = s.x0; x <= s.x1; x += 1, ++count) {
    const int u = static_cast<int>(x), v = static_cast<int>(std::lround(s.yAt(x)));
    double ink = 0;
    for (int k = v - reach; k <= v + reach; ++k) ink += cover.holds(u, k) ? cover.row(k)[u] : 0;
    on += ink > 0.75 * 255 * thick;
  }
  return double(on) / std::max(1, count);
}

std::vector<Thick> thickOf(const View& view, bool plumb, const std::vector<Circle>& circles,
                           const Stop& stop) {
  std::vector<Thick> out;
  std::vector<Stroke> heavy;
  std::size_t count = 0;
  for (const Stroke& s : view.strokes) {
    if (stop.askedAt(count++)) return out;
    if (s.thick > kOutline * view.inch && !ofRim(s, plumb, circles)) heavy.push_back(s);
  }
  for (const Chain& c : chained(heavy, 0.12 * view.inch, 0.02 * view.inch + 1, stop)) {
    if (stop.asked()) return out;
    const Stroke s = through(c);
    if (s.length() > 0.12 * view.inch)
      out.push_back({s, plumb, drawnThick(view.cover, s, kOutline * view.inch)});
  }
  return out;
}

/// A figure that is given room in a side breaks it: two that lie on one line of a view with loose
/// ends towards one another, not further apart than `gap`, are one side.
void joinBroken(std::vector<Outlines::Side>& sides, double gap, double stray) {
  const auto goesOn = [&](const Outlines::Side& a, const Outlines::Side& b) {
    const double apart = b.stroke.x0 - a.stroke.x1;
    return &a != &b && a.plumb == b.plumb && a.view == b.view && !a.cornerPast && !b.cornerFrom &&
           apart >= 0 && apart <= gap && std::abs(b.stroke.y0 - a.stroke.y1) <= stray;
  };
  for (std::size_t i = 0; i < sides.size();) {
    const auto next = std::find_if(sides.begin(), sides.end(), [&](const Outlines::Side& other) {
      return goesOn(sides[i], other);
    });
    if (next == sides.end()) {
      ++i;
      continue;
    }
    Outlines::Side& a = sides[i];
    const double drawn = a.whole * a.stroke.length() + next->whole * next->stroke.length();
    a.stroke = through({a.stroke, next->stroke});
    a.whole = drawn / a.stroke.length();
    a.cornerPast = next->cornerPast;
    if (next - sides.begin() < static_cast<std::ptrdiff_t>(i)) --i;
    sides.erase(next);  // what is joined may go on further
  }
}

/// The rounded corners of strokes, of which so many are level; they are counted among all.
std::vector<Rounding> roundsAmong(const std::vector<Thick>& all, std::size_t levels,
                                  const Grey& cover, double inch, const Stop& stop) {
  std::vector<Stroke> strokes;
  for (const Thick& t : all) strokes.push_back(t.stroke);
  const auto middle = strokes.begin() + static_cast<std::ptrdiff_t>(levels);
  std::vector<Rounding> out =
      roundingsOf({strokes.begin(), middle}, {middle, strokes.end()}, cover, inch, stop);
  for (Rounding& r : out) r.plumb += levels;
  return out;
}

/// Whether another stroke goes on at an end of one: a long one, or one that meets a third at its
/// own other end. The short piece of an arc that runs level or plumb does neither.
bool goesOnAt(const std::vector<Thick>& all, std::size_t i, bool past, double inch) {
  const double near = kCorner * inch + 1;
  const auto meets = [&](PlanePoint end, std::size_t one, std::size_t other) {
    for (std::size_t k = 0; k < all.size(); ++k)
      if (k != one && k != other && all[k].off(end) < near) return true;
    return false;
  };
  const PlanePoint end = all[i].end(past);
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (k == i || all[k].off(end) > near) continue;
    if (all[k].stroke.length() > kMostLevel * inch) return true;
    const PlanePoint a = all[k].end(false), b = all[k].end(true);
    const bool first = std::hypot(a.x - end.x, a.y - end.y) > std::hypot(b.x - end.x, b.y - end.y);
    if (meets(first ? a : b, k, i)) return true;
  }
  return false;
}

/// What is drawn between ends of strokes at which no other stroke and no round goes on.
std::vector<Join> joinsAmong(const std::vector<Thick>& all, const std::vector<Rounding>& rounds,
                             const Grey& cover, double inch, const Stop& stop) {
  std::vector<LooseEnd> ends;
  for (std::size_t i = 0; i < all.size() && !stop.asked(); ++i) {
    if (all[i].stroke.length() < kLeastJoined * inch || all[i].whole < kMostlyDrawn) continue;
    for (const bool past : {false, true}) {
      const bool rounded = std::any_of(rounds.begin(), rounds.end(), [&](const Rounding& r) {
        return all[i].plumb ? r.plumb == i && r.plumbPast == past
                            : r.level == i && r.levelPast == past;
      });
      if (!rounded && !goesOnAt(all, i, past, inch))
        ends.push_back({all[i].end(past), i, past, all[i].plumb, all[i].stroke.thick});
    }
  }
  return joinsOf(ends, cover, inch, stop);
}

double gapTo(const ViewBox& v, double x, double y) {
  return std::hypot(std::max({0.0, v.x0 - x, x - v.x1}), std::max({0.0, v.y0 - y, y - v.y1}));
}

}  // namespace

Outlines outlinesOf(const View& level, const View& plumb, const std::vector<Circle>& circles,
                    const Frame& frame, const Stop& stop) {
  const double inch = level.inch, near = 0.05 * inch;
  std::vector<Thick> all = thickOf(level, false, circles, stop);
  const std::vector<Thick> other = thickOf(plumb, true, circles, stop);
  const std::size_t levels = all.size();
  all.insert(all.end(), other.begin(), other.end());
  if (all.size() > kMostThick) return {};
  std::vector<Rounding> rounds = roundsAmong(all, levels, level.cover, inch, stop);
  const std::vector<Join> joins = joinsAmong(all, rounds, level.cover, inch, stop);
  // Where an arc runs level or plumb it is no stroke of its own.
  const auto isOfArc = [&](const Thick& t) {
    const double within = 0.02 * inch + t.stroke.thick / 2;
    return std::any_of(joins.begin(), joins.end(), [&](const Join& j) {
      return isOnArc(j, t.end(false), within) && isOnArc(j, t.end(true), within);
    });
  };
  Sets sets(all.size());
  for (const Join& j : joins)
    sets.unite(static_cast<std::uint32_t>(j.one.stroke),
               static_cast<std::uint32_t>(j.other.stroke));
  for (const Rounding& r : rounds)
    sets.unite(static_cast<std::uint32_t>(r.level), static_cast<std::uint32_t>(r.plumb));
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (stop.asked()) return {};
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (k != i && std::min(all[k].off(all[i].end(false)), all[k].off(all[i].end(true))) < near) {
        sets.unite(static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(k));
      }
    }
  }
  struct Group {
    ViewBox box{1e9, 1e9, -1e9, -1e9};
    int level = 0, plumb = 0;
    double longest = 0, highest = 0;  // of its level strokes and its plumb ones that are whole
    std::vector<int> members;

    /// Lettering that hangs together has short strokes in a long box.
    bool isOutline(double least) const {
      const double wide = box.x1 - box.x0, high = box.y1 - box.y0;
      return level >= 1 && plumb >= 1 && level + plumb >= 3 && std::max(wide, high) > least &&
             longest > kLongSide * wide && highest > kLongSide * high;
    }
  };
  std::vector<Group> groups(all.size());
  ViewBox whole{1e9, 1e9, -1e9, -1e9};
  const auto grow = [](ViewBox& b, PlanePoint p) {
    b = {std::min(b.x0, p.x), std::min(b.y0, p.y), std::max(b.x1, p.x), std::max(b.y1, p.y)};
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    Group& g = groups[sets.find(static_cast<std::uint32_t>(i))];
    for (const bool end : {false, true}) grow(g.box, all[i].end(end)), grow(whole, all[i].end(end));
    (all[i].plumb ? g.plumb : g.level) += 1;
    double& most = all[i].plumb ? g.highest : g.longest;
    if (all[i].whole > kMostlyDrawn) most = std::max(most, all[i].stroke.length());
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
    if (g.isOutline(kLeastView * inch) && !frames(g)) kept.push_back(&g);
  }
  const PlanePoint zero = frame.pixel({0, 0});
  std::stable_sort(kept.begin(), kept.end(), [&](const Group* a, const Group* b) {
    const double da = gapTo(a->box, zero.x, zero.y), db = gapTo(b->box, zero.x, zero.y);
    if (std::abs(da - db) > 0.1 * inch) return da < db;
    return a->members.size() > b->members.size();
  });
  Outlines out;
  const auto isWithin = [&](const Group* g) {
    return std::any_of(kept.begin(), kept.end(), [&](const Group* o) {
      return o->box.x1 - o->box.x0 > g->box.x1 - g->box.x0 &&
             o->box.holds(g->box.x0, g->box.y0, 0) && o->box.holds(g->box.x1, g->box.y1, 0);
    });
  };
  for (const Group* g : kept) {
    if (!isWithin(g)) out.views.push_back(g->box);
  }
  for (const Group* g : kept) {
    const int view = viewAt(out, (g->box.x0 + g->box.x1) / 2, (g->box.y0 + g->box.y1) / 2);
    for (const int i : g->members) {
      if (stop.asked()) return {};
      if (isOfArc(all[i])) continue;
      // Where sides only come near one another it may be no corner.
      const auto meets = [&](bool second) {
        const bool rounded = std::any_of(rounds.begin(), rounds.end(), [&](const Rounding& r) {
          const auto own = static_cast<std::size_t>(i);
          return r.drawn >= kWholeArc && (all[i].plumb ? r.plumb == own && r.plumbPast == second
                                                       : r.level == own && r.levelPast == second);
        });
        const bool joined = std::any_of(joins.begin(), joins.end(), [&](const Join& j) {
          const auto here = [&](const LooseEnd& end) {
            return end.stroke == static_cast<std::size_t>(i) && end.past == second;
          };
          return j.drawn >= kWholeJoin && (here(j.one) || here(j.other));
        });
        return rounded || joined || std::any_of(g->members.begin(), g->members.end(), [&](int k) {
                 if (all[k].plumb == all[i].plumb) return false;
                 const PlanePoint corner = all[i].crossing(all[k]), end = all[i].end(second);
                 const double reach = kCorner * inch + 2;
                 return all[k].off(corner) < reach && all[k].off(end) < near &&
                        std::hypot(corner.x - end.x, corner.y - end.y) < reach &&
                        inkNear(level.cover, corner.x, corner.y, 1);
               });
      };
      out.sides.push_back(
          {all[i].stroke, all[i].plumb, view, all[i].whole, meets(false), meets(true)});
    }
    for (const Rounding& r : rounds) {
      if (std::find(g->members.begin(), g->members.end(), static_cast<int>(r.level)) !=
          g->members.end())
        out.rounds.push_back(r);
    }
    // A slot's ends are no sides of the part.
    if (isWithin(g)) continue;
    for (const Join& j : joins) {
      if (std::find(g->members.begin(), g->members.end(), static_cast<int>(j.one.stroke)) !=
          g->members.end())
        out.joins.push_back(j);
    }
  }
  joinBroken(out.sides, kBrokenBy * inch, 0.02 * inch + 1);
  return out;
}

bool isHole(const Circle& c, double inch) {
  return c.cross > kCross && (c.beyond > 0.3 || 2 * c.radius > kWidest * inch);
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
    f.sure = s.whole;
    f.ready = s.cornerFrom && s.cornerPast && s.whole > kWhole;
    out.push_back(f);
  }
  for (const Rounding& r : outlines.rounds) {
    FeatureOffer f;
    f.kind = OfferedFeature::round;
    f.at = frame.inches(r.centre.x, r.centre.y);
    f.from = frame.inches(r.onLevel().x, r.onLevel().y);
    f.to = frame.inches(r.onPlumb().x, r.onPlumb().y);
    f.drawnRadius = r.radius / frame.perInch;
    f.view = viewAt(outlines, r.corner.x, r.corner.y);
    f.sure = r.drawn;
    f.ready = r.drawn >= kWholeArc;
    out.push_back(f);
  }
  for (const Join& j : outlines.joins) {
    FeatureOffer f;
    f.kind = j.arc ? OfferedFeature::arc : OfferedFeature::line;
    f.from = frame.inches(j.from.x, j.from.y);
    f.to = frame.inches(j.to.x, j.to.y);
    if (f.from.x > f.to.x) std::swap(f.from, f.to);
    const PlanePoint middle{(j.from.x + j.to.x) / 2, (j.from.y + j.to.y) / 2};
    const PlanePoint at = j.arc ? j.centre : middle;
    f.at = frame.inches(at.x, at.y);
    f.drawnRadius = j.radius / frame.perInch;
    f.view = viewAt(outlines, middle.x, middle.y);
    f.sure = j.drawn;
    f.ready = j.drawn >= kWholeJoin;
    out.push_back(f);
  }
  for (const Circle& c : circles) {
    if (!isHole(c, inch)) continue;
    const int view = viewAt(outlines, c.x, c.y);
    if (!outlines.views.empty() && !outlines.views[view].holds(c.x, c.y, 0.02 * inch)) continue;
    FeatureOffer f;
    f.kind = OfferedFeature::hole;
    f.at = frame.inches(c.x, c.y);
    f.drawnRadius = c.radius / frame.perInch;
    f.view = view;
    f.sure = c.round * std::min(1.0, c.cross);
    f.ready = c.round > kRound && c.beyond > kBeyond;
    out.push_back(f);
  }
  return out;
}

}  // namespace inchwright::seen
