#include "core/seen/spans.h"

#include <array>
#include <cmath>
#include <optional>

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostEnds = 3000;  // what has more of them is no print

/// Ends on one height, from the left, one at a place.
using Lane = std::vector<End>;

double middle(const Lane& lane) {
  std::vector<double> y;
  for (const End& e : lane) y.push_back(e.y);
  std::nth_element(y.begin(), y.begin() + static_cast<std::ptrdiff_t>(y.size() / 2), y.end());
  return y[y.size() / 2];
}

/// Two places of one end. Of those on a line that carries it out, the tip of a head is the one
/// further from its own line.
End together(const End& a, const End& b) {
  const float left = std::max(a.left, b.left), right = std::max(a.right, b.right);
  const auto sure = [](const End& e) { return std::pair(e.crossed, std::max(e.left, e.right)); };
  bool first = sure(a) >= sure(b);
  if (a.crossed && b.crossed) {
    if (std::min(a.right, b.right) > 0.5F && left < 0.5F) first = true;
    if (std::min(a.left, b.left) > 0.5F && right < 0.5F) first = false;
  }
  return {first ? a.x : b.x, (a.y + b.y) / 2, a.crossed || b.crossed, left, right};
}

std::vector<Lane> lanesOf(std::vector<End> ends, double inch, const Stop& stop) {
  std::erase_if(ends, [](const End& e) { return std::max(e.left, e.right) <= 0.15F; });
  if (ends.size() > kMostEnds) return {};
  std::stable_sort(ends.begin(), ends.end(), [](const End& a, const End& b) { return a.y < b.y; });
  std::vector<Lane> lanes;
  for (const End& e : ends) {
    if (stop.asked()) return {};
    const auto home = std::find_if(lanes.rbegin(), lanes.rend(), [&](const Lane& l) {
      return std::abs(middle(l) - e.y) < 0.05 * inch + 1.5;
    });
    if (home == lanes.rend()) {
      lanes.push_back({e});
    } else {
      home->push_back(e);
    }
  }
  for (Lane& lane : lanes) {
    std::stable_sort(lane.begin(), lane.end(),
                     [](const End& a, const End& b) { return a.x < b.x; });
    Lane once;
    for (const End& e : lane) {
      if (once.empty() || e.x - once.back().x >= 0.05 * inch) {
        once.push_back(e);
        continue;
      }
      once.back() = together(once.back(), e);
    }
    lane = std::move(once);
  }
  return lanes;
}

/// How much of the way between two ends is inked, and its longest bare stretch.
struct Inked {
  double share = 0;
  double from = 0;
  double past = 0;
  double bare() const { return past - from; }
};

Inked drawnBetween(const View& view, const End& a, const End& b) {
  Inked out;
  const int count = std::max(2, static_cast<int>(b.x - a.x));
  const int reach = std::max(2, static_cast<int>(0.02 * view.inch));
  int on = 0, start = -1;
  for (int i = 0; i <= count; ++i) {
    const double t = double(i) / count, x = a.x + (b.x - a.x) * t, y = a.y + (b.y - a.y) * t;
    bool ink = i == count;
    for (int k = -reach; k <= reach && !ink; ++k) {
      const int u = static_cast<int>(std::lround(x)), v = static_cast<int>(std::lround(y)) + k;
      ink = view.cover.holds(u, v) && view.cover.row(v)[u] > 64;
    }
    if (ink) {
      if (start >= 0 && i - start > out.bare()) {
        out.from = a.x + start;
        out.past = a.x + i;
      }
      start = -1;
      on += i < count;
    } else if (start < 0) {
      start = i;
    }
  }
  out.share = double(on) / count;
  return out;
}

constexpr double kSurest = 4;     // logarithm of the odds that one end can bring
constexpr double kLettering = 1;  // what lettering in the right place brings
constexpr double kNothing = -100;
/// What it costs that nothing carries an end out: so much that no line is cut in two at a bracket.
constexpr double kUncrossed = 4.5;
constexpr float kPlainSide = 0.7F;  // odds of one side that need no other
// What it costs that two lines have but one head between them, and where one's figure is beside it.
constexpr double kSharedHead = 1.5;
constexpr double kSharedBeside = 4;
constexpr double kPassedBy = 0.5;  // of what an end would have brought: a line runs over it

double logit(float odds) {
  const double p = std::clamp<double>(odds, 1e-6, 1 - 1e-6);
  return std::clamp(std::log(p / (1 - p)), -kSurest, kSurest);
}

/// Of an end whose line runs to the right, or to the left. Where two lines share one it is plain
/// that it is an end, but less so of which: either side speaks for the other then.
double odds(const End& e, bool right) {
  const float own = right ? e.right : e.left;
  const float shared = std::max(e.left, e.right) < kPlainSide ? std::min(e.left, e.right) : 0;
  return logit(own + shared) - (e.crossed ? 0 : kUncrossed);
}

/// How a line ends at a place: none does, or one with its heads inside or outside.
enum Ended : std::uint8_t { kNone, kInside, kOutside };

