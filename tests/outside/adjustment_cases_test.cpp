// Least squares of networks of levels: heights are positions, height differences are readings.

#include <gtest/gtest.h>

#include "core/tolerance/adjust.h"
#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

constexpr double kInch = Length::kTicksPerInch;

// Ghilani and Wolf, Adjustment Computations, 4th ed., Example 12.1: A = 437.596; B 448.1087,
// C 453.4685, D 444.9436 (recomputed 448.108712, 453.468468, 444.943605; squares 1.272123 with 3 to
// spare). A reading's limits stand at three of its standard deviations.
TEST(AdjustmentCases, ALevelNetworkReadOffAPrint) {
  const Part part = published(R"(
      edge A x
      edge B x
      edge C x
      edge D x
      r1 x A B 10.509 ±.018
      r2 x B C 5.360 ±.012
      r3 x D C 8.523 ±.015
      r4 x A D 7.348 ±.009
      r5 x D B 3.167 ±.012
      r6 x A C 15.881 ±.036)");
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  const auto adjusted = adjustAxis(part, *network, {"A", {}, {}});
  ASSERT_TRUE(adjusted.ok());
  const auto height = [&](const char* id) {
    for (const AdjustedAxis::Place& place : adjusted->places) {
      if (place.id == id) return 437.596 + place.value / kInch;
    }
    return 0.0;
  };
  EXPECT_NEAR(height("B"), 448.108712, 5e-7);
  EXPECT_NEAR(height("C"), 453.468468, 5e-7);
  EXPECT_NEAR(height("D"), 444.943605, 5e-7);
  EXPECT_NEAR(adjusted->result.squares, 1.272123, 5e-7);
  EXPECT_EQ(adjusted->result.freedom, 3);
  EXPECT_FALSE(adjusted->result.blunder.has_value());
}

// Mahun, Open Access Surveying Library, least squares chapter D, example 4: Q 815.418, R 802.962,
// S0 0.029 (recomputed 815.418421, 802.962105, 0.029049; the source rounds S0 to 0.028).
TEST(AdjustmentCases, FourBenchmarks) {
  const auto result = adjustDifferences(6,
                                        {{{}, 0, 4, 8.91, 1},
                                         {{}, 1, 4, -2.92, 1},
                                         {{}, 2, 4, -4.67, 1},
                                         {{}, 3, 4, -8.66, 1},
                                         {{}, 0, 5, -3.56, 1},
                                         {{}, 2, 5, -17.12, 1},
                                         {{}, 3, 5, -21.10, 1},
                                         {{}, 4, 5, -12.47, 1}},
                                        {{0, 806.52}, {1, 818.32}, {2, 820.12}, {3, 824.04}});
  ASSERT_TRUE(result.ok());
  EXPECT_NEAR(result->places[4].value, 815.418421, 5e-7);
  EXPECT_NEAR(result->places[5].value, 802.962105, 5e-7);
  EXPECT_NEAR(result->s0, 0.029049, 5e-7);
  EXPECT_EQ(result->freedom, 6);
}

}  // namespace
}  // namespace inchwright
