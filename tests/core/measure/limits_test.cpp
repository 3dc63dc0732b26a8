#include "core/measure/limits.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
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

TEST(Limits, WorstCasesAreRoundedOutwards) {
  const Step half{Length::ticks(1'270'000), Unit::inch};
  const auto at = [](double inches) { return Length::ticks(std::llround(inches * 2.54e9)); };
  const ShownLimits shown = showOutwards(at(2.984375), at(3.015625), half);
  EXPECT_EQ(shown.low.text, "2.9840");
  EXPECT_EQ(shown.high.text, "3.0160");
  EXPECT_EQ(shown.high.error, at(0.000375));
  const ShownLimits below = showOutwards(at(-0.015625), at(-0.000025), half);
  EXPECT_EQ(below.low.text, "-0.0160");
  EXPECT_EQ(below.high.text, "0.0000");
  const ShownLimits whole = showOutwards(at(-0.0155), at(0.0155), half);
  EXPECT_EQ(whole.low.text, "-0.0155");
  EXPECT_EQ(whole.high.text, "0.0155");
}

TEST(Limits, TheStepIsAsFineAsItTakesToTell) {
  const Step half{Length::ticks(1'270'000), Unit::inch};
  const auto at = [](double inches) { return Length::ticks(std::llround(inches * 2.54e9)); };
  const auto stepFor = [&](double low, double high, std::optional<Length> least,
                           std::optional<Length> greatest) {
    return stepThatTells(at(low), at(high), least, greatest, half).size.ticks();
  };
  EXPECT_EQ(stepFor(1, 3.0154, {}, at(3.0152)), 1'270'000);   // 3.0155 against 3.0150
  EXPECT_EQ(stepFor(1, 3.0154, {}, at(3.0153)), 127'000);     // 3.0155 against 3.0155
  EXPECT_EQ(stepFor(1, 3.0151, {}, at(3.0152)), 127'000);     // keeps: 3.0155 against 3.0150
  EXPECT_EQ(stepFor(0.9999, 2, at(1), {}), 1'270'000);        // 0.9995 against 1.0000
  EXPECT_EQ(stepFor(0.9999, 2, at(0.99991), {}), 1'270'000);  // 0.9995 against 1.0000
  EXPECT_EQ(stepFor(1.0001, 1.0002, at(0.5), at(1.00005)), 127'000);  // wholly over
  EXPECT_EQ(stepFor(1.0001, 1.0002, at(1.00024), {}), 127'000);       // wholly under
  // Apart by less than any step: it ends.
  const Length one = Length::ticks(1), two = Length::ticks(2);
  EXPECT_EQ(stepThatTells(one, Length::ticks(9), two, {}, half).size, Length::ticks(127));
}

TEST(Limits, FiguresAtTheStepThatTellsBearOutTheVerdict) {
  std::mt19937_64 random(411);
  const Step half{Length::ticks(1'270'000), Unit::inch};
  std::uniform_int_distribution<std::int64_t> ticks(-4'000'000, 4'000'000);
  for (int i = 0; i < 20'000; ++i) {
    const std::int64_t a = ticks(random) / 1270 * 127, b = ticks(random) / 1270 * 127;
    const Length low = Length::ticks(std::min(a, b)), high = Length::ticks(std::max(a, b));
    const Length greatest = Length::ticks(ticks(random) / 1270 * 127);
    const Step step = stepThatTells(low, high, {}, greatest, half);
    const ShownLimits shown = showOutwards(low, high, step);
    const Length limit = showAtStep(greatest.rational(), step).value;
    ASSERT_EQ(high > greatest, shown.high.value > limit)
        << a << ' ' << b << ' ' << greatest.ticks();
    ASSERT_LE(shown.low.value, low);
    ASSERT_GE(shown.high.value, high);
  }
}

}  // namespace
}  // namespace inchwright
