#include "core/place/paired_cholesky.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace inchwright {
namespace {

using Entry = std::pair<std::uint32_t, std::uint32_t>;

TEST(PairedCholesky, OneUnknown) {
  PairedCholesky matrix(1, std::vector<Entry>{{0, 0}});
  matrix.add(0, 3);
  EXPECT_EQ(matrix.diagonal(0), 3);
  ASSERT_TRUE(matrix.factorise(std::vector{1.0}));
  std::vector<double> x{8};
  matrix.solve(x);
  EXPECT_DOUBLE_EQ(x[0], 2);
}

// [4 2 0; 2 5 3; 0 3 6]: by hand, x = (1, 2, 3) gives (8, 21, 24).
TEST(PairedCholesky, ByHandEitherWayRoundAndInParts) {
  const std::vector<Entry> entries{{0, 0}, {0, 1}, {1, 1}, {2, 1}, {2, 2}, {1, 0}};
  PairedCholesky matrix(3, entries);
  for (int run = 0; run < 2; ++run) {
    matrix.clear();
    const double values[] = {4, 1.5, 5, 3, 6, 0.5};
    for (std::size_t i = 0; i < entries.size(); ++i) matrix.add(i, values[i]);
    ASSERT_TRUE(matrix.factorise(std::vector<double>(3)));
    std::vector<double> x{8, 21, 24};
    matrix.solve(x);
    for (const std::uint32_t i : {0U, 1U, 2U}) EXPECT_NEAR(x[i], i + 1, 1e-14);
  }
}

TEST(PairedCholesky, WhatIsNotPositiveDefiniteHasNoFactors) {
  const std::vector<Entry> entries{{0, 0}, {0, 1}, {1, 1}};
  PairedCholesky matrix(2, entries);
  const double values[] = {1, 2, 1};
  for (std::size_t i = 0; i < entries.size(); ++i) matrix.add(i, values[i]);
  EXPECT_FALSE(matrix.factorise(std::vector<double>(2)));
  EXPECT_FALSE(matrix.factorise(std::vector{-2.0, 9.0}));
  EXPECT_TRUE(matrix.factorise(std::vector{1.5, 1.5}));
}

// Products of random rows with themselves, as least squares make them: rows over places of two
// coordinates, some over single numbers, and some numbers in no row at all.
TEST(PairedCholesky, SolvesWhatRandomRowsMake) {
  std::mt19937 random(11);
  const auto below = [&](std::uint32_t count) {
    return static_cast<std::uint32_t>(random() % count);
  };
  const auto slope = [&] { return static_cast<double>(random()) / 4294967296.0 * 2 - 1; };
  for (int round = 0; round < 300; ++round) {
    const std::uint32_t size = 1 + below(60);
    std::vector<std::vector<std::pair<std::uint32_t, double>>> rows(below(2 * size));
    for (auto& row : rows) {
      for (std::uint32_t places = 1 + below(3); places > 0; --places) {
        const std::uint32_t first = below(size) & ~1U;
        row.push_back({first, slope()});
        if (first + 1 < size && below(5) != 0) row.push_back({first + 1, slope()});
      }
    }
    std::vector<Entry> entries;
    std::vector<double> values;
    std::vector<double> whole(std::size_t{size} * size);
    for (const auto& row : rows) {
      for (const auto& [i, a] : row) {
        for (const auto& [j, b] : row) {
          whole[i * size + j] += a * b;
          if (j > i) continue;
          entries.push_back(below(2) == 0 ? Entry(i, j) : Entry(j, i));
          values.push_back(a * b);
        }
      }
    }
    PairedCholesky matrix(size, entries);
    for (std::size_t i = 0; i < entries.size(); ++i) matrix.add(i, values[i]);
    std::vector<double> more(size), truth(size), x(size);
    for (std::uint32_t i = 0; i < size; ++i) {
      EXPECT_NEAR(matrix.diagonal(i), whole[i * size + i], 1e-12);
      more[i] = 0.01 + std::abs(slope());
      truth[i] = slope();
      whole[i * size + i] += more[i];
    }
    for (std::uint32_t i = 0; i < size; ++i) {
      for (std::uint32_t j = 0; j < size; ++j) x[i] += whole[i * size + j] * truth[j];
    }
    ASSERT_TRUE(matrix.factorise(more)) << round;
    matrix.solve(x);
    // Condition below some 10⁴: rows of at most six slopes, .01 on the diagonal.
    for (std::uint32_t i = 0; i < size; ++i) ASSERT_NEAR(x[i], truth[i], 1e-10) << round;
  }
}

}  // namespace
}  // namespace inchwright
