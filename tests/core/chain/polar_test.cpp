#include "core/chain/polar.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/measure/angle.h"

namespace inchwright {
namespace {

Rational degrees(std::int64_t numerator, std::int64_t denominator = 1) {
  return *Rational::of(Int128{numerator} * Angle::kPerDegree, denominator);
}

TEST(PolarOffset, QuartersAreExact) {
  const std::int64_t d = 5'080'000'000;
  using Pair = std::pair<Offset, Offset>;
  EXPECT_EQ(polarOffset(d, degrees(0)), (Pair{{d / 2, true}, {0, true}}));
  EXPECT_EQ(polarOffset(d, degrees(90)), (Pair{{0, true}, {d / 2, true}}));
  EXPECT_EQ(polarOffset(d, degrees(180)), (Pair{{-d / 2, true}, {0, true}}));
  EXPECT_EQ(polarOffset(d, degrees(270)), (Pair{{0, true}, {-d / 2, true}}));
  EXPECT_EQ(polarOffset(d, degrees(-90)), polarOffset(d, degrees(270)));
  EXPECT_EQ(polarOffset(d, degrees(360 * 7)), polarOffset(d, degrees(0)));
  EXPECT_EQ(polarOffset(3, degrees(180)), (Pair{{*Rational::of(-3, 2), true}, {0, true}}))
      << "half a tick is left for whoever rounds the sum";
}

TEST(PolarOffset, HalvesAreExactWhereTheyComeOut) {
  EXPECT_EQ(polarOffset(4'000, degrees(60)).first, (Offset{1'000, true}));
  EXPECT_EQ(polarOffset(4'000, degrees(150)).second, (Offset{1'000, true}));
  EXPECT_EQ(polarOffset(4'000, degrees(240)).first, (Offset{-1'000, true}));
  EXPECT_EQ(polarOffset(4'002, degrees(30)).second, (Offset{*Rational::of(4'002, 4), true}));
  EXPECT_EQ(polarOffset(4'002, degrees(-30)).second, (Offset{*Rational::of(-4'002, 4), true}));
  EXPECT_FALSE(polarOffset(4'000, degrees(60)).second.exact);
}

// Expected ticks by Python's decimal module at 60 digits, from its own series.
TEST(PolarOffset, AgreesWithSixtyDigits) {
  struct Row {
    std::int64_t diameter, numerator, denominator, cosine, sine;
  };
  for (const Row& row : {
           Row{2540000000, 45, 1, 898025612, 898025612},
           Row{5080000000, 360, 7, 1583664097, 1985851965},
           Row{20000000000000, 1, 3, 9999830768577, 58177313550},
           Row{20000000000000, 123456789, 1000000, -5513079332147, 8343018415265},
           Row{9223372036854775807, 7, 11, 4611401578397281198, 51219286540497568},
           Row{9223372036854775807, 2221, 13, -4552954974576253497, 733654504545566624},
           Row{4762500000, -17, 1, 2277200700, -696210122},
           Row{19999999999999, 44999999, 1000000, 7071067935279, 7071067688452},
           Row{19999999999999, 45000001, 1000000, 7071067688452, 7071067935279},
       }) {
    SCOPED_TRACE(row.numerator);
    const auto [cosine, sine] = polarOffset(row.diameter, degrees(row.numerator, row.denominator));
    EXPECT_EQ(cosine.ticks.rounded(), row.cosine);
    EXPECT_EQ(sine.ticks.rounded(), row.sine);
    EXPECT_FALSE(cosine.exact || sine.exact);
  }
}

// Likewise, in 2^-20 tick.
TEST(PolarOffset, KeepsAMillionthOfATick) {
  struct Row {
    std::int64_t diameter, numerator, denominator, cosine, sine;
  };
  for (const Row& row : {
           Row{2540000000, 45, 1, 941648104240621, 941648104240621},
           Row{5080000000, 360, 7, 1660592163883511, 2082316710543408},
           Row{4762500000, -17, 1, 2387818001346832, -730029224751023},
           Row{9921875, 29, 3, 5128059630721, 873485037177},
       }) {
    SCOPED_TRACE(row.numerator);
    const auto [cosine, sine] = polarOffset(row.diameter, degrees(row.numerator, row.denominator));
    EXPECT_EQ(cosine.ticks, *Rational::of(row.cosine, 1 << 20));
    EXPECT_EQ(sine.ticks, *Rational::of(row.sine, 1 << 20));
  }
}

TEST(PolarOffset, LiesOnTheCircleAndMirrors) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 20'000; ++i) {
    const auto diameter = static_cast<std::int64_t>(random() % 20'000'000'000'000);
    const auto angle = *Rational::of(static_cast<std::int64_t>(random() % 5'000'000'000'000), 7);
    SCOPED_TRACE(testing::Message() << diameter << " " << angle.toDouble());
    const auto [cosine, sine] = polarOffset(diameter, angle);
    const auto mirrored = polarOffset(diameter, angle.negated());
    ASSERT_EQ(mirrored.first, cosine);
    ASSERT_EQ(mirrored.second.ticks, sine.ticks.negated());
    // Each is within 2^-21 tick, so the radius within √½ of 2^-20; 64 bits hold it to 2^-21.
    const auto value = [](const Rational& ticks) {
      return static_cast<long double>(ticks.numerator()) /
             static_cast<long double>(ticks.denominator());
    };
    const long double radius = std::hypot(value(cosine.ticks), value(sine.ticks));
    ASSERT_LE(std::abs(radius - static_cast<long double>(diameter) / 2), 2e-6L);
  }
}

}  // namespace
}  // namespace inchwright
