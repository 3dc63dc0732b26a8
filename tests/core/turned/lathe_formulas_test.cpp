#include "core/turned/lathe_formulas.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

Length lengthOf(std::string_view text) {
  return readLength(text).value().value;
}

TEST(Taper, AngleAndGrowthAreOneAnother) {
  for (const double degrees : {0.5, 1.0, 7.5, 45.0, 90.0, 170.0}) {
    EXPECT_NEAR(angleOfTaper(taperOfAngle(degrees)), degrees, 1e-9);
  }
  EXPECT_NEAR(taperOfAngle(90), 2, 1e-12);
}

// The published cases stand in tests/outside.
TEST(Tailstock, NeedsALength) {
  EXPECT_EQ(tailstockSetOver(lengthOf("1"), lengthOf("1"), lengthOf("2"), lengthOf("9")).value(),
            Rational(0));
  EXPECT_FALSE(tailstockSetOver(lengthOf("1"), lengthOf("1/2"), Length(), lengthOf("9")).ok());
  EXPECT_FALSE(tailstockSetOver(lengthOf("1"), lengthOf("1/2"), lengthOf("9"), Length()).ok());
}

TEST(ChangeWheels, NeedTeeth) {
  EXPECT_EQ(threadsPerInchOf({}, 8).value(), Rational(8));
  EXPECT_FALSE(threadsPerInchOf({{0, 40}}, 4).ok());
}

TEST(ThreeJaw, CantThrowTooFar) {
  EXPECT_FALSE(threeJawPacking(lengthOf("5/8"), lengthOf("1/2")).ok());
  EXPECT_FALSE(threeJawPacking(Length(), lengthOf("1/2")).ok());
}

/// The same from the jaws: three points at 120° from each other stand equally far out and touch a
/// circle of radius r that the packing has pushed away from its jaw by e.
TEST(ThreeJaw, AgreesWithThreePointsOfContact) {
  for (const double e : {.05, .1, .25, .4}) {
    const double r = .5;
    // In a direction at angle a to the packed jaw the work reaches to
    // −e cos a + √(r² − e² sin² a).
    const auto reach = [&](double degrees) {
      const double a = degrees * std::acos(-1.0) / 180;
      return -e * std::cos(a) + std::sqrt(r * r - e * e * std::sin(a) * std::sin(a));
    };
    const double packing = reach(120) - reach(0);
    const auto ours =
        threeJawPacking(Length::ticks(std::llround(e * Length::kTicksPerInch)), lengthOf("1/2"));
    EXPECT_NEAR(ours->toInches(), packing, 1e-9) << e;
  }
}

// One tick, or one tooth, is enough; none is not.
TEST(LatheFormulas, TheLeastThatIsTaken) {
  const Length inch = Length::ticks(Length::kTicksPerInch), tick = Length::ticks(1), none;
  EXPECT_TRUE(tailstockSetOver(inch, none, tick, inch).ok());
  EXPECT_TRUE(tailstockSetOver(inch, none, inch, tick).ok());
  EXPECT_FALSE(tailstockSetOver(inch, none, none, inch).ok());
  EXPECT_FALSE(tailstockSetOver(inch, none, inch, none).ok());
  const auto threads = [](int driver, int driven) {
    return threadsPerInchOf({{driver, driven}}, Rational(8));
  };
  EXPECT_EQ(*threads(1, 1), Rational(8));
  EXPECT_EQ(*threads(1, 3), Rational(24));
  for (const auto& [driver, driven] : {std::pair{0, 1}, {1, 0}, {-1, 1}, {1, -1}}) {
    EXPECT_FALSE(threads(driver, driven).ok()) << driver << " " << driven;
  }
  EXPECT_TRUE(threeJawPacking(tick, inch).ok());
  EXPECT_TRUE(threeJawPacking(tick, tick).ok());
  EXPECT_FALSE(threeJawPacking(none, inch).ok());
  EXPECT_FALSE(threeJawPacking(tick, none).ok());
  // 2 r over the root of 3 is the most: 1.1547 in of a radius of 1 in.
  EXPECT_TRUE(threeJawPacking(Length::ticks(2'932'938'000), inch).ok());
  EXPECT_FALSE(threeJawPacking(Length::ticks(2'932'940'000), inch).ok());
}

}  // namespace
}  // namespace inchwright
