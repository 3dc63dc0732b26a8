#include "core/seen/circles.h"

#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <cstring>
#include <numbers>

namespace inchwright::seen {
namespace {

constexpr double kLeastRadius = 0.04, kMostRadius = 0.5;  // radii, inches of the sheet
constexpr double kWide = 0.12;  // those wider are looked for twice as coarsely
constexpr int kVote = 256;      // a pixel of rim counts so much, over the radius
constexpr int kLeastVotes = 3 * kVote / 4;
constexpr int kRays = 96;
constexpr std::size_t kMostPeaks = 600;
constexpr std::size_t kMostSlopes = 1500000;  // what has more of them is no print

struct Slope {
  int x, y;
  float ux, uy;
};

constexpr std::uint64_t kNotFaint = 0xE0E0E0E0E0E0E0E0;

std::uint64_t eightAt(const std::uint8_t* p) {
  std::uint64_t out;
  std::memcpy(&out, p, sizeof out);
  return out;
}

/// Where the ink's slope is steep, but for that of level and plumb lines.
std::vector<Slope> slopesOf(const Grey& h, const Stop& stop) {
  std::vector<Slope> out;
  for (int y = 1; y + 1 < h.height && !stop.asked(); ++y) {
    const std::uint8_t *a = h.row(y - 1), *b = h.row(y), *c = h.row(y + 1);
    for (int x = 1; x + 1 < h.width; ++x) {
      // Six bare pixels at once: what is fainter than 32 has no slope of 140.
      if (x + 7 <= h.width &&
          ((eightAt(a + x - 1) | eightAt(b + x - 1) | eightAt(c + x - 1)) & kNotFaint) == 0) {
        x += 5;
        continue;
      }
      const int gx = (a[x + 1] + 2 * b[x + 1] + c[x + 1]) - (a[x - 1] + 2 * b[x - 1] + c[x - 1]);
      const int gy = (c[x - 1] + 2 * c[x] + c[x + 1]) - (a[x - 1] + 2 * a[x] + a[x + 1]);
      const int square = gx * gx + gy * gy;
      if (square < 140 * 140) continue;
      const float m = std::sqrt(static_cast<float>(square));
      const float ux = static_cast<float>(gx) / m, uy = static_cast<float>(gy) / m;
      if (std::abs(ux) < 0.995F && std::abs(uy) < 0.995F) out.push_back({x, y, ux, uy});
    }
  }
  return out;
}

/// A centre that many slopes point at, and between which radii, pixels.
struct Peak {
  int votes;
  double x, y;
  double least, most;
};

/// Of a pixel in one word, so that a vote touches memory once: the votes of the radius that has
/// most of them (14 bits, kVote a pixel of rim, over the radius), and of the radius that is being
/// counted its number (8 bits) and how many there are (10 bits).
using Cell = std::uint32_t;

constexpr Cell kMostCount = (1 << 10) - 1, kMostBest = (1 << 14) - 1;
constexpr int kMostRadii = 256;

Cell voted(Cell cell, Cell number, Cell share) {
  const Cell had = (cell >> 10 & 0xFF) == number ? cell & kMostCount : 0;
  const Cell count = std::min(had + 1, kMostCount);
  const Cell best = std::max(cell >> 18, std::min(count * share >> 8, kMostBest));
  return best << 18 | number << 10 | count;
}

/// Votes of slopes for the centres that they point at, both ways, radius by radius.
Plane<Cell> votesOf(const std::vector<Slope>& slopes, int width, int height, int least, int most,
                    const Stop& stop) {
  Plane<Cell> cells(width, height, 0);
  for (int r = least; r <= most && r < least + kMostRadii && !stop.asked(); ++r) {
    const auto number = static_cast<Cell>(r - least), share = static_cast<Cell>((kVote << 8) / r);
    for (const Slope& s : slopes) {
      for (const int sign : {-1, 1}) {
        const int x =
            static_cast<int>(static_cast<float>(s.x) + static_cast<float>(sign * r) * s.ux + 0.5F);
        const int y =
            static_cast<int>(static_cast<float>(s.y) + static_cast<float>(sign * r) * s.uy + 0.5F);
        if (x < 0 || y < 0 || x >= width || y >= height) continue;
        Cell& cell = cells.row(y)[x];
        cell = voted(cell, number, share);
      }
    }
  }
  return cells;
}

/// Where the mean of nine pixels' votes is highest round about. Neighbouring votes are gathered so
/// that a rim's own spread does not split them.
std::vector<Peak> peaksOf(const Plane<Cell>& votes, int reach, const Stop& stop) {
  Plane<std::uint16_t> mean(votes.width, votes.height, 0);
  std::vector<std::pair<int, int>> high;
  std::vector<int> column(static_cast<std::size_t>(votes.width));
  for (int y = 1; y + 1 < votes.height && !stop.asked(); ++y) {
    const Cell *a = votes.row(y - 1), *b = votes.row(y), *c = votes.row(y + 1);
    for (int x = 0; x < votes.width; ++x)
      column[x] = static_cast<int>((a[x] >> 18) + (b[x] >> 18) + (c[x] >> 18));
    std::uint16_t* to = mean.row(y);
    for (int x = 1; x + 1 < votes.width; ++x) {
      const int sum = column[x - 1] + column[x] + column[x + 1];
      if (sum == 0) continue;
      to[x] = static_cast<std::uint16_t>(sum / 9);
      if (to[x] > kLeastVotes) high.emplace_back(x, y);
    }
  }
  std::vector<Peak> out;
  for (std::size_t n = 0; n < high.size() && !stop.askedAt(n); ++n) {
    const auto [x, y] = high[n];
    const int own = mean.row(y)[x];
    bool top = true;
    for (int v = std::max(0, y - reach); v <= std::min(mean.height - 1, y + reach) && top; ++v) {
      for (int u = std::max(0, x - reach); u <= std::min(mean.width - 1, x + reach) && top; ++u) {
        top = mean.row(v)[u] <= own;
      }
    }
    if (top) out.push_back({own, double(x), double(y), 0, 0});
  }
  return out;
}

/// Where circles of radii from `from` to `past` (inches of the sheet) may have their centres, as a
/// cover shows it that has been shrunk `by` so much.
void addPeaks(const Grey& cover, int by, double from, double past, double inch, const Stop& stop,
              std::vector<Peak>& all) {
  if (cover.width < 8 || cover.height < 8) return;
  const std::vector<Slope> slopes = slopesOf(cover, stop);
  if (slopes.size() > kMostSlopes) return;
  const int least = std::max(3, static_cast<int>(from * inch / by)),
            most = static_cast<int>(past * inch / by) + 1;
  const Plane<Cell> votes = votesOf(slopes, cover.width, cover.height, least, most, stop);
  for (Peak p : peaksOf(votes, std::max(1, static_cast<int>(0.03 * inch / by)), stop)) {
    p = {p.votes, (p.x + 0.5) * by - 0.5, (p.y + 0.5) * by - 0.5, from * inch, past * inch};
    all.push_back(p);
  }
}

/// Looks along rays from a centre for the rim, and moves the centre to where it fits.
class Rim {
 public:
  Rim(const Grey& cover, double inch) : cover_(cover), inch_(inch) {
    for (int i = 0; i < kRays; ++i) {
      const double t = 2 * std::numbers::pi * i / kRays;
      if (std::abs(std::cos(t)) < 0.10 || std::abs(std::sin(t)) < 0.10) continue;
      ray_.push_back({std::cos(t), std::sin(t)});
    }
    for (double r = std::max(3.0, kLeastRadius * inch * 0.9); r < kMostRadius * inch; r += 0.5)
      radius_.push_back(r);
  }

