#include "core/making/bushing.h"

#include <gtest/gtest.h>

#include <random>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

Length inches(std::string_view text) {
  return readLength(text).value().value;
}

WrongHole wrong(const char* nominal, const char* found, const char* x, const char* y) {
  WrongHole hole;
  hole.nominal = inches(nominal);
  hole.wanted = {hole.nominal, hole.nominal};
  hole.found = inches(found);
  hole.offX = inches(x);
  hole.offY = inches(y);
  return hole;
}

TEST(Bushing, OnTheWantedCentreTakesInTheWholeHole) {
  // .266 + 2 × .005 = .276; 1/4 and two walls of 1/32 ask for 5/16.
  const auto bush = bushOnWantedCentre(wrong("1/4", ".266", ".003", "-.004"));
  ASSERT_TRUE(bush.ok()) << bush.error().text;
  EXPECT_EQ(bush->bore, inches("5/16"));
  EXPECT_EQ(bush->press, "LN2");
  EXPECT_EQ(bush->inside, inches("1/4"));
  EXPECT_EQ(bush->throwBy, Length());
  // Far off: .28 + 2 × .05 = .38, the next 64th is 25/64.
  EXPECT_EQ(bushOnWantedCentre(wrong("1/4", ".28", ".03", ".04"))->bore, inches("25/64"));
}

// Machinery's Handbook 31, p. 660: LN2 over .24 to .40 in: hole +.6 −0, shaft +1.0 +.6 thou (as in
// the table of B4.1 fits).
TEST(Bushing, IsPressedByThePublishedFit) {
  const auto bush = bushOnWantedCentre(wrong("1/4", ".266", "0", "0"));
  EXPECT_EQ(bush->boreLimits, (SizeLimits{inches(".3125"), inches(".3131")}));
  EXPECT_EQ(bush->outsideLimits, (SizeLimits{inches(".3131"), inches(".3135")}));
  EXPECT_EQ(bush->outside, inches(".3133"));
  EXPECT_EQ(bush->wall, inches(".03165"));
}

TEST(Bushing, EccentricThrowsByWhatTheHoleIsOff) {
  const auto bush = eccentricBush(wrong("1/4", ".251", ".006", ".008"));
  ASSERT_TRUE(bush.ok());
  EXPECT_EQ(bush->throwBy, inches(".010"));
  // 1/4 + 2 (1/32 + .010) = .3325: 11/32.
  EXPECT_EQ(bush->bore, inches("11/32"));
  EXPECT_EQ(bush->wall.ticks(),
            (bush->outside.ticks() - inches("1/4").ticks()) / 2 - inches(".010").ticks());
}

TEST(Bushing, PlugSaysWhereTheJointIsCut) {
  const auto over = plugFor(wrong("1/4", ".2505", "0", "0"));
  ASSERT_TRUE(over.ok());
  EXPECT_EQ(over->bore, inches("17/64"));
  EXPECT_FALSE(over->cutsJoint);
  EXPECT_TRUE(plugFor(wrong("1/4", ".251", ".012", "0"))->cutsJoint);
  // A plug of .266425 (LN2 as above: +.6 to +1.0 thou over .265625) reaches to .1332125, the hole
  // to .125 and what it is off.
  EXPECT_FALSE(plugFor(wrong("1/4", ".251", "0", "-.0082"))->cutsJoint);
  EXPECT_TRUE(plugFor(wrong("1/4", ".251", "0", "-.0083"))->cutsJoint);
  EXPECT_EQ(plugFor(wrong("1/4", ".265625", "0", "0"))->bore, inches("17/64")) << "round as it is";
  EXPECT_EQ(plugFor(wrong("1/4", ".265626", "0", "0"))->bore, inches("9/32"));
}

TEST(Bushing, WallsAreAThirtySecondOrEightTenthsOfAMillimetre) {
  EXPECT_EQ(leastBushWall(Unit::inch), inches("1/32"));
  EXPECT_EQ(leastBushWall(Unit::millimetre), inches("0.8 mm"));
}

TEST(Bushing, MetricTakesHalfMillimetresAndIso) {
  WrongHole hole = wrong("6 mm", "6.2 mm", "0.1 mm", "0");
  hole.unit = Unit::millimetre;
  const auto bush = bushOnWantedCentre(hole);
  ASSERT_TRUE(bush.ok()) << bush.error().text;
  EXPECT_EQ(bush->bore, inches("8 mm"));
  EXPECT_EQ(bush->press, "H7/p6");
}

TEST(Bushing, RefusesWhatNoTableReaches) {
  EXPECT_FALSE(bushOnWantedCentre(wrong("1", "900", "0", "0")).ok());
}

// Seeded: whatever came out, the bore takes in the found hole, and the walls are what is said.
TEST(Bushing, HoldsForRandomHoles) {
  std::mt19937 random(20261129);
  for (int i = 0; i < 500; ++i) {
    const auto below = [&](unsigned bound) { return static_cast<std::int64_t>(random() % bound); };
    WrongHole hole;
    hole.nominal = Length::ticks((4 + below(40)) * Length::kTicksPerInch / 64);
    hole.wanted = {hole.nominal, hole.nominal};
    hole.found = *hole.nominal.plus(Length::ticks(below(60'000'000)));
    hole.offX = Length::ticks(below(40'000'000) - 20'000'000);
    hole.offY = Length::ticks(below(40'000'000) - 20'000'000);
    const auto bush = bushOnWantedCentre(hole);
    ASSERT_TRUE(bush.ok());
    EXPECT_GE(bush->bore.ticks(), hole.found.ticks() + 2 * hole.off().ticks());
    EXPECT_GE(bush->wall, leastBushWall(Unit::inch));
    EXPECT_GE(bush->outsideLimits.least, bush->boreLimits.greatest);
    const auto eccentric = eccentricBush(hole);
    ASSERT_TRUE(eccentric.ok());
    EXPECT_GE(eccentric->bore, hole.found);
    EXPECT_GE(eccentric->wall, leastBushWall(Unit::inch));
    EXPECT_EQ(eccentric->throwBy, hole.off());
  }
}

}  // namespace
}  // namespace inchwright
