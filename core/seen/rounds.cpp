#include "core/seen/rounds.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>
#include <tuple>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr double kLeastRound = 0.05, kMostRound = 1.0;  // radii, inches of the sheet
constexpr double kArcDrawn = 0.9;                       // of an arc that is offered
constexpr double kUneven = 0.35;    // of their length, by which what the sides lack may differ
constexpr double kRoundEnd = 0.5;   // of the arc carried on: where it is drawn, this is a round end
constexpr double kStraight = 0.06;  // of a side between the arcs at its ends, inches of the sheet
constexpr int kOnFrom = 40, kOnTo = 75;  // of it, degrees
constexpr int kDegreesLeft = 4;          // of an arc at either end: there it runs into the side

/// How much ink lies on the quarter circle about `centre` that looks towards `corner`, of 255.
double inkOnQuarter(const Grey& cover, PlanePoint centre, PlanePoint corner, double radius) {
  const double sx = corner.x > centre.x ? 1 : -1, sy = corner.y > centre.y ? 1 : -1;
  const int count = std::max(12, static_cast<int>(radius));
  double sum = 0;
  for (int i = 0; i < count; ++i) {
    const double t =
        (kDegreesLeft + (90.0 - 2 * kDegreesLeft) * (i + 0.5) / count) * std::numbers::pi / 180;
    sum +=
        sampled(cover, centre.x + sx * radius * std::cos(t), centre.y + sy * radius * std::sin(t));
  }
  return sum / count;
}

/// Whereabouts an end of a stroke lies: how far from the corner, towards the stroke's other end.
double lacking(const Stroke& s, bool past, double corner) {
  return past ? corner - s.x1 : s.x0 - corner;
}

std::optional<Rounding> roundingAt(const Stroke& level, bool levelPast, const Stroke& plumb,
                                   bool plumbPast, const Grey& cover, double inch) {
  const double u = plumb.yAt(level.yAt(levelPast ? level.x1 : level.x0)), v = level.yAt(u);
  const double a = lacking(level, levelPast, u), b = lacking(plumb, plumbPast, v);
  const double most = std::max(a, b), slack = 0.03 * inch + 2;
  if (most < 0.3 * kLeastRound * inch || most > kMostRound * inch || std::min(a, b) < 0 ||
      std::abs(a - b) > kUneven * most + slack)
    return std::nullopt;
  Rounding out;
  out.levelPast = levelPast;
  out.plumbPast = plumbPast;
  out.corner = {u, v};
  const auto centre = [&](double r) {
    return PlanePoint{u + (levelPast ? -r : r), v + (plumbPast ? -r : r)};
  };
  // Ink of the arc lengthens the sides. Several radii may be covered wholly: the middle of them.
  std::vector<double> ink;
  const double over = level.thick + 3, flat = most + over + std::sqrt(over * (over + 2 * most));
  const double least = std::max(kLeastRound * inch, 0.9 * std::min(a, b)),
               furthest = std::min(1.2 * flat, kMostRound * inch);
  for (double r = least; r <= furthest; r += 0.5)
    ink.push_back(inkOnQuarter(cover, centre(r), out.corner, r));
  if (ink.empty()) return std::nullopt;
  const double enough = 0.97 * *std::max_element(ink.begin(), ink.end());
  const auto covered = [&](double here) { return here >= enough; };
  const auto first = std::find_if(ink.begin(), ink.end(), covered) - ink.begin(),
             last = ink.rend() - std::find_if(ink.rbegin(), ink.rend(), covered) - 1;
  out.radius = least + 0.25 * static_cast<double>(first + last);
  // The end of a slot has no straight side behind its quarter of a circle.
  const double behind = 2 * out.radius + kStraight * inch;
  if (std::min(a + level.length(), b + plumb.length()) < behind) return std::nullopt;
  out.centre = centre(out.radius);
  const double begin = levelPast ? (plumbPast ? -90 : 0) : (plumbPast ? 180 : 90);
  // A chamfer comes near it, but does not lie on it.
  out.drawn =
      inkOnArc(cover, out.centre, out.radius, begin + kDegreesLeft, begin + 90 - kDegreesLeft, 0);
  const double on = std::max(
      inkOnArc(cover, out.centre, out.radius, begin - kOnTo, begin - kOnFrom, 1),
      inkOnArc(cover, out.centre, out.radius, begin + 90 + kOnFrom, begin + 90 + kOnTo, 1));
  const PlanePoint beside{u + (out.centre.x - u) / 4, v + (out.centre.y - v) / 4};
  const bool sharp = inkNear(cover, beside.x, v, 0) || inkNear(cover, u, beside.y, 0);
  if (on > kRoundEnd || sharp) return std::nullopt;
  return out.drawn >= kArcDrawn ? std::optional(out) : std::nullopt;
}

}  // namespace

std::vector<Rounding> roundingsOf(const std::vector<Stroke>& level,
                                  const std::vector<Stroke>& plumb, const Grey& cover, double inch,
                                  const Stop& stop) {
  std::vector<Rounding> all;
  for (std::size_t i = 0; i < level.size() && !stop.asked(); ++i) {
    for (std::size_t k = 0; k < plumb.size() && !stop.askedAt(k + 1, 64); ++k) {
      for (const bool levelPast : {false, true}) {
        const double end = levelPast ? level[i].x1 : level[i].x0;
        if (std::abs(end - plumb[k].y0) > 1.1 * kMostRound * inch) continue;
        for (const bool plumbPast : {false, true}) {
          auto one = roundingAt(level[i], levelPast, plumb[k], plumbPast, cover, inch);
          if (!one) continue;
          one->level = i;
          one->plumb = k;
          all.push_back(*one);
        }
      }
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Rounding& a, const Rounding& b) { return a.drawn > b.drawn; });
  std::vector<Rounding> out;
  std::set<std::tuple<bool, std::size_t, bool>> used;
  for (const Rounding& r : all) {
    const std::tuple one{false, r.level, r.levelPast}, other{true, r.plumb, r.plumbPast};
    if (used.count(one) + used.count(other) > 0) continue;
    used.insert({one, other});
    out.push_back(r);
  }
  return out;
}

}  // namespace inchwright::seen
