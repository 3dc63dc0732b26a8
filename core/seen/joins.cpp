#include "core/seen/joins.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostLoose = 400;                   // what has more is no print
constexpr double kShortestJoin = 0.16, kLongestJoin = 3;  // from end to end, inches of the sheet
constexpr double kLeastSlant = 0.08;  // of its length, by which a line is off level and plumb
constexpr double kAsThick = 0.8;      // as its neighbours: dimension lines and leaders are not
constexpr double kTooThick = 0.06;    // a blot, a head
constexpr double kLeastCurve = 0.1;   // radius, inches of the sheet
constexpr double kAtStroke = 0.03;    // how near an arc ends to the line of its neighbour
constexpr double kFlattest = 0.04;    // of its chord: an arc rises so much above it at least
constexpr double kDeepest = 0.6;      // and at most
constexpr double kBackwards = 0.2;    // of its length, by which a side may lie behind an end
constexpr double kAtEnds = 0.08;      // of the way, where it runs into its neighbours
constexpr double kJoinDrawn = 0.92;
constexpr double kGoesOn = 0.4;  // of the rest of its circle: where more is drawn, it is a rim
constexpr std::size_t kMostRuns = 8;

/// The line from end to end, and what crosses its middle square to it.
struct Chord {
  PlanePoint from;
  PlanePoint to;
  double length = 0;
  double thick = 0;  ///< of the strokes at its ends

  PlanePoint at(double along, double aside) const {
    const double ux = (to.x - from.x) / length, uy = (to.y - from.y) / length;
    return {from.x + ux * along - uy * aside, from.y + uy * along + ux * aside};
  }
};

/// How far aside of a place along a chord strokes as thick as an outline cross it.
std::vector<double> crossings(const Chord& chord, double along, const Grey& cover, double inch) {
  std::vector<double> out;
  const int reach = static_cast<int>(kDeepest * chord.length) + 2;
  int bare = -reach - 1;
  double ink = 0, sum = 0;
  for (int w = -reach; w <= reach + 1; ++w) {
    const PlanePoint p = chord.at(along, w);
    const double here = sampled(cover, p.x, p.y);
    if (w <= reach && here > kInk) {
      ink += here;
      sum += here * w;
      continue;
    }
    const int thick = w - bare - 1;
    if (thick >= kAsThick * chord.thick && thick <= kTooThick * inch) out.push_back(sum / ink);
    bare = w;
    ink = sum = 0;
  }
  return out;
}

/// Where such a stroke crosses nearest to where it is expected.
std::optional<PlanePoint> crossingNear(const Chord& chord, double along, double aside,
                                       const Grey& cover, double inch) {
  std::optional<double> best;
  const double within = 0.1 * chord.length + 3;
  for (const double w : crossings(chord, along, cover, inch)) {
    const double off = std::abs(w - aside);
    if (off < within && (!best || off < std::abs(*best - aside))) best = w;
  }
  return best ? std::optional(chord.at(along, *best)) : std::nullopt;
}

double turnOf(PlanePoint centre, PlanePoint p) {
  return std::atan2(centre.y - p.y, p.x - centre.x) * 180 / std::numbers::pi;
}

struct ArcAt {
  PlanePoint centre;
  double radius = 0;
  double middle = 0;  ///< degrees, anticlockwise as seen
  double half = 0;    ///< of its way round

  double drawn(const Grey& cover, int reach) const {
    const double part = half * (1 - 2 * kAtEnds);
    return inkOnArc(cover, centre, radius, middle - part, middle + part, reach);
  }
  PlanePoint at(double degrees) const {
    const double t = degrees * std::numbers::pi / 180;
    return {centre.x + radius * std::cos(t), centre.y - radius * std::sin(t)};
  }
};

/// How far an arc is drawn from its middle one way, degrees; two bare ones end it.
double drawnTo(const ArcAt& arc, const Grey& cover, int way) {
  double last = 0;
  for (double t = 0; t < arc.half + 30 && t - last < 2; t += 0.5) {
    const PlanePoint p = arc.at(arc.middle + way * t);
    if (inkNear(cover, p.x, p.y, 0)) last = t;
  }
  return last;
}

