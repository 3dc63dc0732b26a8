#include "core/place/crossings.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/place/answers.h"

namespace inchwright {
namespace {

// What crosses at less than about a degree is left to the general way.
constexpr double kClearSine = 0.02;

// A circle about (x, y), or the points p with n·p = c for n = (x, y).
struct PlaceLocus {
  bool isCircle = false;
  double x = 0, y = 0;
  double size = 0;  ///< the radius, or c
};

class CrossingFinder {
 public:
  CrossingFinder(const Equations& equations, std::span<const Row> rows, const Block& block,
                 std::span<double> at)
      : equations_(equations), rows_(rows), block_(block), at_(at) {}

  std::optional<std::vector<std::array<double, 2>>> run();

 private:
  bool moves(std::uint32_t quantity) const;
  bool takePoint(std::uint32_t x, std::uint32_t y);
  std::optional<PlaceLocus> locusOf(const Row& row);
  void put(double x, double y);
  bool polish(double x, double y, std::vector<std::array<double, 2>>& found);

  double value(std::uint32_t quantity) const { return equations_.valueOf(quantity, at_); }

  const Equations& equations_;
  std::span<const Row> rows_;
  const Block& block_;
  std::span<double> at_;
  std::uint32_t x_ = 0, y_ = 0;    // quantities of the place
  std::size_t ofX_ = 0, ofY_ = 0;  // which of the block's variables they are
  double baseX_ = 0, baseY_ = 0;   // what they are at 0
  bool isKnown_ = false;
};

bool CrossingFinder::moves(std::uint32_t quantity) const {
  const auto terms = equations_.termsOf(quantity);
  return std::any_of(terms.begin(), terms.end(), [&](const Term& term) {
    return term.variable == block_.variables[0] || term.variable == block_.variables[1];
  });
}

// Whether the two quantities are each one of the block's variables and something that stands still.
bool CrossingFinder::takePoint(std::uint32_t x, std::uint32_t y) {
  if (isKnown_) return x == x_ && y == y_;
  const auto ownOf = [&](std::uint32_t quantity) -> std::size_t {
    std::size_t own = 2;
    for (const Term& term : equations_.termsOf(quantity)) {
      for (const std::size_t i : {0U, 1U}) {
        if (term.variable != block_.variables[i]) continue;
        if (own != 2 || term.factor != 1) return 3;
        own = i;
      }
    }
    return own;
  };
  ofX_ = ownOf(x);
  ofY_ = ownOf(y);
  if (ofX_ > 1 || ofY_ > 1 || ofX_ == ofY_) return false;
  x_ = x;
  y_ = y;
  baseX_ = value(x) - at_[block_.variables[ofX_]];
  baseY_ = value(y) - at_[block_.variables[ofY_]];
  isKnown_ = true;
  return true;
}

std::optional<PlaceLocus> CrossingFinder::locusOf(const Row& row) {
  std::size_t mine = 0, other = 2;
  if (row.kind == RowKind::distance || row.kind == RowKind::direction) {
    if (!moves(row.of[0])) std::swap(mine, other);
    if (moves(row.of[other]) || moves(row.of[other + 1])) return std::nullopt;
  } else if (row.kind != RowKind::off) {
    return std::nullopt;
  }
  for (std::size_t i = row.kind == RowKind::off ? 2 : 4; i < operandsOf(row.kind); ++i) {
    if (moves(row.of[i])) return std::nullopt;
  }
  if (!takePoint(row.of[mine], row.of[mine + 1])) return std::nullopt;
  if (row.kind == RowKind::off) {
    const double t = value(row.of[2]);
    return PlaceLocus{
        false, -std::sin(t), std::cos(t),
        value(row.of[3]) + row.signB * value(row.of[4]) + row.signA * value(row.of[5])};
  }
  const double x = value(row.of[other]), y = value(row.of[other + 1]);
  if (row.kind == RowKind::distance) {
    const double radius =
        value(row.of[6]) + row.signA * value(row.of[4]) + row.signB * value(row.of[5]);
    return PlaceLocus{true, x, y, radius};
  }
  double base = value(row.of[4]);
  if (row.signB != 0) base -= std::numbers::pi * std::floor(base / std::numbers::pi + 1e-9);
  const double t = row.signA * base + value(row.of[5]);
  const double c = std::cos(t), s = std::sin(t);
  return PlaceLocus{false, -s, c, c * y - s * x};
}

void CrossingFinder::put(double x, double y) {
  at_[block_.variables[ofX_]] = x - baseX_;
  at_[block_.variables[ofY_]] = y - baseY_;
}

// A step or two by Newton's way takes out what rounding left. False where that does not do.
bool CrossingFinder::polish(double x, double y, std::vector<std::array<double, 2>>& found) {
  constexpr double kOtherRay = 1e-6;
  put(x, y);
  std::array<double, 2> residual{};
  std::array<std::array<double, 2>, 2> slope{};
  for (int step = 0; step < 4; ++step) {
    for (const std::size_t i : {0U, 1U}) {
      const RowValue at = equations_.evaluate(rows_[i], at_);
      residual[i] = at.residual;
      slope[i] = {};
      equations_.forEachSlope(rows_[i], at, [&](std::uint32_t variable, double one) {
        if (variable == block_.variables[0]) slope[i][0] += one;
        if (variable == block_.variables[1]) slope[i][1] += one;
      });
    }
    const double greatest = std::max(std::abs(residual[0]), std::abs(residual[1]));
    if (step == 0 && greatest > kOtherRay * (1 + std::abs(x) + std::abs(y))) return true;
    if (greatest <= 2e-15 * (1 + std::abs(x) + std::abs(y)) ||
        (step == 3 && greatest <= kHoldsInches)) {
      found.push_back({at_[block_.variables[0]], at_[block_.variables[1]]});
      return true;
    }
    const double all = slope[0][0] * slope[1][1] - slope[0][1] * slope[1][0];
    if (std::abs(all) < kClearSine / 2) return false;
    at_[block_.variables[0]] -= (residual[0] * slope[1][1] - residual[1] * slope[0][1]) / all;
    at_[block_.variables[1]] -= (residual[1] * slope[0][0] - residual[0] * slope[1][0]) / all;
  }
  return false;
}

std::optional<std::vector<std::array<double, 2>>> CrossingFinder::run() {
  if (rows_.size() != 2 || block_.variables.size() != 2) return std::nullopt;
  auto first = locusOf(rows_[0]);
  auto second = first ? locusOf(rows_[1]) : std::nullopt;
  if (!second) return std::nullopt;
  std::vector<std::array<double, 2>> found;
  if (!first->isCircle) std::swap(first, second);
  if (!first->isCircle) {
    const double sine = first->x * second->y - first->y * second->x;
    if (std::abs(sine) < kClearSine) return std::nullopt;
    const double x = (first->size * second->y - second->size * first->y) / sine;
    const double y = (second->size * first->x - first->size * second->x) / sine;
    if (!polish(x, y, found)) return std::nullopt;
    return found;
  }
  // The chord in which they cross: how far from the circle's centre, and its normal.
  double nx = second->x, ny = second->y, foot = 0;
  if (second->isCircle) {
    const double dx = second->x - first->x, dy = second->y - first->y;
    const double apart = std::hypot(dx, dy);
    if (!(apart > kClearSine * first->size)) return std::nullopt;
    nx = dx / apart;
    ny = dy / apart;
    foot = (apart * apart + first->size * first->size - second->size * second->size) / (2 * apart);
    const double half = first->size * first->size - foot * foot;
    const double sine = std::sqrt(std::max(half, 0.0)) * apart / (first->size * second->size);
    if (!(second->size > 0) || !(sine > kClearSine)) return std::nullopt;
  } else {
    foot = second->size - nx * first->x - ny * first->y;
  }
  const double half = first->size * first->size - foot * foot;
  if (!(first->size > 0) || !(half > kClearSine * kClearSine * first->size * first->size)) {
    return std::nullopt;
  }
  const double along = std::sqrt(half);
  for (const double side : {1.0, -1.0}) {
    const double x = first->x + foot * nx - side * along * ny;
    const double y = first->y + foot * ny + side * along * nx;
    if (!polish(x, y, found)) return std::nullopt;
  }
  return found;
}

}  // namespace

std::optional<std::vector<std::array<double, 2>>> crossings(const Equations& equations,
                                                            std::span<const Row> rows,
                                                            const Block& block,
                                                            std::span<double> at) {
  return CrossingFinder(equations, rows, block, at).run();
}

}  // namespace inchwright
