#include "core/place/least_held.h"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <cstdint>

namespace inchwright {
namespace {

constexpr Eigen::Index kWays = 3;
constexpr int kRounds = 4;
constexpr double kBendStep = 1e-3;

using SparseSlopes = Eigen::SparseMatrix<double>;

SparseSlopes slopesAt(const Equations& equations, const Block& block, std::span<const double> at) {
  std::vector<Eigen::Triplet<double>> entries;
  for (std::size_t i = 0; i < block.rows.size(); ++i) {
    const Row& row = equations.rows()[block.rows[i]];
    equations.forEachSlope(
        row, equations.evaluate(row, at), [&](std::uint32_t variable, double slope) {
          const auto found =
              std::lower_bound(block.variables.begin(), block.variables.end(), variable);
          if (found == block.variables.end() || *found != variable) return;
          entries.emplace_back(static_cast<int>(i),
                               static_cast<int>(found - block.variables.begin()), slope);
        });
  }
  SparseSlopes slopes(static_cast<Eigen::Index>(block.rows.size()),
                      static_cast<Eigen::Index>(block.variables.size()));
  slopes.setFromTriplets(entries.begin(), entries.end());
  return slopes;
}

// The ways that the inverse lengthens most, by subspace iteration from fixed ones.
Eigen::MatrixXd longest(const Eigen::SimplicialLLT<SparseSlopes>& inverse, Eigen::Index size) {
  Eigen::MatrixXd ways(size, std::min(kWays, size));
  for (Eigen::Index j = 0; j < ways.cols(); ++j) {
    for (Eigen::Index i = 0; i < size; ++i) {
      ways(i, j) = std::sin(1 + static_cast<double>(i) * (1.7 + static_cast<double>(j)));
    }
  }
  for (int round = 0; round < kRounds; ++round) {
    ways = inverse.solve(ways).eval();
    for (Eigen::Index j = 0; j < ways.cols(); ++j) {
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

std::vector<std::vector<double>> leastHeld(const Equations& equations, const Block& block,
                                           std::span<const double> at, double farthest) {
  std::vector<std::vector<double>> starts;
  const auto size = static_cast<Eigen::Index>(block.variables.size());
  const SparseSlopes slopes = slopesAt(equations, block, at);
  const SparseSlopes turned = slopes.transpose();
  const SparseSlopes normal = turned * slopes;
  const Eigen::SimplicialLLT<SparseSlopes> inverse(normal);
  if (inverse.info() != Eigen::Success) return starts;
  Eigen::MatrixXd ways = longest(inverse, size);
  if (!ways.allFinite()) return starts;
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
    const Eigen::VectorXd slope = slopes * way;
    const Eigen::VectorXd bend =
        (residualsMoved(way, kBendStep) + residualsMoved(way, -kBendStep)) /
        (2 * kBendStep * kBendStep);
    const double along = slope.dot(bend);
    const double t = -slope.squaredNorm() / along;
    if (!(std::abs(t) <= farthest)) continue;
    const Eigen::VectorXd beside = bend - slope * (along / slope.squaredNorm());
    const Eigen::VectorXd taken = inverse.solve(turned * beside);
    std::vector<double> start;
    for (Eigen::Index i = 0; i < size; ++i) {
      start.push_back(at[block.variables[static_cast<std::size_t>(i)]] + t * way[i] -
                      t * t * taken[i]);
    }
    starts.push_back(std::move(start));
  }
  return starts;
}

}  // namespace inchwright