  bool fit(const Peak& peak, Circle& out) {
    double x = peak.x, y = peak.y, spread = 0;
    std::size_t hit = 0;
    for (int round = 0; round < 3; ++round) {
      if (round == 0) {
        look(x, y, 0.85 * peak.least - 3, 1.15 * peak.most + 3);
      } else {
        look(x, y, 0.8 * out.radius - 3, 1.2 * out.radius + 3);
      }
      const double r = best();
      std::vector<int> rays;
      std::vector<double> at;
      gather(r, rays, at);
      hit = rays.size();
      if (hit < 24) return false;
      std::vector<bool> keep(hit, true);
      Eigen::Vector3d moved = solve(rays, at, keep, spread);
      std::size_t kept = 0;
      for (std::size_t i = 0; i < hit; ++i) {
        keep[i] = std::abs(miss(rays[i], at[i], moved)) < std::max(0.8, 2 * spread);
        kept += keep[i];
      }
      if (kept >= 20) moved = solve(rays, at, keep, spread);
      x += moved[0];
      y += moved[1];
      out.radius = moved[2];
      if (std::abs(moved[0]) + std::abs(moved[1]) < 0.1) break;
      if (std::hypot(moved[0], moved[1]) > out.radius) return false;
    }
    out.x = x;
    out.y = y;
    out.round = double(hit) / static_cast<double>(ray_.size());
    out.cross = cross(out);
    out.beyond = beyond(out);
    return out.round > 0.82 && spread < std::max(0.9, 0.005 * inch_) &&
           out.radius >= kLeastRadius * inch_;
  }

