#include "core/base/least_squares.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace inchwright {
namespace {

constexpr double kThreshold = 1e-12;

// A straight line y = a + b t through (0, 1), (1, 3), (2, 4), (3, 4): by the normal equations
// 4 a + 6 b = 12 and 6 a + 14 b = 23, so a = 1.5, b = 1; the inverse of [4 6; 6 14] is
// [0.7 -0.3; -0.3 0.2].
TEST(LeastSquares, FitsALineByHand) {
  LeastSquaresSystem system(4, 2);
  const double seen[] = {1, 3, 4, 4};
  for (std::size_t i = 0; i < 4; ++i) {
    system.at(i, 0) = 1;
    system.at(i, 1) = static_cast<double>(i);
    system.right[i] = seen[i];
  }
  const LeastSquaresSolution solved = solveLeastSquares(system, kThreshold, true);
  EXPECT_EQ(solved.rank, 2u);
  EXPECT_NEAR(solved.unknowns[0], 1.5, 1e-12);
  EXPECT_NEAR(solved.unknowns[1], 1.0, 1e-12);
  const double inverse[] = {0.7, -0.3, -0.3, 0.2};
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(solved.cofactor[i], inverse[i], 1e-12) << i;
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

TEST(LeastSquares, CofactorIsLeftOutUnlessAskedFor) {
  LeastSquaresSystem system(1, 1);
  system.at(0, 0) = 2;
  system.right[0] = 5;
  const LeastSquaresSolution solved = solveLeastSquares(system, kThreshold);
  EXPECT_TRUE(solved.cofactor.empty());
  EXPECT_NEAR(solved.unknowns[0], 2.5, 1e-15);
}

// What is left over stands at right angles to every column, and the cofactor undoes DᵀD.
TEST(LeastSquares, LeavesNothingAlongAnyColumn) {
  for (const unsigned seed : {1u, 2u, 3u, 4u, 5u}) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> any(-1, 1);
    LeastSquaresSystem system(12, 5);
    for (double& one : system.design) one = any(random);
    for (double& one : system.right) one = any(random);
    const LeastSquaresSolution solved = solveLeastSquares(system, kThreshold, true);
    ASSERT_EQ(solved.rank, 5u);
    for (std::size_t column = 0; column < 5; ++column) {
      double along = 0;
      for (std::size_t row = 0; row < 12; ++row) {
        double left = system.right[row];
        for (std::size_t k = 0; k < 5; ++k) left -= system.at(row, k) * solved.unknowns[k];
        along += left * system.at(row, column);
      }
      EXPECT_NEAR(along, 0, 1e-12) << column;
      for (std::size_t across = 0; across < 5; ++across) {
        double product = 0;
        for (std::size_t k = 0; k < 5; ++k) {
          double normal = 0;
          for (std::size_t row = 0; row < 12; ++row) {
            normal += system.at(row, column) * system.at(row, k);
          }
          product += normal * solved.cofactor[k * 5 + across];
        }
        EXPECT_NEAR(product, column == across ? 1 : 0, 1e-10) << column << ' ' << across;
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
