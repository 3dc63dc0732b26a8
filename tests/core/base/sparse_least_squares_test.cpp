#include "core/base/sparse_least_squares.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/base/least_squares.h"

namespace inchwright {
namespace {

// y = a + b t through (0, 1), (1, 3), (2, 4), (3, 4): a = 1.5, b = 1; the inverse of [4 6; 6 14]
// is [0.7 -0.3; -0.3 0.2], so the line at t has the variance 0.7 − 0.6 t + 0.2 t².
TEST(SparseLeastSquares, FitsALineByHand) {
  std::vector<SparseRow> rows;
  const double seen[] = {1, 3, 4, 4};
  for (const int t : {0, 1, 2, 3}) {
    rows.push_back({{{0, 1.0}}, seen[t], 1});
    if (t > 0) rows.back().terms.push_back({1, static_cast<double>(t)});
  }
  rows.push_back({{{0, 1.0}, {1, 5.0}}, 0, 0});
  const auto fit = fitSparse(2, rows);
  ASSERT_TRUE(fit.has_value());
  EXPECT_NEAR(fit->unknowns[0], 1.5, 1e-12);
  EXPECT_NEAR(fit->unknowns[1], 1.0, 1e-12);
  const double variances[] = {0.7, 0.3, 0.3, 0.7, 2.7};
  for (std::size_t i = 0; i < 5; ++i) EXPECT_NEAR(fit->variances[i], variances[i], 1e-12) << i;
}

TEST(SparseLeastSquares, WeighsAsOftenAsItSays) {
  const auto fit = fitSparse(1, {{{{0, 1.0}}, 9, 3}, {{{0, 1.0}}, 11, 1}});
  ASSERT_TRUE(fit.has_value());
  EXPECT_NEAR(fit->unknowns[0], 9.5, 1e-14);
  EXPECT_NEAR(fit->variances[0], 0.25, 1e-14);
}

TEST(SparseLeastSquares, SaysNothingWhereAnUnknownIsOpen) {
  EXPECT_FALSE(fitSparse(2, {{{{0, 1.0}, {1, -1.0}}, 1, 1}}).has_value());
  EXPECT_FALSE(fitSparse(2, {{{{0, 1.0}}, 1, 1}}).has_value());
  EXPECT_FALSE(fitSparse(3, {{{{0, 1.0}}, 1, 1}, {{{1, 1.0}, {2, 1.0}}, 1, 1e6}}).has_value());
  EXPECT_TRUE(fitSparse(0, {}).has_value());
}

// Against the dense QR, and the variances against what a change of each right side does: the
// variance of a sum is Σ (its change by right side i)² / weight i.
TEST(SparseLeastSquares, AgreesWithTheDenseOne) {
  for (const unsigned seed : {1u, 2u, 3u, 4u, 5u, 6u}) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> any(-1, 1), weight(0.5, 40);
    std::uniform_int_distribution<std::uint32_t> other(0, 7);
    constexpr std::uint32_t kUnknowns = 9;
    std::vector<SparseRow> rows;
    for (std::uint32_t i = 0; i < 24; ++i) {
      const std::uint32_t a = i % kUnknowns, b = (a + 1 + other(random)) % kUnknowns;
      rows.push_back({{{a, any(random) + 2}, {b, any(random)}}, any(random), weight(random)});
    }
    const auto fit = fitSparse(kUnknowns, rows);
    ASSERT_TRUE(fit.has_value());
    const auto dense = [&](std::size_t changed) {
      LeastSquaresSystem system(rows.size(), kUnknowns);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const double root = std::sqrt(rows[i].weight);
        for (const auto& [column, factor] : rows[i].terms) system.at(i, column) = factor * root;
        system.right[i] = (rows[i].right + (i == changed ? 1 : 0)) * root;
      }
      return solveLeastSquares(system, 1e-12).unknowns;
    };
    const std::vector<double> solved = dense(rows.size());
    std::vector<double> variances(rows.size(), 0);
    for (std::size_t i = 0; i < kUnknowns; ++i) EXPECT_NEAR(fit->unknowns[i], solved[i], 1e-11);
    for (std::size_t changed = 0; changed < rows.size(); ++changed) {
      const std::vector<double> moved = dense(changed);
      for (std::size_t row = 0; row < rows.size(); ++row) {
        double by = 0;
        for (const auto& [i, factor] : rows[row].terms) by += factor * (moved[i] - solved[i]);
        variances[row] += by * by / rows[changed].weight;
      }
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
      EXPECT_NEAR(fit->variances[i], variances[i], 1e-10);
    }
  }
}

}  // namespace
}  // namespace inchwright
