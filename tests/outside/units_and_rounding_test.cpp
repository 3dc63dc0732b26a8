// Units and rounding against the documents that define them.

#include <gtest/gtest.h>

#include <string>

#include "core/measure/limits.h"
#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

const Step kThousandth{Length::ticks(2'540'000), Unit::inch};

// Federal Register, 1 July 1959, "Refinement of Values for the Yard and the Pound": 1 yard is
// 0.9144 metre, so 1 inch is 25.4 mm exactly.
TEST(Units, TheInchOf1959) {
  EXPECT_EQ(length("1 in"), length("25.4 mm"));
  EXPECT_EQ(length("3'"), length("914.4 mm"));
  EXPECT_EQ(length("36"), length("914.4 mm"));
  EXPECT_EQ(writeDecimal(length("1"), Unit::millimetre), "25.4");
  EXPECT_EQ(writeDecimal(length("1/64"), Unit::millimetre), "0.396875");
}

// Converted limits as ANSI/IEEE Std 268 has them (its edition from memory: 1992): 11 ±0.3 mm is
// 0.444881…/0.421259… in; to three places .444/.422, inwards. To the nearest (.445/.421) would let
// in what the print does not.
TEST(Units, ConvertedLimitsGoInwards) {
  const Lettered size = lettered("11 ±0.3", Unit::millimetre);
  ASSERT_TRUE(size.tolerance.has_value());
  const Length high = *size.value.plus(size.tolerance->upper);
  const Length low = *size.value.plus(size.tolerance->lower);
  EXPECT_EQ(writeDecimal(high, Unit::inch).substr(0, 8), "0.444881");
  EXPECT_EQ(writeDecimal(low, Unit::inch).substr(0, 8), "0.421259");

  const auto inwards = showLimitsInwards(low, high, kThousandth);
  ASSERT_TRUE(inwards.ok());
  EXPECT_EQ(inwards->high.text, "0.444");
  EXPECT_EQ(inwards->low.text, "0.422");
  EXPECT_EQ(showAtStep(high.rational(), kThousandth).text, "0.445");
  EXPECT_EQ(showAtStep(low.rational(), kThousandth).text, "0.421");
}

// Arithmetic of the trade (no source): odd sixteenths to three places, rounded one by one, add
// .0005 each; eight pitches of 9/16 are 4.500, not 4.504.
TEST(Rounding, EightPitchesOfNineSixteenths) {
  const std::string onePitch = showAtStep(length("9/16").rational(), kThousandth).text;
  EXPECT_EQ(onePitch, "0.563");
  EXPECT_EQ(length("8 x " + onePitch), length("4.504"));

  std::string bar = "edge P0 x left\n";
  for (int i = 1; i <= 8; ++i) {
    const std::string from = "P" + std::to_string(i - 1);
    const std::string to = "P" + std::to_string(i);
    bar += "edge " + to + " x\nr" + std::to_string(i) + " x " + from + " " + to + " 9/16\n";
  }
  const Solution solution = solved(published(bar));
  const auto end = solution.between("P0", "P8", Axis::x);
  ASSERT_TRUE(end.has_value());
  EXPECT_EQ(showAtStep(*end, kThousandth).text, "4.500");
  for (int i = 1; i <= 8; ++i) {
    const auto at = solution.between("P0", "P" + std::to_string(i), Axis::x);
    ASSERT_TRUE(at.has_value());
    EXPECT_LE(showAtStep(*at, kThousandth).error.magnitude(), Length::ticks(1'270'000)) << i;
  }
}

// Decimal equivalents as wall charts print them; values from memory.
TEST(Units, DecimalEquivalents) {
  EXPECT_EQ(writeDecimal(length("1/64"), Unit::inch), "0.015625");
  EXPECT_EQ(writeDecimal(length("3/32"), Unit::inch), "0.09375");
  EXPECT_EQ(writeDecimal(length("13/64"), Unit::inch), "0.203125");
  EXPECT_EQ(writeDecimal(length("7/16"), Unit::inch), "0.4375");
  EXPECT_EQ(writeDecimal(length("23/32"), Unit::inch), "0.71875");
  EXPECT_EQ(writeDecimal(length("63/64"), Unit::inch), "0.984375");
}

}  // namespace
}  // namespace inchwright
