#include "core/place/least_held.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <utility>

#include "core/place/paired_cholesky.h"

namespace inchwright {
namespace {

constexpr Eigen::Index kWays = 3;
constexpr int kRounds = 4;
constexpr double kBendStep = 1e-3;
constexpr std::uint32_t kNoColumn = 0xffffffff;

// The slopes of a block's rows by its variables, row by row.
class BlockSlopes {
 public:
  BlockSlopes(const Equations& equations, const Block& block, std::span<const double> at)
      : columns_(block.variables.size()) {
    std::vector<std::uint32_t> columnOf(equations.variableCount(), kNoColumn);
    for (std::uint32_t i = 0; i < columns_; ++i) columnOf[block.variables[i]] = i;
    for (const std::uint32_t index : block.rows) {
      const Row& row = equations.rows()[index];
      equations.forEachSlope(row, equations.evaluate(row, at),
                             [&](std::uint32_t variable, double slope) {
                               if (columnOf[variable] == kNoColumn) return;
                               slopes_.push_back({columnOf[variable], slope});
                             });
      end_.push_back(slopes_.size());
    }
  }

  Eigen::VectorXd times(const Eigen::VectorXd& way) const {
    Eigen::VectorXd out = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(end_.size()));
    std::size_t next = 0;
    for (std::size_t row = 0; row < end_.size(); ++row) {
      for (; next < end_[row]; ++next) {
        out[static_cast<Eigen::Index>(row)] += slopes_[next].second * way[slopes_[next].first];
      }
    }
    return out;
  }

  Eigen::VectorXd turnedTimes(const Eigen::VectorXd& residuals) const {
    Eigen::VectorXd out = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(columns_));
    std::size_t next = 0;
    for (std::size_t row = 0; row < end_.size(); ++row) {
      for (; next < end_[row]; ++next) {
        out[slopes_[next].first] +=
            slopes_[next].second * residuals[static_cast<Eigen::Index>(row)];
      }
    }
    return out;
  }

  // No singular value is above it: the root of the greatest sum of a row times that of a column.
  double greatest() const {
    std::vector<double> byColumn(columns_);
    double byRow = 0;
    std::size_t next = 0;
    for (const std::size_t end : end_) {
      double sum = 0;
      for (; next < end; ++next) {
        sum += std::abs(slopes_[next].second);
        byColumn[slopes_[next].first] += std::abs(slopes_[next].second);
      }
      byRow = std::max(byRow, sum);
    }
    return std::sqrt(byRow * *std::max_element(byColumn.begin(), byColumn.end()));
  }

  // The product of the turned matrix with itself, by its factors.
  std::optional<PairedCholesky> squared() const {
    std::vector<std::pair<std::uint32_t, std::uint32_t>> entries;
    forEachProduct([&](std::uint32_t i, std::uint32_t j, double) { entries.push_back({i, j}); });
    PairedCholesky out(static_cast<std::uint32_t>(columns_), entries);
    std::size_t next = 0;
    forEachProduct([&](std::uint32_t, std::uint32_t, double value) { out.add(next++, value); });
    if (!out.factorise(std::vector<double>(columns_))) return std::nullopt;
    return out;
  }

 private:
  template <class Visit>
  void forEachProduct(Visit visit) const {
    std::size_t first = 0;
    for (const std::size_t end : end_) {
      for (std::size_t i = first; i < end; ++i) {
        for (std::size_t j = first; j < end; ++j) {
          const auto& [column, slope] = slopes_[i];
          const auto& [other, with] = slopes_[j];
          if (other <= column) visit(column, other, slope * with);
        }
      }
      first = end;
    }
  }

  std::size_t columns_;
  std::vector<std::pair<std::uint32_t, double>> slopes_;
  std::vector<std::size_t> end_;  // of each row
};

Eigen::VectorXd solved(PairedCholesky& inverse, Eigen::VectorXd x) {
  inverse.solve({x.data(), static_cast<std::size_t>(x.size())});
  return x;
}

// The ways that the inverse lengthens most, by subspace iteration from fixed ones.
Eigen::MatrixXd longest(PairedCholesky& inverse, Eigen::Index size) {
  Eigen::MatrixXd ways(size, std::min(kWays, size));
  for (Eigen::Index j = 0; j < ways.cols(); ++j) {
    for (Eigen::Index i = 0; i < size; ++i) {
      ways(i, j) = std::sin(1 + static_cast<double>(i) * (1.7 + static_cast<double>(j)));
    }
  }
  for (int round = 0; round < kRounds; ++round) {
    for (Eigen::Index j = 0; j < ways.cols(); ++j) {
      ways.col(j) = solved(inverse, ways.col(j));
      for (Eigen::Index k = 0; k < j; ++k) {
        ways.col(j) -= ways.col(k).dot(ways.col(j)) * ways.col(k);
      }
      ways.col(j).normalize();
    }
  }
  return ways;
}

Eigen::VectorXd residualsAt(const Equations& equations, const Block& block,
                            std::span<const double> at) {
  Eigen::VectorXd residuals(static_cast<Eigen::Index>(block.rows.size()));
  for (std::size_t i = 0; i < block.rows.size(); ++i) {
    residuals[static_cast<Eigen::Index>(i)] =
        equations.evaluate(equations.rows()[block.rows[i]], at).residual;
  }
  return residuals;
}

}  // namespace

LeastHeld leastHeld(const Equations& equations, const Block& block, std::span<const double> at,
                    double farthest) {
  LeastHeld held;
  const auto size = static_cast<Eigen::Index>(block.variables.size());
  const BlockSlopes slopes(equations, block, at);
  auto inverse = slopes.squared();
  if (!inverse) return held;
  const Eigen::MatrixXd ways = longest(*inverse, size);
  if (!ways.allFinite()) return held;
  const double greatest = slopes.greatest();
  std::vector<double> moved(at.begin(), at.end());
  const auto residualsMoved = [&](const Eigen::VectorXd& way, double by) {
    for (Eigen::Index i = 0; i < size; ++i) {
      const std::uint32_t variable = block.variables[static_cast<std::size_t>(i)];
      moved[variable] = at[variable] + by * way[i];
    }
    return residualsAt(equations, block, moved);
  };
  for (Eigen::Index j = 0; j < ways.cols(); ++j) {
    const Eigen::VectorXd way = ways.col(j) / ways.col(j).cwiseAbs().maxCoeff();
    // Along the way the rows miss by t·slope + t²·bend. What of the bend lies beside the slope the
    // other ways take up; along it the two must undo each other.
    const Eigen::VectorXd slope = slopes.times(way);
    const double hold = slope.norm() / (way.norm() * greatest);
    held.hold = j == 0 ? hold : std::min(held.hold, hold);
    const Eigen::VectorXd bend =
        (residualsMoved(way, kBendStep) + residualsMoved(way, -kBendStep)) /
        (2 * kBendStep * kBendStep);
    const double along = slope.dot(bend);
    const double t = -slope.squaredNorm() / along;
    if (!(std::abs(t) <= farthest)) continue;
    const Eigen::VectorXd beside = bend - slope * (along / slope.squaredNorm());
    const Eigen::VectorXd taken = solved(*inverse, slopes.turnedTimes(beside));
    std::vector<double> start;
    for (Eigen::Index i = 0; i < size; ++i) {
      start.push_back(at[block.variables[static_cast<std::size_t>(i)]] + t * way[i] -
                      t * t * taken[i]);
    }
    held.starts.push_back(std::move(start));
  }
  return held;
}

}  // namespace inchwright
