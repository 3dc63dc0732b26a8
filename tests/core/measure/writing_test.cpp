#include "core/measure/writing.h"

#include <gtest/gtest.h>

#include <random>

#include "core/base/checked.h"
#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

constexpr std::uint64_t kWritingSeed = 20'240'518;

TEST(WriteFraction, InLowestTerms) {
  const std::pair<std::int64_t, const char*> rows[] = {
      {0, "0"},           {in64(76), "1 3/16"}, {in64(60), "15/16"},
      {in64(128), "2"},   {in64(-24), "-3/8"},  {in64(-88), "-1 3/8"},
      {in64(-128), "-2"}, {in128(1), "1/128"},  {in128(-127), "-127/128"},
      {in64(32), "1/2"},  {in128(1) + 1, ""},   {1, ""},
      {9'921'875, ""},  // 1/256
      {tenths(3751), ""},
  };
  for (const auto& [ticks, text] : rows) EXPECT_EQ(writeFraction(Length::ticks(ticks)), text);
}

TEST(WriteDecimal, WithoutTrailingZeros) {
  const std::pair<std::int64_t, const char*> inches[] = {
      {0, "0"},
      {in64(76), "1.1875"},
      {in64(24), "0.375"},
      {in64(-24), "-0.375"},
      {in64(128), "2"},
      {in64(1), "0.015625"},
      {in128(1), "0.0078125"},
      {tenths(5), "0.0005"},
      {127, "0.00000005"},
      {in64(64 * 100), "100"},
      {1, "0.000000000394"},  // 1/2 540 000 000 to twelve places
      {-1, "-0.000000000394"},
  };
  for (const auto& [ticks, text] : inches) {
    EXPECT_EQ(writeDecimal(Length::ticks(ticks), Unit::inch), text);
  }
  const std::pair<std::int64_t, const char*> millimetres[] = {
      {0, "0"},
      {1, "0.00000001"},
      {-1, "-0.00000001"},
      {in64(64), "25.4"},
      {in64(1), "0.396875"},
      {microns(12'700), "12.7"},
      {INT64_MAX, "92233720368.54775807"},
  };
  for (const auto& [ticks, text] : millimetres) {
    EXPECT_EQ(writeDecimal(Length::ticks(ticks), Unit::millimetre), text);
  }
}

TEST(WritePlain, TheFractionWhereThereIsOne) {
  EXPECT_EQ(writePlain(Length::ticks(in64(76)), Unit::inch), "1 3/16");
  EXPECT_EQ(writePlain(Length::ticks(tenths(3751)), Unit::inch), "0.3751");
  EXPECT_EQ(writePlain(Length::ticks(in64(76)), Unit::millimetre), "30.1625");
}

TEST(ReadStep, PlainLengthsAboveNothing) {
  const auto fine = readStep("0.0005", Unit::inch);
  ASSERT_TRUE(fine.ok());
  EXPECT_EQ(fine->size.ticks(), tenths(5));
  EXPECT_EQ(fine->unit, Unit::inch);
  EXPECT_EQ(readStep("0.005", Unit::millimetre)->size.ticks(), microns(5));
  EXPECT_EQ(readStep("1/64", Unit::inch)->size.ticks(), in64(1));
  EXPECT_TRUE(readStep("0.1", Unit::inch).ok());
  for (const char* coarse : {"5", "0.101", "3 mm"}) EXPECT_FALSE(readStep(coarse, Unit::inch).ok());
  const auto crossed = readStep("0.005 mm", Unit::inch);
  ASSERT_TRUE(crossed.ok());
  EXPECT_EQ(crossed->size.ticks(), microns(5));
  EXPECT_EQ(crossed->unit, Unit::inch);
  for (const char* text : {"0", "-0.0005", "", "x", "0.0005 \u00B1.0001", "(0.0005)", "R 0.0005",
                           "0.0005 BSC", "1/3"}) {
    EXPECT_FALSE(readStep(text, Unit::inch).ok()) << text;
    if (const auto step = readStep(text, Unit::inch); !step) {
      EXPECT_EQ(step.error().code, ErrorCode::badText);
    }
  }
}

Step inches(std::int64_t tenThousandths) {
  return {Length::ticks(tenths(tenThousandths)), Unit::inch};
}

TEST(ShowAtStep, EveryPlaceTheStepNeeds) {
  const struct {
    std::int64_t ticks;
    Step step;
    const char* text;
    std::int64_t value;
  } rows[] = {
      {in64(76), inches(5), "1.1875", tenths(11'875)},
      {in64(1), inches(5), "0.0155", tenths(155)},
      {in64(3), inches(5), "0.0470", tenths(470)},
      {in64(-3), inches(5), "-0.0470", tenths(-470)},
      {in64(1), inches(1), "0.0156", tenths(156)},
      {in64(1), inches(2), "0.0156", tenths(156)},
      {in64(128), inches(10), "2.000", tenths(20'000)},
      {in64(64), {Length::ticks(microns(5)), Unit::millimetre}, "25.400", microns(25'400)},
      {in64(1), {Length::ticks(microns(5)), Unit::millimetre}, "0.395", microns(395)},
      {in64(1), {Length::ticks(microns(1)), Unit::millimetre}, "0.397", microns(397)},
      {in64(5), {Length::ticks(in64(4)), Unit::inch}, "0.0625", in64(4)},
      {in64(76), {Length::ticks(in64(64)), Unit::inch}, "1", in64(64)},
      {0, inches(5), "0.0000", 0},
      {tenths(2), inches(5), "0.0000", 0},
      {tenths(-2), inches(5), "0.0000", 0},  // never -0.0000
      {tenths(3), inches(5), "0.0005", tenths(5)},
      {tenths(-3), inches(5), "-0.0005", tenths(-5)},
      // Ties go away from zero.
      {127 * 5'000, inches(5), "0.0005", tenths(5)},
      {-127 * 5'000, inches(5), "-0.0005", tenths(-5)},
      {127 * 5'000 - 1, inches(5), "0.0000", 0},
      {127 * -5'000 + 1, inches(5), "0.0000", 0},
  };
  for (const auto& row : rows) {
    const Shown shown = showAtStep(Rational(row.ticks), row.step);
    EXPECT_EQ(shown.text, row.text) << row.ticks;
    EXPECT_EQ(shown.value.ticks(), row.value) << row.ticks;
    EXPECT_EQ(shown.error.ticks(), row.value - row.ticks) << row.ticks;
  }
}

TEST(ShowAtStep, APartOfATickDecidesATieToo) {
  const Step step{Length::ticks(3), Unit::millimetre};
  const auto shown = [&](Int128 over, Int128 under) {
    return showAtStep(*Rational::of(over, under), step).value.ticks();
  };
  EXPECT_EQ(shown(3, 2), 3);  // exactly half a step
  EXPECT_EQ(shown(-3, 2), -3);
  EXPECT_EQ(shown(2999, 2000), 0);  // a little less
  EXPECT_EQ(shown(-2999, 2000), 0);
  EXPECT_EQ(shown(3001, 2000), 3);
  EXPECT_EQ(shown(4, 3), 0);
  EXPECT_EQ(shown(5, 3), 3);
}

TEST(ShowAtStep, AgreesWithPlainRationalArithmeticAndIsMirrored) {
  SCOPED_TRACE(kWritingSeed);
  std::mt19937_64 random(kWritingSeed);
  const std::int64_t sizes[] = {1,         2,         3,          7,          tenths(5),
                                tenths(2), tenths(1), microns(5), microns(1), in64(1)};
  for (int i = 0; i < 200'000; ++i) {
    const std::int64_t under = static_cast<std::int64_t>(random() % 12) + 1;
    const std::int64_t bits = 1 + static_cast<std::int64_t>(random() % 50);
    const std::int64_t over = static_cast<std::int64_t>(random() >> (64 - bits));
    const Step step{Length::ticks(sizes[random() % std::size(sizes)]),
                    i % 2 == 0 ? Unit::inch : Unit::millimetre};
    const Rational exact = *Rational::of(over, under);
    const Shown shown = showAtStep(exact, step);
    const Rational size(step.size.ticks());
    const std::int64_t steps = *exact.over(size)->rounded();
    ASSERT_EQ(shown.value.ticks(), steps * step.size.ticks());
    ASSERT_EQ(shown.error.ticks(), *Rational(shown.value.ticks()).minus(exact)->rounded());
    ASSERT_LE(shown.error.magnitude().ticks(), step.size.ticks() / 2 + 1);
    const Shown mirrored = showAtStep(exact.negated(), step);
    ASSERT_EQ(mirrored.value.ticks(), -shown.value.ticks());
    ASSERT_EQ(mirrored.error.ticks(), -shown.error.ticks());
    const bool nothing = shown.text.find_first_not_of("0.") == std::string::npos;
    ASSERT_EQ(mirrored.text, nothing ? shown.text : "-" + shown.text);
  }
}

TEST(ShowAtStep, TheTextSaysTheValue) {
  SCOPED_TRACE(kWritingSeed);
  std::mt19937_64 random(kWritingSeed);
  for (int i = 0; i < 20'000; ++i) {
    const Step step =
        i % 2 == 0 ? inches(1 + static_cast<std::int64_t>(random() % 20))
                   : Step{Length::ticks(microns(1 + static_cast<std::int64_t>(random() % 9))),
                          Unit::millimetre};
    const auto ticks = static_cast<std::int64_t>(random() >> 24) - (std::int64_t{1} << 39);
    const Shown shown = showAtStep(Rational(ticks), step);
    const std::size_t point = shown.text.find('.');
    ASSERT_NE(point, std::string::npos);
    std::string digits = shown.text;
    digits.erase(point, 1);
    std::int64_t scale = 1;
    for (std::size_t place = point + 1; place < shown.text.size(); ++place) scale *= 10;
    const auto said = Rational::of(Int128{std::stoll(digits)} * ticksPer(step.unit), scale);
    ASSERT_EQ(*said, Rational(shown.value.ticks())) << shown.text;
  }
}

TEST(ShowAtStep, AStepOfTheOtherUnitIsShownToAHundredthOfIt) {
  const Step step{Length::ticks(microns(5)), Unit::inch};
  const Shown shown = showAtStep(Rational(microns(12'705)), step);
  EXPECT_EQ(shown.value.ticks(), microns(12'705));
  EXPECT_EQ(shown.text, "0.500197");  // 12.705 / 25.4 = 0.50019685...
}

TEST(ShowAtStep, HoldsTheLargestSize) {
  const std::int64_t largest = (std::int64_t{1} << 62) - 1;
  const Shown shown = showAtStep(Rational(largest), {Length::ticks(1), Unit::millimetre});
  EXPECT_EQ(shown.text, "46116860184.27387903");
  EXPECT_EQ(shown.error.ticks(), 0);
  const auto fine = Rational::of((Int128{1} << 126) - 1, Int128{1} << 66);  // overflows no product
  EXPECT_EQ(showAtStep(*fine, inches(5)).text.substr(0, 1), "4");
}

}  // namespace
}  // namespace inchwright
