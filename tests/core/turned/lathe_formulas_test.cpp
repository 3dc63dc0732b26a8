#include "core/turned/lathe_formulas.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

Length inches(std::string_view text) {
  return readLength(text).value().value;
}

// "Turning and Boring Tapers" (Derry-Collard, New York 1902), equivalents of degrees, inch per
// inch. Two figures of the page's text are wrong (4° .07984, 15° .28330) and left out here.
TEST(Taper, GrowsAsTheTableOf1902Says) {
  struct Row {
    double degrees, perInch;
  };
  for (const Row& row :
       {Row{1, .01746}, Row{2, .03490}, Row{3, .05236}, Row{5, .08732}, Row{7.5, .13108},
        Row{10, .17498}, Row{20, .35266}, Row{25, .44338}, Row{30, .53590}, Row{35, .63060},
        Row{40, .72794}, Row{45, .82842}, Row{50, .93262}}) {
    EXPECT_NEAR(taperOfAngle(row.degrees), row.perInch, 2e-5) << row.degrees;
    EXPECT_NEAR(angleOfTaper(taperOfAngle(row.degrees)), row.degrees, 1e-9);
  }
}

// Jones, pages 80 to 83: 1 in per foot on work 9 in long over all, 3/8; 2 1/2 to 2 over 6 in, work
// 9 in: 3/8; 1 1/2 in per foot on 8 in: 1/2. Rose, at Fig. 1217: 1 in per foot on 3 ft: 1 1/2.
TEST(Tailstock, IsSetOverByHalfTheGrowthOverTheWholeWork) {
  const auto over = [](const char* large, const char* small, const char* taper, const char* work) {
    return tailstockSetOver(inches(large), inches(small), inches(taper), inches(work)).value();
  };
  EXPECT_EQ(over("1", "0", "12", "9"), inches("3/8").rational());
  EXPECT_EQ(over("2 1/2", "2", "6", "9"), inches("3/8").rational());
  EXPECT_EQ(over("1 1/2", "0", "12", "8"), inches("1/2").rational());
  EXPECT_EQ(over("1", "0", "12", "36"), inches("1 1/2").rational());
  EXPECT_FALSE(tailstockSetOver(inches("1"), inches("1/2"), Length(), inches("9")).ok());
  EXPECT_FALSE(tailstockSetOver(inches("1"), inches("1/2"), inches("9"), Length()).ok());
}

// Rose, at Fig. 1240: 36/48 × 66/18 × a lead screw of 4 = 11 threads. 1 to the inch to cut 7: 20
// and 140 (Selection of screwing wheels).
TEST(ChangeWheels, CutWhatRoseSays) {
  EXPECT_EQ(threadsPerInchOf({{48, 36}, {18, 66}}, 4).value(), Rational(11));
  EXPECT_EQ(threadsPerInchOf({{20, 140}}, 1).value(), Rational(7));
  EXPECT_EQ(threadsPerInchOf({}, 8).value(), Rational(8));
  EXPECT_FALSE(threadsPerInchOf({{0, 40}}, 4).ok());
}

// Throw in a three-jaw chuck (from memory, derived again from three points of contact): e 1/4 on
// r 1/2: .32569; the rule of thumb 1.5 e would give .375.
TEST(ThreeJaw, PackingThrowsTheWork) {
  EXPECT_NEAR(threeJawPacking(inches("1/4"), inches("1/2"))->toInches(), .32569, 5e-6);
  EXPECT_FALSE(threeJawPacking(inches("5/8"), inches("1/2")).ok());
  EXPECT_FALSE(threeJawPacking(Length(), inches("1/2")).ok());
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
        threeJawPacking(Length::ticks(std::llround(e * Length::kTicksPerInch)), inches("1/2"));
    EXPECT_NEAR(ours->toInches(), packing, 1e-9) << e;
  }
}

}  // namespace
}  // namespace inchwright
