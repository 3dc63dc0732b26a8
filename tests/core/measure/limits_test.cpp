#include "core/measure/limits.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <random>

namespace inchwright {
namespace {

Step thousandth() {
  return {Length::ticks(2'540'000), Unit::inch};
}

TEST(Limits, AreRoundedInwards) {
  // 10.7 and 11.3 mm: 0.421259… and 0.444881… in.
  const auto shown =
      showLimitsInwards(Length::ticks(1'070'000'000), Length::ticks(1'130'000'000), thousandth());
  ASSERT_TRUE(shown.ok());
  EXPECT_EQ(shown->low.text, "0.422");
  EXPECT_EQ(shown->high.text, "0.444");
  EXPECT_EQ(shown->low.error, Length::ticks(422 * 2'540'000 - 1'070'000'000));
  EXPECT_EQ(shown->high.error, Length::ticks(444 * 2'540'000 - 1'130'000'000));
}

TEST(Limits, WholeStepsStayAsTheyAre) {
  const auto shown =
      showLimitsInwards(Length::ticks(-2'540'000), Length::ticks(5'080'000), thousandth());
  ASSERT_TRUE(shown.ok());
  EXPECT_EQ(shown->low.text, "-0.001");
  EXPECT_EQ(shown->high.text, "0.002");
  EXPECT_TRUE(shown->low.error.isZero());
  EXPECT_TRUE(shown->high.error.isZero());
}

TEST(Limits, NegativeOnesGoInwardsToo) {
  const auto shown = showLimitsInwards(Length::ticks(-2'540'001), Length::ticks(-1), thousandth());
  ASSERT_TRUE(shown.ok());
  EXPECT_EQ(shown->low.text, "-0.001");
  EXPECT_EQ(shown->high.text, "-0.001");
}

TEST(Limits, RefusesWhatTheStepIsTooCoarseFor) {
  const auto between = showLimitsInwards(Length::ticks(1), Length::ticks(2), thousandth());
  ASSERT_FALSE(between.ok());
  EXPECT_EQ(between.error().code, ErrorCode::unsolvable);
  const auto swapped = showLimitsInwards(Length::ticks(2), Length::ticks(1), thousandth());
  ASSERT_FALSE(swapped.ok());
  EXPECT_EQ(swapped.error().code, ErrorCode::badRequest);
}

TEST(Limits, NeverWidenAndWasteLessThanAStep) {
  constexpr std::uint32_t kSeed = 20'261;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  std::uniform_int_distribution<std::int64_t> any(-5'000'000'000, 5'000'000'000);
  std::uniform_int_distribution<std::int64_t> apart(2 * 2'540'000, 900'000'000);
  for (int i = 0; i < 10'000; ++i) {
    const Length low = Length::ticks(any(random));
    const Length high = Length::ticks(low.ticks() + apart(random));
    const auto shown = showLimitsInwards(low, high, thousandth());
    ASSERT_TRUE(shown.ok());
    ASSERT_GE(shown->low.value, low);
    ASSERT_LE(shown->high.value, high);
    ASSERT_LT(shown->low.error, thousandth().size);
    ASSERT_LT(shown->high.error.magnitude(), thousandth().size);
  }
}

}  // namespace
}  // namespace inchwright