/// The arc through three places, the second of them its middle, as far as a chord's ends.
std::optional<ArcAt> arcThrough(PlanePoint a, PlanePoint m, PlanePoint b, const Chord& chord) {
  const double ax = a.x - m.x, ay = a.y - m.y, bx = b.x - m.x, by = b.y - m.y;
  const double d = 2 * (ax * by - ay * bx);
  if (std::abs(d) < 1e-6) return std::nullopt;
  const double aa = ax * ax + ay * ay, bb = bx * bx + by * by;
  ArcAt out;
  out.centre = {m.x + (by * aa - ay * bb) / d, m.y + (ax * bb - bx * aa) / d};
  out.radius = std::hypot(m.x - out.centre.x, m.y - out.centre.y);
  out.middle = turnOf(out.centre, m);
  for (const PlanePoint end : {chord.from, chord.to}) {
    const double off = std::abs(std::remainder(turnOf(out.centre, end) - out.middle, 360));
    out.half = out.half == 0 ? off : std::min(out.half, off);
  }
  return out;
}

/// Whether a place lies on the line that an end's stroke runs along.
bool isOnLineOf(const LooseEnd& end, PlanePoint p, double within) {
  return std::abs(end.plumb ? p.x - end.at.x : p.y - end.at.y) < within;
}

/// Three places of what crosses a chord: a quarter, half and three quarters of the way.
struct Crossed {
  PlanePoint first;
  PlanePoint middle;
  PlanePoint last;

  /// How far the middle is off the line of the others.
  double rise() const {
    const double dx = last.x - first.x, dy = last.y - first.y;
    return std::abs((middle.x - first.x) * dy - (middle.y - first.y) * dx) / std::hypot(dx, dy);
  }
};

std::optional<Crossed> crossedAt(const Chord& chord, double along, double rise, const Grey& cover,
                                 double inch) {
  const double half = chord.length / 2, flat = std::max(1.0, std::abs(rise));
  const double radius = (half * half + flat * flat) / (2 * flat);
  const double quarter =
      std::sqrt(std::max(0.0, radius * radius - half * half / 4)) - radius + flat;
  const double aside = rise > 0 ? quarter : -quarter;
  const auto first = crossingNear(chord, half / 2, aside, cover, inch),
             last = crossingNear(chord, 1.5 * half, aside, cover, inch);
  if (!first || !last) return std::nullopt;
  return Crossed{*first, chord.at(along, rise), *last};
}

std::optional<Join> arcOf(const LooseEnd& one, const LooseEnd& other, const Chord& chord,
                          const Crossed& at, const Grey& cover, double inch) {
  const auto arc = arcThrough(at.first, at.middle, at.last, chord);
  if (!arc || arc->radius > kLongestJoin * inch || arc->radius < kLeastCurve * inch)
    return std::nullopt;
  Join out;
  out.arc = true;
  out.drawn = arc->drawn(cover, 1);
  out.centre = arc->centre;
  out.radius = arc->radius;
  const double rest = 180 - arc->half;
  const bool rim = inkOnArc(cover, arc->centre, arc->radius, arc->middle + 180 - 0.7 * rest,
                            arc->middle + 180 + 0.7 * rest, 3) > kGoesOn;
  if (out.drawn < kJoinDrawn || rim) return std::nullopt;
  out.from = arc->at(arc->middle - drawnTo(*arc, cover, -1));
  out.to = arc->at(arc->middle + drawnTo(*arc, cover, 1));
  const double within = kAtStroke * inch + 2;
  const bool meets = (isOnLineOf(one, out.from, within) && isOnLineOf(other, out.to, within)) ||
                     (isOnLineOf(one, out.to, within) && isOnLineOf(other, out.from, within));
  return meets ? std::optional(out) : std::nullopt;
}

/// The line through two places, as far as the strokes that it goes on from.
std::optional<Join> lineThrough(const LooseEnd& one, const LooseEnd& other, const Chord& chord,
                                const Crossed& at, const Grey& cover, double inch) {
  const PlanePoint a = at.first;
  const double dx = at.last.x - a.x, dy = at.last.y - a.y;
  if (std::min(std::abs(dx), std::abs(dy)) < 1) return std::nullopt;
  const auto meeting = [&](const LooseEnd& end) {
    return end.plumb ? PlanePoint{end.at.x, a.y + dy * (end.at.x - a.x) / dx}
                     : PlanePoint{a.x + dx * (end.at.y - a.y) / dy, end.at.y};
  };
  const auto off = [](PlanePoint p, PlanePoint q) { return std::hypot(p.x - q.x, p.y - q.y); };
  Join out;
  out.from = meeting(one);
  out.to = meeting(other);
  const double near = 0.05 * inch + 0.15 * chord.length;
  if (std::max(off(out.from, one.at), off(out.to, other.at)) > near) return std::nullopt;
  const Chord line{out.from, out.to, off(out.from, out.to), chord.thick};
  const double least = std::min(std::abs(out.to.x - out.from.x), std::abs(out.to.y - out.from.y));
  if (least < kLeastSlant * line.length) return std::nullopt;
  out.drawn =
      inkAlong(cover, line.at(kAtEnds * line.length, 0), line.at((1 - kAtEnds) * line.length, 0), 1)
          .share;
  return out.drawn >= kJoinDrawn ? std::optional(out) : std::nullopt;
}

