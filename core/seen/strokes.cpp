#include "core/seen/strokes.h"

#include <cmath>
#include <unordered_map>

#include "core/base/sets.h"

namespace inchwright::seen {
namespace {

struct LongRun {
  int y, from, past;
};

/// Runs of one row in which a pixel above or below counts as well, so that a line may rise.
std::vector<LongRun> longRuns(const Grey& cover, int least, const Stop& stop) {
  std::vector<LongRun> runs;
  std::vector<std::uint8_t> thick(static_cast<std::size_t>(cover.width));
  for (int y = 0; y < cover.height && !stop.asked(); ++y) {
    const std::uint8_t* own = cover.row(y);
    const std::uint8_t* upper = cover.row(std::max(0, y - 1));
    const std::uint8_t* lower = cover.row(std::min(cover.height - 1, y + 1));
    for (int x = 0; x < cover.width; ++x) thick[x] = std::max({own[x], upper[x], lower[x]});
    int x = 0;
    while (x < cover.width) {
      while (x < cover.width && thick[x] <= kInk) ++x;
      const int from = x;
      while (x < cover.width && thick[x] > kInk) ++x;
      if (x - from >= least) runs.push_back({y, from, x});
    }
  }
  return runs;
}

/// The mean height of the ink of some columns, and how much of it there is.
struct Ink1 {
  double sum = 0;
  double moment = 0;
  void add(double cover, double y) {
    sum += cover;
    moment += cover * y;
  }
  double mean() const { return moment / std::max(sum, 1e-6); }
};

Stroke fitted(const Grey& cover, const std::vector<LongRun>& runs, const std::vector<int>& own,
              const Box& box) {
  const int quarter = std::max(2, box.w / 4);
  Ink1 left, right, all;
  for (const int i : own) {
    const LongRun& r = runs[i];
    const std::uint8_t* row = cover.row(r.y);
    for (int x = r.from; x < r.past; ++x) {
      all.add(row[x], r.y);
      if (x < box.x + quarter) left.add(row[x], r.y);
      if (x >= box.right() - quarter) right.add(row[x], r.y);
    }
  }
  const double slope = (right.mean() - left.mean()) / std::max(1, box.w - quarter);
  const double y0 = left.mean() - slope * (quarter - 1) / 2.0;
  return {double(box.x), double(box.right() - 1), y0, y0 + slope * (box.w - 1),
          all.sum / 255 / box.w};
}

}  // namespace

std::vector<Stroke> levelStrokes(const Grey& cover, double inch, double least, const Stop& stop) {
  const int shortest = std::max(5, static_cast<int>(least));
  const std::vector<LongRun> runs = longRuns(cover, shortest, stop);
  Sets sets(runs.size());
  std::size_t upper = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (stop.askedAt(i)) return {};
    const LongRun& r = runs[i];
    while (upper < i &&
           (runs[upper].y < r.y - 1 || (runs[upper].y == r.y - 1 && runs[upper].past < r.from))) {
      ++upper;
    }
    for (std::size_t k = upper; k < i && runs[k].y == r.y - 1 && runs[k].from <= r.past; ++k) {
      sets.unite(static_cast<std::uint32_t>(k), static_cast<std::uint32_t>(i));
    }
  }
  std::vector<std::vector<int>> groups;
  std::vector<Box> boxes;
  std::vector<int> number(runs.size(), -1);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (stop.askedAt(i)) return {};
    int& n = number[sets.find(static_cast<std::uint32_t>(i))];
    const Box box{runs[i].from, runs[i].y, runs[i].past - runs[i].from, 1};
    if (n < 0) {
      n = static_cast<int>(groups.size());
      groups.emplace_back();
      boxes.push_back(box);
    }
    groups[n].push_back(static_cast<int>(i));
    boxes[n] = around(boxes[n], box);
  }
  std::vector<Stroke> out;
  for (std::size_t n = 0; n < groups.size(); ++n) {
    if (stop.askedAt(n)) return {};
    if (boxes[n].h > 0.09 * inch + boxes[n].w * 0.02 + 2) continue;
    const Stroke s = fitted(cover, runs, groups[n], boxes[n]);
    if (s.thick <= 0.06 * inch + 3) out.push_back(s);
  }
  return out;
}

std::vector<Chain> chained(std::vector<Stroke> strokes, double gap, double stray,
                           const Stop& stop) {
  std::stable_sort(strokes.begin(), strokes.end(),
                   [](const Stroke& a, const Stroke& b) { return a.x0 < b.x0; });
  std::vector<Chain> chains;
  // Chains that may still go on, by the row band of their last end.
  const double band = stray + 1;
  std::unordered_map<int, std::vector<int>> ends;
  std::size_t count = 0;
  for (const Stroke& s : strokes) {
    if (stop.askedAt(count++)) return {};
    const int at = static_cast<int>(std::floor(s.y0 / band));
    int best = -1;
    for (int k = at - 1; k <= at + 1; ++k) {
      const auto found = ends.find(k);
      if (found == ends.end()) continue;
      auto& list = found->second;
      std::erase_if(list, [&](int c) { return chains[c].back().x1 < s.x0 - gap; });
      for (const int c : list) {
        const Stroke& last = chains[c].back();
        if (s.x1 <= last.x1 || std::abs(last.y1 - s.y0) >= stray) continue;
        if (best < 0 || last.x1 > chains[best].back().x1) best = c;
      }
    }
    if (best < 0) {
      best = static_cast<int>(chains.size());
      chains.emplace_back();
    } else {
      auto& list = ends[static_cast<int>(std::floor(chains[best].back().y1 / band))];
      std::erase(list, best);
    }
    chains[best].push_back(s);
    ends[static_cast<int>(std::floor(s.y1 / band))].push_back(best);
  }
  return chains;
}

Stroke through(const Chain& chain) {
  if (chain.size() == 1) return chain.front();
  double w = 0, x = 0, y = 0, xx = 0, xy = 0, thick = 0, length = 0, x1 = chain.front().x1;
  for (const Stroke& s : chain) {
    const double weight = s.length() + 1;
    for (const bool end : {false, true}) {
      const double u = end ? s.x1 : s.x0, v = end ? s.y1 : s.y0;
      w += weight;
      x += weight * u;
      y += weight * v;
      xx += weight * u * u;
      xy += weight * u * v;
    }
    thick += s.thick * weight;
    length += weight;
    x1 = std::max(x1, s.x1);
  }
  const double x0 = chain.front().x0, spread = xx - x * x / w;
  const double slope = spread > 1 ? (xy - x * y / w) / spread : 0;
  const double level = y / w - slope * x / w;
  return {x0, x1, level + slope * x0, level + slope * x1, thick / length};
}

}  // namespace inchwright::seen
