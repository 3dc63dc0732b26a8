#include "core/seen/ends.h"

#include <cmath>
#include <unordered_map>

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostLines = 4000;  // either way; what has more of them is no print
/// A line that carries a place out, inches of the sheet: longer than any letter is high.
constexpr double kLeastCarried = 0.25;

/// Places, none nearer than a pen's breadth to another.
class Places {
 public:
  explicit Places(double near) : near_(near) {}

  void add(double x, double y, bool crossed) {
    const int kx = static_cast<int>(std::floor(x / near_)),
              ky = static_cast<int>(std::floor(y / near_));
    for (int i = kx - 1; i <= kx + 1; ++i) {
      for (int j = ky - 1; j <= ky + 1; ++j) {
        const auto found = cells_.find(key(i, j));
        if (found == cells_.end()) continue;
        for (const int k : found->second) {
          if (std::abs(list[k].x - x) < near_ && std::abs(list[k].y - y) < near_) return;
        }
      }
    }
    cells_[key(kx, ky)].push_back(static_cast<int>(list.size()));
    list.push_back({x, y, crossed, 0, 0});
  }

  std::vector<End> list;

 private:
  static std::int64_t key(int i, int j) { return std::int64_t{i} << 32 | std::uint32_t(j); }
  double near_;
  std::unordered_map<std::int64_t, std::vector<int>> cells_;
};

void addCrossings(const std::vector<Stroke>& thin, const std::vector<Stroke>& plumbs, double inch,
                  Places& places, const Stop& stop) {
  for (const Stroke& t : thin) {
    if (stop.asked()) return;
    for (const Stroke& v : plumbs) {
      double x = v.yAt(t.y0);
      if (x < t.x0 - 0.1 * inch || x > t.x1 + 0.1 * inch) continue;
      const double y = t.yAt(x);
      x = v.yAt(y);
      if (y >= v.x0 - 0.3 * inch && y <= v.x1 + 0.3 * inch)
        places.add(x, y, v.length() > kLeastCarried * inch);
    }
  }
}

/// How far there is ink on one side of a plumb line all the way between two distances, pixels.
double inkAside(const Grey& cover, double x, double y, double near, double far) {
  double least = 255;
  for (int k = 0; k < 4; ++k)
    least = std::min(least, sampled(cover, x + near + (far - near) * k / 3, y));
  return least;
}

/// How far the ink at a plumb line looks like a head whose own line is too short to be seen: there
/// is some a head's length or a tail's out on one side, or a dot's on both.
double inkOfHead(const View& view, double x, double y) {
  const double inch = view.inch;
  double most = 0, both = 255;
  for (const int side : {-1, 1}) {
    most = std::max({most, inkAside(view.cover, x, y, side * 0.030 * inch, side * 0.075 * inch),
                     inkAside(view.cover, x, y, side * 0.018 * inch, side * 0.045 * inch)});
    both = std::min(both, inkAside(view.cover, x, y, side * 0.014 * inch, side * 0.021 * inch));
  }
  return std::max(most, both);
}

/// Where ink stands beside a plumb line as a head's does.
void addBeside(const View& view, const Stroke& v, Places& places) {
  const double inch = view.inch;
  const int from = std::max(0, static_cast<int>(v.x0 - 0.3 * inch));
  const int past = std::min(view.cover.height - 1, static_cast<int>(v.x1 + 0.3 * inch));
  if (past - from < 8) return;
  std::vector<double> ink(static_cast<std::size_t>(past - from));
  for (int y = from; y < past; ++y) ink[y - from] = inkOfHead(view, v.yAt(y), y);
  std::vector<double> smooth(ink.size());
  const int last = static_cast<int>(ink.size()) - 1;
  for (int i = 0; i <= last; ++i) {
    smooth[i] = (ink[std::max(0, i - 1)] + ink[i] + ink[std::min(last, i + 1)]) / 3;
  }
  const int reach = std::max(1, static_cast<int>(0.025 * inch));
  for (int i = 0; i <= last; ++i) {
    if (smooth[i] <= 56) continue;
    bool top = true;
    for (int k = std::max(0, i - reach); k <= std::min(last, i + reach); ++k)
      top = top && smooth[k] <= smooth[i];
    if (!top) continue;
    // Of a stretch that is all as dark, its middle.
    int level = i;
    while (level < last && smooth[level + 1] == smooth[i]) ++level;
    const double y = from + (i + level) / 2.0;
    places.add(v.yAt(y), y, v.length() > kLeastCarried * inch);
    i = level;
  }
}

float squashed(float v) {
  return 1 / (1 + std::exp(-v));
}

}  // namespace

Patch patchAt(const View& view, double x, double y) {
  double f = view.inch / 100;
  const Grey* g = &view.cover;
  if (f >= 1.5 && !view.half.empty()) {
    g = &view.half;
    f /= 2;
    x = (x - 0.5) / 2;
    y = (y - 0.5) / 2;
  }
  Patch out;
  for (int j = 0; j < kPatchHigh; ++j) {
    for (int i = 0; i < kPatchWide; ++i) {
      out[j * kPatchWide + i] = static_cast<std::uint8_t>(
          sampled(*g, x + (i - (kPatchWide - 1) / 2.0) * f, y + (j - (kPatchHigh - 1) / 2.0) * f));
    }
  }
  return out;
}

std::vector<End> placesOfEnds(const View& view, const Stop& stop) {
  const double inch = view.inch;
  Places places(0.045 * inch);
  std::vector<Stroke> thin, plumbs;
  for (const Chain& c : view.lines) {
    const Stroke s = through(c);
    if (s.thick <= 0.017 * inch + 1.2) thin.push_back(s);
  }
  for (const Chain& c : view.plumbs) plumbs.push_back(through(c));
  if (std::max(thin.size(), plumbs.size()) > kMostLines) return {};
  addCrossings(thin, plumbs, inch, places, stop);
  for (const Stroke& v : plumbs) {
    if (stop.asked()) return {};
    if (v.length() >= 0.2 * inch) addBeside(view, v, places);
  }
  for (const Chain& c : view.lines) {
    for (const Stroke& s : c) {
      if (s.thick > 0.017 * inch + 1.2) continue;
      places.add(s.x0, s.y0, false);
      places.add(s.x1, s.y1, false);
    }
  }
  return std::move(places.list);
}

void judge(const View& view, const Net& net, std::vector<End>& ends, const Stop& stop) {
  if (net.outputs() != 2 || net.inputs() != kPatchWide * kPatchHigh) return;
  for (End& e : ends) {
    if (stop.asked()) return;
    const std::vector<float> answer = net.answer(patchAt(view, e.x, e.y));
    e.left = squashed(answer[0]);
    e.right = squashed(answer[1]);
  }
}

}  // namespace inchwright::seen
