#include "core/base/least_squares.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace inchwright {
namespace {

constexpr double kThreshold = 1e-12;

// A straight line y = a + b t through (0, 1), (1, 3), (2, 4), (3, 4): by the normal equations
// 4 a + 6 b = 12 and 6 a + 14 b = 23, so a = 1.5, b = 1.
TEST(LeastSquares, FitsALineByHand) {
  LeastSquaresSystem system(4, 2);
  const double seen[] = {1, 3, 4, 4};
  for (std::size_t i = 0; i < 4; ++i) {
    system.at(i, 0) = 1;
    system.at(i, 1) = static_cast<double>(i);
    system.right[i] = seen[i];
  }
  const LeastSquaresSolution solved = solveLeastSquares(system, kThreshold);
  EXPECT_EQ(solved.rank, 2u);
  EXPECT_NEAR(solved.unknowns[0], 1.5, 1e-12);
  EXPECT_NEAR(solved.unknowns[1], 1.0, 1e-12);
}

TEST(LeastSquares, TellsTheRank) {
  LeastSquaresSystem system(3, 2);
  for (std::size_t i = 0; i < 3; ++i) {
    system.at(i, 0) = static_cast<double>(i + 1);
    system.at(i, 1) = 2 * static_cast<double>(i + 1);
  }
  EXPECT_EQ(solveLeastSquares(system, kThreshold).rank, 1u);
  system.at(2, 1) += 1e-3;
  EXPECT_EQ(solveLeastSquares(system, kThreshold).rank, 2u);
  EXPECT_EQ(solveLeastSquares(system, 0.1).rank, 1u);
}

// What is left over stands at right angles to every column.
TEST(LeastSquares, LeavesNothingAlongAnyColumn) {
  for (const unsigned seed : {1u, 2u, 3u, 4u, 5u}) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> any(-1, 1);
    LeastSquaresSystem system(12, 5);
    for (double& one : system.design) one = any(random);
    for (double& one : system.right) one = any(random);
    const LeastSquaresSolution solved = solveLeastSquares(system, kThreshold);
    ASSERT_EQ(solved.rank, 5u);
    for (std::size_t column = 0; column < 5; ++column) {
      double along = 0;
      for (std::size_t row = 0; row < 12; ++row) {
        double left = system.right[row];
        for (std::size_t k = 0; k < 5; ++k) left -= system.at(row, k) * solved.unknowns[k];
        along += left * system.at(row, column);
      }
      EXPECT_NEAR(along, 0, 1e-12) << column;
    }
  }
}

}  // namespace
}  // namespace inchwright
