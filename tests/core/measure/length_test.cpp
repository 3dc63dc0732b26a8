#include "core/measure/length.h"

#include <gtest/gtest.h>

#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

TEST(Length, TicksOfTheUnits) {
  // 25.4 mm to the inch exactly: Federal Register, 1 July 1959.
  EXPECT_EQ(Length::kTicksPerInch * 10, Length::kTicksPerMillimetre * 254);
  EXPECT_EQ(ticksPer(Unit::inch), in64(64));
  EXPECT_EQ(ticksPer(Unit::millimetre), microns(1000));
  EXPECT_EQ(tenths(10'000), in64(64));
}

TEST(Length, CheckedArithmetic) {
  const Length most = Length::ticks(INT64_MAX);
  const Length one = Length::ticks(1);
  EXPECT_EQ(Length::ticks(in64(24)).plus(Length::ticks(in64(40))), Length::ticks(in64(64)));
  EXPECT_EQ(one.minus(most), Length::ticks(2 - INT64_MAX - 1));
  EXPECT_EQ(Length::ticks(in64(36)).times(8), Length::ticks(in64(288)));
  EXPECT_FALSE(most.plus(one));
  EXPECT_FALSE(most.negated().minus(Length::ticks(2)));
  EXPECT_FALSE(most.times(2));
}

TEST(Length, SignAndOrder) {
  EXPECT_EQ(Length::ticks(-5).magnitude(), Length::ticks(5));
  EXPECT_EQ(Length::ticks(5).negated(), Length::ticks(-5));
  EXPECT_LT(Length::ticks(-5), Length::ticks(4));
  EXPECT_TRUE(Length().isZero());
}

TEST(Length, NearestTick) {
  EXPECT_EQ(nearestTick(*Rational::of(5, 2)), Length::ticks(3));
  EXPECT_EQ(nearestTick(*Rational::of(-5, 2)), Length::ticks(-3));
  EXPECT_EQ(nearestTick(*Rational::of(7, 3)), Length::ticks(2));
  EXPECT_FALSE(nearestTick(*Rational::of(Int128{1} << 64, 1)));
}

}  // namespace
}  // namespace inchwright