/// The likeliest lines up to a place.
struct Way {
  double sum = -1e9;
  std::size_t from = 0;  ///< where the last of them begins, or the place before
  Ended how = kNone;
  double shared = 0;  ///< what it costs that the next line shares the last one's head
  std::optional<Span> span;
};

/// Of the ways to a place the likeliest, with what it comes to when the next line begins as `next`
/// says: beside a short line one head often ends a long one and points at the short one too.
std::pair<const Way*, double> likeliest(const std::array<Way, 3>& ways, Ended next, double shared) {
  std::pair<const Way*, double> best{&ways[kNone], ways[kNone].sum};
  for (const Ended how : {kInside, kOutside}) {
    const double sum =
        ways[how].sum - (next == kNone || next == how ? 0 : std::max(shared, ways[how].shared));
    if (sum > best.second) best = {&ways[how], sum};
  }
  return best;
}

/// The dimension lines of a lane that together are likeliest. None overlaps another, but one may
/// begin where another ends.
class Pairing {
 public:
  Pairing(const View& view, const IsLettered& lettered, const Stop& stop)
      : view_(view), lettered_(lettered), stop_(stop) {}

  void pair(const Lane& lane, double least) {
    std::vector<double> passed(lane.size(), 0);  // what it costs to run over all so far
    for (std::size_t i = 0; i < lane.size(); ++i) {
      passed[i] = (i > 0 ? passed[i - 1] : 0) +
                  (lane[i].crossed ? kPassedBy : 0) *
                      std::max({0.0, odds(lane[i], false), odds(lane[i], true)});
    }
    std::vector<std::array<Way, 3>> best(lane.size());
    for (auto& way : best.front()) way.sum = 0;
    for (std::size_t j = 1; j < lane.size(); ++j) {
      if (stop_.asked()) return;
      best[j][kNone] = {likeliest(best[j - 1], kNone, 0).second, j - 1, kNone, 0, {}};
      for (std::size_t i = 0; i < j; ++i) {
        for (const Ended how : {kInside, kOutside}) {
          const Scored line =
              how == kOutside ? outside(lane[i], lane[j]) : inside(lane[i], lane[j]);
          const double score = line.sum - passed[j - 1] + passed[i];
          const double sum = likeliest(best[i], how, line.shared).second + score;
          if (score <= least || sum <= best[j][how].sum) continue;
          best[j][how] = {sum, i, how, line.shared,
                          Span{lane[i].x, lane[j].x, (lane[i].y + lane[j].y) / 2, how == kOutside,
                               1 / (1 + std::exp(-score))}};
        }
      }
    }
    Ended next = kNone;
    double shared = 0;
    for (std::size_t j = lane.size() - 1; j > 0;) {
      const Way& way = *likeliest(best[j], next, shared).first;
      if (way.span) found.push_back(*way.span);
      j = way.from;
      next = way.how;
      shared = way.shared;
    }
  }

  std::vector<Span> found;

 private:
  /// How likely a line is, and what it costs that it shares a head.
  struct Scored {
    double sum = kNothing;
    double shared = kSharedHead;
  };

  /// A line drawn from one to the other, but for a gap with its figure in it.
  Scored inside(const End& a, const End& b) const {
    const double inch = view_.inch, y = (a.y + b.y) / 2, ends = odds(a, true) + odds(b, false);
    if (ends < -2 || b.x - a.x <= 0.1 * inch) return {};
    const Inked drawn = drawnBetween(view_, a, b);
    if (drawn.share <= 0.15) return {};
    // Two tails with nothing between them are no dimension line.
    if (drawn.bare() > 0.16 * inch) {
      return lettered_(drawn.from, drawn.past, y, 0.06) ? Scored{ends + kLettering} : Scored{};
    }
    if (lettered_(a.x, b.x, y, 0.28)) return {ends + kLettering};
    const bool beside = b.x - a.x < 0.6 * inch && lettered_(b.x, b.x + inch, y, 0.2);
    return beside ? Scored{ends, kSharedBeside} : Scored{};
  }

  /// Two arrows that point at one another, with the figure between or beside them.
  Scored outside(const End& a, const End& b) const {
    const double inch = view_.inch, y = (a.y + b.y) / 2, ends = odds(a, false) + odds(b, true) - 1;
    if (ends < -1 || b.x - a.x > 1.3 * inch) return {};
    if (lettered_(a.x, b.x, y, 0.28)) return {ends + kLettering};
    const bool beside = b.x - a.x < 0.95 * inch && lettered_(b.x, b.x + inch, y, 0.1);
    return beside ? Scored{ends, kSharedBeside} : Scored{};
  }

  const View& view_;
  const IsLettered& lettered_;
  const Stop& stop_;
};

}  // namespace

std::vector<Span> spansOf(const View& view, const std::vector<End>& ends,
                          const IsLettered& lettered, double least, const Stop& stop) {
  Pairing pairing(view, lettered, stop);
  for (const Lane& lane : lanesOf(ends, view.inch, stop)) pairing.pair(lane, least);
  return std::move(pairing.found);
}

}  // namespace inchwright::seen
