#include "core/seen/spans.h"

#include <cmath>

namespace inchwright::seen {
namespace {

/// Ends on one height, from the left, one at a place.
using Lane = std::vector<End>;

double middle(const Lane& lane) {
  std::vector<double> y;
  for (const End& e : lane) y.push_back(e.y);
  std::nth_element(y.begin(), y.begin() + static_cast<std::ptrdiff_t>(y.size() / 2), y.end());
  return y[y.size() / 2];
}

std::vector<Lane> lanesOf(std::vector<End> ends, double inch) {
  std::erase_if(ends, [](const End& e) { return std::max(e.left, e.right) <= 0.4F; });
  std::stable_sort(ends.begin(), ends.end(), [](const End& a, const End& b) { return a.y < b.y; });
  std::vector<Lane> lanes;
  for (const End& e : ends) {
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
      End& a = once.back();
      const bool first = std::pair(a.crossed, std::max(a.left, a.right)) >=
                         std::pair(e.crossed, std::max(e.left, e.right));
      a = {first ? a.x : e.x, (a.y + e.y) / 2, a.crossed || e.crossed, std::max(a.left, e.left),
           std::max(a.right, e.right)};
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

class Pairing {
 public:
  Pairing(const View& view, const IsLettered& lettered, float least)
      : view_(view), lettered_(lettered), least_(least) {}

  void pair(const Lane& lane) {
    closedRight_.assign(lane.size(), false);
    closedLeft_.assign(lane.size(), false);
    const std::size_t before = out.size();
    for (std::size_t i = 0; i < lane.size(); ++i) {
      if (lane[i].right >= least_) inside(lane, i);
    }
    for (std::size_t i = 0; i < lane.size(); ++i) {
      if (lane[i].left >= least_) outside(lane, i, before);
    }
  }

  std::vector<Span> out;

 private:
  bool holds(const Inked& drawn, const End& a, const End& b) const {
    const double inch = view_.inch, y = (a.y + b.y) / 2;
    if (drawn.share <= 0.15 || b.x - a.x <= 0.1 * inch) return false;
    // Two tails with nothing between them are no dimension line.
    if (drawn.bare() > 0.12 * inch) return lettered_(drawn.from, drawn.past, y, 0.06);
    return lettered_(a.x, b.x, y, 0.28) ||
           (b.x - a.x < 0.6 * inch && lettered_(b.x, b.x + inch, y, 0.2));
  }

  void inside(const Lane& lane, std::size_t i) {
    const End& a = lane[i];
    for (std::size_t j = i + 1; j < lane.size(); ++j) {
      const End& b = lane[j];
      if (b.right >= least_ && b.left < least_) return;  // another begins first
      if (b.left < least_) continue;
      const Inked drawn = drawnBetween(view_, a, b);
      if (holds(drawn, a, b)) {
        out.push_back({a.x, b.x, (a.y + b.y) / 2, false, double(a.right) * b.left});
        closedRight_[i] = closedLeft_[j] = true;
        return;
      }
      if (drawn.bare() <= 0.12 * view_.inch) return;
    }
  }

  void outside(const Lane& lane, std::size_t i, std::size_t before) {
    const End& a = lane[i];
    const double inch = view_.inch;
    for (std::size_t j = i + 1; j < lane.size() && lane[j].x - a.x <= 0.95 * inch; ++j) {
      const End& b = lane[j];
      if (b.right < least_) continue;
      const double y = (a.y + b.y) / 2;
      const bool had = std::any_of(
          out.begin() + static_cast<std::ptrdiff_t>(before), out.end(), [&](const Span& s) {
            return std::abs(s.x1 - a.x) < 0.03 * inch && std::abs(s.x2 - b.x) < 0.03 * inch;
          });
      const bool free = !closedLeft_[i] && !closedRight_[j];
      if (!had && (lettered_(a.x, b.x, y, 0.28) || (free && lettered_(b.x, b.x + inch, y, 0.1)))) {
        out.push_back({a.x, b.x, y, true, double(a.left) * b.right});
      }
      return;
    }
  }

  const View& view_;
  const IsLettered& lettered_;
  float least_;
  std::vector<bool> closedRight_, closedLeft_;
};

}  // namespace

std::vector<Span> spansOf(const View& view, const std::vector<End>& ends,
                          const IsLettered& lettered, float least) {
  Pairing pairing(view, lettered, least);
  for (const Lane& lane : lanesOf(ends, view.inch)) pairing.pair(lane);
  return std::move(pairing.out);
}

}  // namespace inchwright::seen