 private:
  /// The cover along every ray between two radii.
  void look(double x, double y, double least, double most) {
    first_ = 0;
    last_ = static_cast<int>(radius_.size());
    while (first_ < last_ && radius_[first_] < least) ++first_;
    while (last_ > first_ && radius_[last_ - 1] > most) --last_;
    cover_at_.assign(ray_.size() * radius_.size(), 0);
    const double reach = last_ > first_ ? radius_[last_ - 1] : 0;
    const bool within = x - reach >= 0 && y - reach >= 0 && x + reach < cover_.width - 1 &&
                        y + reach < cover_.height - 1;
    for (std::size_t i = 0; i < ray_.size(); ++i) {
      const auto [ux, uy] = ray_[i];
      float* along = cover_at_.data() + i * radius_.size();
      const double* radius = radius_.data();
      for (int k = first_; k < last_; ++k) {
        const double px = x + radius[k] * ux, py = y + radius[k] * uy;
        along[k] =
            static_cast<float>(within ? sampledWithin(cover_, px, py) : sampled(cover_, px, py));
      }
    }
  }

  /// The radius at which most rays meet ink within a pixel, the deeper the better.
  double best() const {
    double most = -1, r = radius_.front();
    const int n = static_cast<int>(radius_.size());
    for (int k = first_; k < last_; ++k) {
      double share = 0, depth = 0;
      for (std::size_t i = 0; i < ray_.size(); ++i) {
        const float* row = cover_at_.data() + i * radius_.size();
        bool ink = false;
        for (int j = std::max(0, k - 2); j <= std::min(n - 1, k + 2); ++j)
          ink = ink || row[j] > kInk;
        share += ink;
        depth += row[k] / 255;
      }
      const double score = (share + 0.5 * depth) / static_cast<double>(ray_.size());
      if (score > most) most = score, r = radius_[k];
    }
    return r;
  }

  void gather(double r, std::vector<int>& rays, std::vector<double>& at) const {
    const double reach = std::max(2.5, 0.06 * r);
    for (std::size_t i = 0; i < ray_.size(); ++i) {
      double sum = 0, moment = 0;
      for (int k = first_; k < last_; ++k) {
        const double c = cover_at_[i * radius_.size() + k];
        if (c <= 64 || std::abs(radius_[k] - r) > reach) continue;
        sum += c;
        moment += c * radius_[k];
      }
      if (sum <= 102) continue;
      rays.push_back(static_cast<int>(i));
      at.push_back(moment / sum);
    }
  }

  double miss(int ray, double at, const Eigen::Vector3d& m) const {
    return at - (m[0] * ray_[ray][0] + m[1] * ray_[ray][1] + m[2]);
  }

  Eigen::Vector3d solve(const std::vector<int>& rays, const std::vector<double>& at,
                        const std::vector<bool>& keep, double& spread) const {
    Eigen::Matrix3d normal = Eigen::Matrix3d::Identity() * 1e-9;
    Eigen::Vector3d right = Eigen::Vector3d::Zero();
    for (std::size_t i = 0; i < rays.size(); ++i) {
      if (!keep[i]) continue;
      const Eigen::Vector3d row(ray_[rays[i]][0], ray_[rays[i]][1], 1);
      normal += row * row.transpose();
      right += row * at[i];
    }
    const Eigen::Vector3d m = normal.ldlt().solve(right);
    std::vector<double> off;
    for (std::size_t i = 0; i < rays.size(); ++i) off.push_back(std::abs(miss(rays[i], at[i], m)));
    std::nth_element(off.begin(), off.begin() + static_cast<std::ptrdiff_t>(off.size() / 2),
                     off.end());
    spread = off[off.size() / 2];
    return m;
  }

