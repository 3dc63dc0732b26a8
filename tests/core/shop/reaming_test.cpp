#include "core/shop/reaming.h"

#include <gtest/gtest.h>

#include "core/shop/edge_finders.h"

namespace inchwright {
namespace {

constexpr std::int64_t kSixtyFourth = 39'687'500;

const DrillSets kInch = DrillSets::customaryFor(Unit::inch);
const DrillSets kMetric = DrillSets::customaryFor(Unit::millimetre);

Length sixtyFourths(int n) {
  return Length::ticks(n * kSixtyFourth);
}
Length hundredths(int n) {
  return Length::ticks(n * 1'000'000LL);
}

// Common practice, no source: about 1/64 under up to 1/2 in, never the reamer's own size.
TEST(DrillUnderReamer, IsOneSixtyFourthUnder) {
  for (int n = 8; n <= 64; ++n) {
    const auto under = drillUnderReamer(sixtyFourths(n), Unit::inch, kInch);
    ASSERT_TRUE(under) << n;
    EXPECT_EQ(under->drill.diameter, sixtyFourths(n - 1)) << n;
    EXPECT_EQ(under->left, sixtyFourths(1)) << n;
    EXPECT_EQ(under->drill.series, DrillSeries::fraction) << n;
    EXPECT_FALSE(under->rule.empty());
  }
  EXPECT_EQ(drillUnderReamer(sixtyFourths(16), Unit::inch, kInch)->drill.name, "15/64");
}

TEST(DrillUnderReamer, LeavesSmallReamersLess) {
  const auto sixteenth = drillUnderReamer(sixtyFourths(4), Unit::inch, kInch);
  ASSERT_TRUE(sixteenth);
  EXPECT_EQ(sixteenth->drill.name, "#54");  // 0.055: leaves 0.0075
  const auto threeThirtySeconds = drillUnderReamer(sixtyFourths(6), Unit::inch, kInch);
  ASSERT_TRUE(threeThirtySeconds);
  EXPECT_EQ(threeThirtySeconds->drill.name, "#44");  // 0.086; #43, 0.089, would leave 0.00475
}

// An apprentice course: 0.1 to 0.2 mm up to 5 mm, 0.2 to 0.3 up to 20.
TEST(DrillUnderReamer, KeepsMetricCustom) {
  EXPECT_EQ(drillUnderReamer(hundredths(300), Unit::millimetre, kMetric)->drill.name, "2.9 mm");
  EXPECT_EQ(drillUnderReamer(hundredths(500), Unit::millimetre, kMetric)->drill.name, "4.9 mm");
  EXPECT_EQ(drillUnderReamer(hundredths(600), Unit::millimetre, kMetric)->drill.name, "5.8 mm");
  EXPECT_EQ(drillUnderReamer(hundredths(800), Unit::millimetre, kMetric)->drill.name, "7.8 mm");
  EXPECT_EQ(drillUnderReamer(hundredths(1000), Unit::millimetre, kMetric)->drill.name, "9.8 mm");
}

TEST(DrillUnderReamer, IsNeverTheReamersOwnSizeNorFarBelow) {
  for (std::int64_t size = kSixtyFourth; size < 64 * kSixtyFourth; size += 1'270'000) {
    for (const Unit unit : {Unit::inch, Unit::millimetre}) {
      const auto under = drillUnderReamer(Length::ticks(size), unit, DrillSets::customaryFor(unit));
      if (!under) continue;
      EXPECT_LT(under->drill.diameter.ticks(), size);
      EXPECT_EQ(under->left.ticks(), size - under->drill.diameter.ticks());
      EXPECT_LE(under->left, sixtyFourths(2));
    }
  }
}

TEST(DrillUnderReamer, SaysWhenNoDrillSuits) {
  EXPECT_FALSE(drillUnderReamer(sixtyFourths(80), Unit::inch, kInch));
  EXPECT_FALSE(drillUnderReamer(Length(), Unit::inch, kInch));
  EXPECT_FALSE(drillUnderReamer(hundredths(-300), Unit::millimetre, kMetric));
  EXPECT_FALSE(drillUnderReamer(sixtyFourths(16), Unit::inch, {false, false, false, false}));
}

TEST(DrillUnderBore, LeavesAThirtySecondOrMore) {
  EXPECT_EQ(drillUnderBore(sixtyFourths(48), kInch)->drill.name, "23/32");
  EXPECT_EQ(drillUnderBore(sixtyFourths(160), kInch)->drill.name, "1");
  EXPECT_FALSE(drillUnderBore(sixtyFourths(2), kInch));
}

TEST(EdgeFinders, HaveACustomaryTipForEachUnit) {
  EXPECT_EQ(customaryFinder(Unit::inch).contact.ticks(), 508'000'000);
  EXPECT_EQ(customaryFinder(Unit::millimetre).contact.ticks(), 1'000'000'000);
  for (const EdgeFinder& finder : edgeFinders()) {
    EXPECT_GE(finder.contact, Length());
    EXPECT_FALSE(finder.source.empty()) << finder.name;
  }
}

}  // namespace
}  // namespace inchwright