/// Whether a stroke may go on from its end towards another place: forwards, or to its side.
bool mayGoOn(const LooseEnd& end, PlanePoint to) {
  const double along = end.plumb ? to.y - end.at.y : to.x - end.at.x;
  const double length = std::hypot(to.x - end.at.x, to.y - end.at.y);
  return (end.past ? along : -along) > -kBackwards * length;
}

/// The plainest of what may be drawn between two ends. Ink of it lengthens the strokes, so that
/// their ends lie a little off it: it goes through three places between them.
std::optional<Join> joinOf(const LooseEnd& a, const LooseEnd& b, const Grey& cover, double inch) {
  const Chord chord{a.at, b.at, std::hypot(b.at.x - a.at.x, b.at.y - a.at.y),
                    std::min(a.thick, b.thick)};
  if (chord.length < kShortestJoin * inch || chord.length > kLongestJoin * inch)
    return std::nullopt;
  std::optional<Join> best;
  // Something else may run over it at its middle.
  for (const double share : {0.5, 0.4, 0.6}) {
    if (best) break;
    const double along = share * chord.length;
    const std::vector<double> rises = crossings(chord, along, cover, inch);
    if (rises.size() > kMostRuns) continue;
    for (const double rise : rises) {
      const auto at = crossedAt(chord, along, rise, cover, inch);
      if (!at) continue;
      const bool straight = at->rise() < std::max(1.0, kFlattest * chord.length / 2);
      auto one = straight ? lineThrough(a, b, chord, *at, cover, inch)
                          : arcOf(a, b, chord, *at, cover, inch);
      if (one && (!best || one->drawn > best->drawn)) best = one;
    }
  }
  if (!best) return best;
  best->one = a;
  best->other = b;
  return best;
}

}  // namespace

bool isOnArc(const Join& arc, PlanePoint p, double within) {
  if (!arc.arc) return false;
  const double away = std::hypot(p.x - arc.centre.x, p.y - arc.centre.y);
  const double chord = std::hypot(arc.from.x - arc.to.x, arc.from.y - arc.to.y);
  const PlanePoint middle{(arc.from.x + arc.to.x) / 2, (arc.from.y + arc.to.y) / 2};
  return std::abs(away - arc.radius) < within &&
         std::hypot(p.x - middle.x, p.y - middle.y) < std::max(chord / 2, arc.radius) + within;
}

std::vector<Join> joinsOf(const std::vector<LooseEnd>& ends, const Grey& cover, double inch,
                          const Stop& stop) {
  std::vector<Join> all;
  if (ends.size() > kMostLoose) return all;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    for (std::size_t k = i + 1; k < ends.size(); ++k) {
      if (stop.askedAt(k, 16)) return {};
      if (ends[i].stroke == ends[k].stroke || !mayGoOn(ends[i], ends[k].at) ||
          !mayGoOn(ends[k], ends[i].at))
        continue;
      if (auto one = joinOf(ends[i], ends[k], cover, inch)) all.push_back(*one);
    }
  }
  const auto length = [](const Join& j) {
    return std::hypot(j.one.at.x - j.other.at.x, j.one.at.y - j.other.at.y);
  };
  std::stable_sort(all.begin(), all.end(),
                   [&](const Join& a, const Join& b) { return length(a) > length(b); });
  std::vector<Join> out;
  std::set<std::pair<std::size_t, bool>> used;
  for (const Join& j : all) {
    const std::pair one{j.one.stroke, j.one.past}, other{j.other.stroke, j.other.past};
    const bool within = std::any_of(out.begin(), out.end(), [&](const Join& had) {
      return isOnArc(had, j.one.at, 0.03 * inch) && isOnArc(had, j.other.at, 0.03 * inch);
    });
    if (within || used.count(one) + used.count(other) > 0) continue;
    used.insert({one, other});
    out.push_back(j);
  }
  return out;
}

}  // namespace inchwright::seen
