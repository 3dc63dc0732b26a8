// Published cases and customs of making: drills, threads, bores, pins, speeds.

#include <gtest/gtest.h>

#include "core/making/boring_cuts.h"
#include "core/making/found_size.h"
#include "core/making/hole_plan.h"
#include "core/plan/table.h"
#include "core/say/plan_words.h"
#include "core/shop/cutting_speeds.h"
#include "core/shop/drill_work.h"
#include "core/shop/gauge_pins.h"
#include "tests/core/checks/held_plate.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

// Custom of the trade, no source: a hole to be reamed is drilled undersize, about 1/64 in up to 1/2
// in, never at the reamer's own size.
TEST(MakingCases, ReamedHolesAreDrilledUnder) {
  for (const char* text : {"1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2"}) {
    for (const Shop& shop : {Shop{}, drillsOwned({"fractional"})}) {
      const HolePlan made = plan(hole(text, Make::ream), shop);
      const auto drills = stepsOf(made, Op::drill);
      ASSERT_FALSE(drills.empty()) << text;
      const std::int64_t left = size(text).ticks() - drills.back()->size->ticks();
      EXPECT_GE(left, size(".006").ticks()) << text;
      EXPECT_LE(left, size(".018").ticks()) << text;
      if (shop.drills) {
        EXPECT_EQ(left, size("1/64").ticks()) << text;
      }
    }
  }
}

// Custom, no source: a boring cut dialled 0.010 on the slide opens the bore 0.020; the last halve
// what is left.
TEST(MakingCases, ABoringCutOpensTwiceItsDial) {
  const auto cuts = boringCuts({size("1"), size("1.020"), {}, {}}, size(".001"), DialCounts::slide);
  Length dialled;
  for (const BoreCut& cut : cuts) dialled = *dialled.plus(cut.dial);
  EXPECT_EQ(dialled, size(".010"));
  ASSERT_GE(cuts.size(), 2u);
  EXPECT_LE((cuts[cuts.size() - 2].dial.ticks() - cuts.back().dial.ticks()), size(".001").ticks());
}

// Custom, no source: a drilled hole comes out at its drill's size or a little over. A gauge pin
// that enters gives the least size, one that does not the greatest. A minus pin .2500 of class ZZ
// measures .2498 to .2500 (gaugemakers' practice).
TEST(MakingCases, DrillsCutOverAndPinsAreWithinTheirClass) {
  for (const Drill& drill : drills()) EXPECT_GT(drillOversize(drill.diameter).mean, Length());
  EXPECT_EQ(*gaugePinTolerance("ZZ", size(".2500")), size(".0002"));
}

// The same, both ways round: all that a pin says of a hole. A go end that enters: at least the
// pin's own least; a not-go end that does not: under its greatest. (TM 9-243 p. 15-4, as copied,
// says that the not-go plug controls the least size of a hole: it is the greatest.)
TEST(MakingCases, AGoPinGivesTheLeastAndANotGoPinTheGreatest) {
  MadePlace made;
  made.go = TriedPin{*readLength(".2500"), "ZZ", PinSign::minus, {}};
  made.noGo = TriedPin{*readLength(".2510"), "ZZ", PinSign::plus, {}};
  const auto found = foundSize(made, {});
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->least, size(".2498"));
  EXPECT_EQ(found->greatest, size(".2512"));
  made.noGo.reset();
  EXPECT_FALSE(foundSize(made, {})->greatest.has_value());
}

// Custom, no source: a drill through thin work on parallels must clear them; parallels stand
// against the jaws. Halving a side-to-side count finds the middle.
TEST(MakingCases, ADrillThroughThinWorkClearsTheParallels) {
  HeldPlate held("4", "2", "1/8");
  held.hole("A", "2", "1", "1/4");
  held.setup.jaw = Side::front;
  held.parallel(Jaw::fixed, "1/8", "1", "0");
  held.parallel(Jaw::moving, "1/8", "1", "0");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.held.parallels->front().gap = lettered("7/8");
  EXPECT_EQ(linesOf(held.findings()).size(), 1u);
  // The middle of 4 in and 1/16 more at its left: 1/32 from the part's own.
  ZeroAlong middle;
  middle.middle = {"L", "R"};
  middle.ofStock = true;
  held.setup.zero = {middle};
  held.setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/16");
  const Solution solution = solved(held.part);
  const auto work = workAt(held.job, held.part, solution, held.setup);
  ASSERT_TRUE(work.ok());
  const auto table = tableOf(*work);
  ASSERT_TRUE(table.ok());
  EXPECT_EQ(table->rows.at(0).x.value, inch("1/32"));
}

// Length of a 118° point: d/2 · cot 59° = 0.30043 d (computed; the handbook's rule is 0.3 d).
TEST(MakingCases, PointsAreThreeTenthsOfTheDiameter) {
  const HolePlan made = plan(blind(hole("1", Make::drill), "2"));
  const HoleStep& last = *stepsOf(made, Op::drill).back();
  EXPECT_NEAR(last.pointDepth->minus(*last.fullDepth)->toInches(), 0.30043, 0.000005);
}

// Ewen & Nelson, Elementary Technical Mathematics, §1.7 p. 42 no. 76: tap drill = outside less one
// pitch; 3/8, 16 threads: 5/16, exactly. Millwrights' note: M14 × 2: 12 mm.
TEST(MakingCases, TapDrillIsTheOutsideLessOnePitch) {
  for (const auto& [thread, drill] : {std::pair{"3/8-16 UNC", "5/16"}, {"M14", "12 mm"}}) {
    const HolePlan made = plan(hole("", Make::tap, thread));
    EXPECT_EQ(stepsOf(made, Op::drill).at(0)->size, size(drill)) << thread;
  }
}

// Machinery's Handbook, 31st ed., p. 2168 Table 4: commercial tap drills 1/4-20 .2010, 1/2-13
// .4219, 1-8 .8750.
TEST(MakingCases, CommercialTapDrills) {
  for (const auto& [thread, drill] :
       {std::pair{"1/4-20 UNC", ".2010"}, {"1/2-13 UNC", "27/64"}, {"1-8 UNC", ".8750"}}) {
    const HolePlan made = plan(hole("", Make::tap, thread));
    EXPECT_EQ(stepsOf(made, Op::drill).back()->size, size(drill)) << thread;
  }
}

// Thread depth (constants from memory, checked): 1/4-20 by the old American form .03248 deep.
TEST(MakingCases, DepthOfThread) {
  const Rational depth = *fullDepthInPitches(ThreadSeries::unc).times(*Rational::of(1, 40));
  EXPECT_NEAR(depth.toDouble(), 0.03248, 0.000005);
}

// College in Colorado, Tool and die maker: 80 ft/min on 1/2 in, rpm = 4 CS/D: 640; 12 CS/(π D):
// 611.
TEST(MakingCases, TurningSpeed) {
  EXPECT_EQ(revolutionsFor(80, size("1/2")), 611);
  // Both pass the question's 600, and as a guide is said.
  HoleStep step;
  step.speed = 611;
  EXPECT_EQ(speedText(step), "610");
}

}  // namespace
}  // namespace inchwright::test
