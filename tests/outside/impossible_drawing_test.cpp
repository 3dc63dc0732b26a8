// DOE-HDBK-1016/2-93, "Engineering Symbology, Prints, and Drawings", Fig. 8: three steps of 1 in
// with +1/10, overall at most 3 1/10. The steps can add to 3 3/10, so the drawing is not correct:
// the nominals close and the tolerances contradict, by 2/10.

#include <gtest/gtest.h>

#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

TEST(ImpossibleDrawing, NominalsCloseAndTolerancesDoNot) {
  const Part block = published(R"(
      edge L x left
      edge A x
      edge B x
      edge R x right
      r1 x L A 1 +1/10 -0
      r2 x A B 1 +1/10 -0
      r3 x B R 1 +1/10 -0
      r4 x L R 3 +1/10 -0)");
  EXPECT_TRUE(solved(block).clashes.empty());

  Length longest;
  Length shortest;
  for (std::size_t i = 0; i < 3; ++i) {
    const Lettered& step = block.readings[i].figure;
    const auto tolerance = toleranceOf(step, block.general);
    ASSERT_TRUE(tolerance.has_value());
    longest = *longest.plus(step.value)->plus(tolerance->upper);
    shortest = *shortest.plus(step.value)->plus(tolerance->lower);
  }
  EXPECT_EQ(longest, length("3 3/10"));
  EXPECT_EQ(shortest, length("3"));
  const Lettered& overall = block.readings[3].figure;
  const auto allowed = toleranceOf(overall, block.general);
  ASSERT_TRUE(allowed.has_value());
  const Length most = *overall.value.plus(allowed->upper);
  EXPECT_EQ(most, length("3 1/10"));
  EXPECT_EQ(*longest.minus(most), length("2/10"));
}

}  // namespace
}  // namespace inchwright
