#include "core/tolerance/adjust.h"

#include <gtest/gtest.h>

#include <cmath>

namespace inchwright {
namespace {

// Ghilani and Wolf, Adjustment Computations, 4th ed., Example 12.1; exact values recomputed.
TEST(Adjust, AgreesWithALevelNetwork) {
  const auto result = adjustDifferences(4,
                                        {{"AB", 0, 1, 10.509, .006},
                                         {"BC", 1, 2, 5.360, .004},
                                         {"CD", 2, 3, -8.523, .005},
                                         {"DA", 3, 0, -7.348, .003},
                                         {"BD", 1, 3, -3.167, .004},
                                         {"AC", 0, 2, 15.881, .012}},
                                        {{0, 437.596}});
  ASSERT_TRUE(result.ok());
  EXPECT_NEAR(result->places[1].value, 448.108712, 5e-7);
  EXPECT_NEAR(result->places[2].value, 453.468468, 5e-7);
  EXPECT_NEAR(result->places[3].value, 444.943605, 5e-7);
  EXPECT_NEAR(result->squares, 1.272123, 5e-7);
  EXPECT_EQ(result->freedom, 3);
  EXPECT_FALSE(result->blunder.has_value());
}

// Mahun, Open Access Surveying Library, least squares chapter D, example 4; exact values
// recomputed.
TEST(Adjust, AgreesWithFourBenchmarks) {
  const auto result = adjustDifferences(6,
                                        {{"1Q", 0, 4, 8.91, 1},
                                         {"2Q", 1, 4, -2.92, 1},
                                         {"3Q", 2, 4, -4.67, 1},
                                         {"4Q", 3, 4, -8.66, 1},
                                         {"1R", 0, 5, -3.56, 1},
                                         {"3R", 2, 5, -17.12, 1},
                                         {"4R", 3, 5, -21.10, 1},
                                         {"QR", 4, 5, -12.47, 1}},
                                        {{0, 806.52}, {1, 818.32}, {2, 820.12}, {3, 824.04}});
  ASSERT_TRUE(result.ok());
  EXPECT_NEAR(result->places[4].value, 815.418421, 5e-7);
  EXPECT_NEAR(result->places[5].value, 802.962105, 5e-7);
  EXPECT_NEAR(result->s0, 0.029049, 5e-7);
  EXPECT_EQ(result->freedom, 6);
}

TEST(Adjust, TheChanceIsThatOfChiSquare) {
  // Two observations of one difference, two apart: squares 2 with 1 to spare; P = erfc(1).
  const auto result = adjustDifferences(2, {{"a", 0, 1, 9, 1}, {"b", 0, 1, 11, 1}}, {{0, 0}});
  EXPECT_NEAR(result->squares, 2, 1e-12);
  EXPECT_NEAR(*result->chance, std::erfc(1.0), 1e-9);
  EXPECT_FALSE(result->blunder.has_value());
}

TEST(Adjust, NamesABlunderWhereItCanBeTold) {
  const auto result = adjustDifferences(3,
                                        {{"a", 0, 1, 10, 1},
                                         {"b", 1, 2, 10, 1},
                                         {"c", 0, 2, 20, 1},
                                         {"d", 0, 1, 30, 1},
                                         {"e", 1, 2, 10, 1}},
                                        {{0, 0}});
  ASSERT_TRUE(result->blunder.has_value());
  EXPECT_EQ(*result->blunder, 3u);
}

TEST(Adjust, RefusesWhatItCantDo) {
  EXPECT_FALSE(adjustDifferences(2, {{"a", 0, 1, 1, 0}}, {{0, 0}}).ok());
  EXPECT_FALSE(adjustDifferences(2, {{"a", 0, 1, 1, 1}}, {}).ok());
  EXPECT_EQ(adjustDifferences(4, {{"a", 2, 3, 1, 1}}, {{0, 0}}).error().code,
            ErrorCode::unsolvable);
}

}  // namespace
}  // namespace inchwright