  /// The centre lines of a hole run out over its rim as strokes with paper beside them (hatching
  /// may run into one side): what stands in lettering has no more than a neighbour there.
  double beyond(const Circle& c) const {
    std::array<double, 4> share{};
    const double from = c.radius + std::max(2.0, 0.015 * inch_),
                 past = c.radius + std::max(5.0, 0.045 * inch_),
                 aside = std::max(3.0, 0.025 * inch_);
    for (std::size_t side = 0; side < share.size(); ++side) {
      const double ux = side == 0 ? 1 : side == 1 ? -1 : 0, uy = side == 2 ? 1 : side == 3 ? -1 : 0;
      int on = 0, count = 0;
      for (double t = from; t <= past; t += 0.5, ++count) {
        const double x = c.x + t * ux, y = c.y + t * uy;
        double most = 0;
        for (const double w : {-1.0, 0.0, 1.0})
          most = std::max(most, sampled(cover_, x + w * uy, y + w * ux));
        const double one = sampled(cover_, x + aside * uy, y + aside * ux),
                     other = sampled(cover_, x - aside * uy, y - aside * ux);
        on += most > 76 && std::min(one, other) < 0.6 * most;
      }
      share[side] = double(on) / count;
    }
    std::sort(share.begin(), share.end());
    return share[1];
  }

  double cross(const Circle& c) const {
    const int reach = static_cast<int>(std::max(2.0, 0.5 * c.radius));
    const int x = static_cast<int>(std::lround(c.x)), y = static_cast<int>(std::lround(c.y));
    int level = 0, plumb = 0;
    for (int k = -reach; k <= reach; ++k) {
      bool l = false, p = false;
      for (int j = -2; j <= 2; ++j) {
        l = l || (cover_.holds(x + k, y + j) && cover_.row(y + j)[x + k] > 76);
        p = p || (cover_.holds(x + j, y + k) && cover_.row(y + k)[x + j] > 76);
      }
      level += l;
      plumb += p;
    }
    return std::min(level, plumb) / (2.0 * reach + 1);
  }

  const Grey& cover_;
  double inch_;
  std::vector<std::array<double, 2>> ray_;
  std::vector<double> radius_;
  std::vector<float> cover_at_;
  int first_ = 0, last_ = 0;
};

}  // namespace

std::vector<Circle> circlesOf(const Grey& cover, double inch, const Stop& stop) {
  const Grey half = shrunk(cover, 2);
  std::vector<Peak> peaks;
  addPeaks(half, 2, kLeastRadius, kWide, inch, stop, peaks);
  addPeaks(shrunk(half, 2), 4, 0.9 * kWide, kMostRadius, inch, stop, peaks);
  std::stable_sort(peaks.begin(), peaks.end(),
                   [](const Peak& a, const Peak& b) { return a.votes > b.votes; });
  if (peaks.size() > kMostPeaks) peaks.resize(kMostPeaks);
  Rim rim(cover, inch);
  std::vector<Circle> found;
  for (const Peak& p : peaks) {
    if (stop.asked()) return {};
    Circle c;
    if (rim.fit(p, c)) found.push_back(c);
  }
  std::stable_sort(found.begin(), found.end(), [](const Circle& a, const Circle& b) {
    return std::tuple(a.cross > 0.6, a.round, a.radius) >
           std::tuple(b.cross > 0.6, b.round, b.radius);
  });
  std::vector<Circle> out;
  for (const Circle& c : found) {
    const bool had = std::any_of(out.begin(), out.end(), [&](const Circle& o) {
      return std::hypot(o.x - c.x, o.y - c.y) <= 0.6 * std::max({o.radius, c.radius, 0.04 * inch});
    });
    if (!had) out.push_back(c);
  }
  return out;
}

}  // namespace inchwright::seen
