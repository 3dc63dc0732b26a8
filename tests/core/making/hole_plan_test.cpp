#include "core/making/hole_plan.h"

#include <gtest/gtest.h>

#include "core/shop/drill_work.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

TEST(HolePlan, DrillsAHoleOfADrillsSize) {
  const HolePlan made = plan(hole("3/16", Make::drill));
  EXPECT_EQ(toolsOf(made), "spot, 3/16, deburr");
  const HoleStep& drill = *stepsOf(made, Op::drill).at(0);
  EXPECT_EQ(drill.rule, Rule::drillOfSize);
  EXPECT_EQ(drill.size, size("3/16"));
  // Through an inch: point and 1/32 beyond.
  EXPECT_EQ(drill.pointDepth->ticks(),
            (size("1 1/32").ticks() + pointLength(size("3/16")).ticks()));
  EXPECT_EQ(drill.fullDepth, size("1 1/32"));
  EXPECT_TRUE(made.lacking.empty());
}

TEST(HolePlan, DrillsABlindHoleToItsFullDiameter) {
  const HolePlan made = plan(blind(hole("1/4", Make::drill), "1/2"));
  const HoleStep& drill = *stepsOf(made, Op::drill).at(0);
  EXPECT_EQ(drill.fullDepth, size("1/2"));
  EXPECT_NEAR(drill.pointDepth->toInches(), 0.5751, 0.00005);  // and D/2 · cot 59°
}

TEST(HolePlan, CountsDepthsFromTheFaceAsItIsNow) {
  HoleWork work = blind(hole("1/4", Make::drill), "1/2");
  work.onFace = size("1/16");
  EXPECT_EQ(stepsOf(plan(work), Op::drill).at(0)->fullDepth, size("9/16"));
  work.throughNow.reset();
  work.drilled.depth = {};
  EXPECT_FALSE(stepsOf(plan(work), Op::drill).at(0)->fullDepth) << "nobody said how thick it is";
}

TEST(HolePlan, GoesUpToALargeHoleInSteps) {
  const HolePlan made = plan(hole("7/8", Make::drill));
  EXPECT_EQ(toolsOf(made), "spot, L, 37/64, 7/8, deburr");
  EXPECT_EQ(made.steps[1].op, Op::pilot);
  EXPECT_EQ(toolsOf(plan(hole("1/2", Make::drill))), "spot, 1/2, deburr");
  const HolePlan deep = plan(blind(hole("7/8", Make::drill), "1/2"));
  for (const HoleStep& step : deep.steps) {
    if (step.pointDepth) {
      EXPECT_LE(*step.pointDepth, *deep.steps[3].pointDepth);
    }
  }
}

TEST(HolePlan, TakesTheNearestDrillThatADrilledHoleMayHave) {
  const Shop metric = drillsOwned({"metric 1 to 13 by 0.1"});
  const HolePlan made = plan(hole("1/4", Make::drill), metric);
  EXPECT_EQ(toolsOf(made), "spot, 6.4 mm, deburr");  // 6.3 is .002 under, .001 is allowed
  EXPECT_EQ(stepsOf(made, Op::drill).at(0)->rule, Rule::drillNearSize);
}

TEST(HolePlan, NamesTheNearestWhereNoDrillWillDo) {
  const HolePlan made = plan(hole("1/4", Make::drill), drillsOwned({"15/64", "17/64", "1/2"}));
  EXPECT_EQ(toolsOf(made), "spot, deburr");
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].why, Lacking::Why::noDrillOfSize);
  ASSERT_EQ(made.lacking[0].near.size(), 2u);
  EXPECT_EQ(made.lacking[0].near[0].name, "15/64");
  EXPECT_EQ(made.lacking[0].near[0].differs, size("-1/64"));
  EXPECT_EQ(made.lacking[0].near[1].name, "17/64");
  // Limits on the hole are kept to, whatever custom allows.
  HoleWork close = hole("1/4", Make::drill);
  close.drilled.limits = "0.2500/0.2510";
  EXPECT_FALSE(plan(close, drillsOwned({"6.4 mm"})).lacking.empty());
  EXPECT_TRUE(plan(close, drillsOwned({"1/4"})).lacking.empty());
}

TEST(HolePlan, LeavesTheReamerWhatItsRuleSays) {
  struct Case {
    const char* hole;
    const char* drill;
    Shop shop;
  };
  Shop hand;
  hand.reamers = {reamer("1/4", ReamedBy::hand)};
  for (const Case& one : {Case{"1/4", "C", {}},  // .242 leaves .008; D .246 only .004
                          {"1/4", "15/64", drillsOwned({"fractional"})},
                          {"1/4", "B", drillsOwned({"letter A to B"})},
                          {"1/4", "6.1 mm", drillsOwned({"metric 1 to 10 by 0.1"})},
                          {"6 mm", "5.8 mm", {}},
                          {"1/4", "D", hand}}) {
    SCOPED_TRACE(one.drill);
    const HolePlan made = plan(hole(one.hole, Make::ream), one.shop);
    const HoleStep& drill = *stepsOf(made, Op::drill).at(0);
    EXPECT_EQ(drill.tool, one.drill);
    const HoleStep& ream = *stepsOf(made, Op::ream).at(0);
    EXPECT_EQ(ream.size, size(one.hole));
    EXPECT_EQ(ream.struckOut, one.hole);
    EXPECT_TRUE(made.lacking.empty());
  }
}

TEST(HolePlan, NeverDrillsToTheReamersSize) {
  for (const Shop& shop :
       {drillsOwned({"1/4"}), drillsOwned({"1/4", "1/8"}), drillsOwned({"number"})}) {
    const HolePlan made = plan(hole("1/4", Make::ream), shop);
    EXPECT_TRUE(stepsOf(made, Op::drill).empty());
    ASSERT_EQ(made.lacking.size(), 1u);
    EXPECT_EQ(made.lacking[0].why, Lacking::Why::noneLeavesEnough);
  }
}

TEST(HolePlan, SaysWhatToBuyOrBoreWithoutReamers) {
  Shop shop;
  shop.reamers.emplace();
  const HolePlan made = plan(hole("1/2", Make::ream), shop);
  EXPECT_EQ(toolsOf(made), "spot, deburr");
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].why, Lacking::Why::noReamer);
  EXPECT_TRUE(made.lacking[0].barWouldDo);
  shop.reamers = {reamer("3/8"), reamer("17/32"), reamer("7/16")};
  EXPECT_EQ(plan(hole("1/2", Make::ream), shop).lacking[0].near[0].name, "17/32");
  EXPECT_FALSE(plan(hole("1/8", Make::ream), shop).lacking[0].barWouldDo);
}

TEST(HolePlan, BoresAReamedHoleIntoACloselyLetteredPlace) {
  HoleWork work = hole("1/2", Make::ream);
  work.closePlace = true;
  Shop shop;
  shop.boring = {boringHead("3/8", "3", DialCounts::slide, "0.0005")};
  const HolePlan made = plan(work, shop);
  const auto bores = stepsOf(made, Op::bore);
  ASSERT_FALSE(bores.empty());
  EXPECT_GE(size("1/2").ticks() - bores.back()->size->ticks(), size(".005").ticks());
  EXPECT_LE(size("1/2").ticks() - bores.back()->size->ticks(), size(".010").ticks());
  EXPECT_LE(stepsOf(made, Op::drill).back()->size->ticks(), size("15/32").ticks());
  EXPECT_EQ(bores.back()->rule, Rule::boreBeforeReamer);
  EXPECT_EQ(made.notes, std::vector{HoleNote::reamerDoesNotMove});
  // Bored because no drill leaves enough: nothing is said of its place.
  work.closePlace = false;
  Shop oneDrill = drillsOwned({"1/4"});
  oneDrill.boring = {boringHead("1/8", "3", DialCounts::slide, "0.0005")};
  const HolePlan opened = plan(work, oneDrill);
  EXPECT_FALSE(stepsOf(opened, Op::bore).empty());
  EXPECT_TRUE(opened.notes.empty());
  work.closePlace = true;
  // Too small for the bar: said, and drilled as ever.
  work.drilled.diameter = figure("1/4");
  const HolePlan small = plan(work, shop);
  EXPECT_TRUE(stepsOf(small, Op::bore).empty());
  EXPECT_EQ(small.notes, std::vector{HoleNote::barTooSmall});
  EXPECT_EQ(toolsOf(small), "spot, C, ream 1/4, deburr");
}

TEST(HolePlan, DrillsBlindReamedHolesDeeper) {
  const HolePlan made = plan(blind(hole("1/4", Make::ream), "1/2"));
  const HoleStep& drill = *stepsOf(made, Op::drill).at(0);
  const HoleStep& ream = *stepsOf(made, Op::ream).at(0);
  EXPECT_EQ(ream.fullDepth, size("1/2"));
  EXPECT_EQ(ream.pointDepth, size("17/32"));
  EXPECT_GT(*drill.fullDepth, *ream.pointDepth);
  // Short of the far side, as far as the reamer's lead lets it.
  HoleWork thin = blind(hole("1/4", Make::ream), "1/2");
  thin.throughFinished = thin.throughNow = size("5/8");
  const HolePlan shorter = plan(thin);
  EXPECT_LT(*stepsOf(shorter, Op::drill).at(0)->fullDepth, *drill.fullDepth);
  EXPECT_GE(*stepsOf(shorter, Op::drill).at(0)->fullDepth, size("17/32"));
  EXPECT_EQ(shorter.notes, std::vector{HoleNote::shortOfFar});
}

TEST(HolePlan, TakesTheTablesOwnDrillBeforeATap) {
  struct Case {
    const char* thread;
    const char* drill;
    const char* struckOut;
  };
  for (const Case& one : {Case{"1/4-20 UNC", "#7", "1/4"},
                          {"2 BA", "4 mm", "4.7 mm"},
                          {"M6", "5 mm", "6 mm"},
                          {"3/8-40 ME", "11/32", "3/8"},  // 98 %: the table's own all the same
                          {"1/4 BSW", "5.1 mm", "1/4"}}) {
    SCOPED_TRACE(one.thread);
    const HolePlan made = plan(hole("", Make::tap, one.thread));
    EXPECT_EQ(stepsOf(made, Op::drill).at(0)->tool, one.drill);
    EXPECT_EQ(stepsOf(made, Op::drill).at(0)->rule, Rule::tableTapDrill);
    EXPECT_TRUE(stepsOf(made, Op::drill).at(0)->percent);
    EXPECT_EQ(stepsOf(made, Op::tap).at(0)->struckOut, one.struckOut);
  }
}

TEST(HolePlan, TakesTheNearestPercentElse) {
  // 1/4-20: #7 75 %; without it 13/64 72 %, in tenths of a millimetre 5.2 mm 70 %.
  const HolePlan fractions = plan(hole("", Make::tap, "1/4-20 UNC"), drillsOwned({"fractional"}));
  EXPECT_EQ(stepsOf(fractions, Op::drill).at(0)->tool, "13/64");
  EXPECT_EQ(stepsOf(fractions, Op::drill).at(0)->percent, 7217);
  EXPECT_EQ(stepsOf(fractions, Op::drill).at(0)->rule, Rule::nearestPercent);
  const HolePlan metric =
      plan(hole("", Make::tap, "1/4-20 UNC"), drillsOwned({"metric 1 to 10 by 0.1"}));
  EXPECT_EQ(stepsOf(metric, Op::drill).at(0)->tool, "5.2 mm");
}

TEST(HolePlan, PutsNoDrillBeforeATapThatNoneSuits) {
  const HolePlan made =
      plan(hole("", Make::tap, "1/4-20 UNC"), drillsOwned({"3/16", "7/32", "1/4"}));
  EXPECT_EQ(toolsOf(made), "spot, tap 1/4-20 UNC, deburr");
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].why, Lacking::Why::noneWithinPercent);
  ASSERT_EQ(made.lacking[0].near.size(), 2u);
  EXPECT_EQ(made.lacking[0].near[0].name, "3/16");
  EXPECT_EQ(made.lacking[0].near[0].percent, 9623);
  EXPECT_EQ(made.lacking[0].near[1].percent, 4811);
}

TEST(HolePlan, NamesTheNearestThreadsAndPlansNothingWithThem) {
  Shop shop;
  shop.taps.emplace();
  for (const char* thread : {"1/4-28 UNF", "M6", "2 BA", "1/4 BSW", "1/4 BSW"}) {
    shop.taps->push_back({thread, TapLead::second, std::nullopt, {}});
  }
  const HolePlan made = plan(hole("", Make::tap, "1/4-20 UNC"), shop);
  EXPECT_EQ(toolsOf(made), "spot, deburr");
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].why, Lacking::Why::noTap);
  ASSERT_EQ(made.lacking[0].near.size(), 3u);
  EXPECT_EQ(made.lacking[0].near[0].name, "1/4-28 UNF");
  EXPECT_EQ(made.lacking[0].near[1].name, "1/4-20 BSW");
  EXPECT_EQ(made.lacking[0].near[2].name, "M6");
  const HolePlan odd = plan(hole("", Make::tap, "M9"));
  EXPECT_EQ(odd.lacking[0].why, Lacking::Why::noSuchThread);
  EXPECT_FALSE(odd.lacking[0].near.empty());
  EXPECT_EQ(plan(hole("", Make::tap)).lacking[0].why, Lacking::Why::noThread);
}

TEST(HolePlan, DrillsBlindTappedHolesDeeperByLeadAndChips) {
  const HolePlan made = plan(blind(hole("", Make::tap, "1/4-20 UNC"), "3/8"));
  EXPECT_EQ(stepsOf(made, Op::tap).at(0)->fullDepth, size("3/8"));
  EXPECT_EQ(stepsOf(made, Op::tap).at(0)->pointDepth, size("5/8"));    // five threads of lead
  EXPECT_EQ(stepsOf(made, Op::drill).at(0)->fullDepth, size(".675"));  // and one for chips
  // A bottoming tap where the second would go through.
  HoleWork thin = blind(hole("", Make::tap, "1/4-20 UNC"), "3/8");
  thin.throughNow = thin.throughFinished = size("5/8");
  EXPECT_EQ(stepsOf(plan(thin), Op::tap).at(0)->pointDepth, size(".475"));
}

TEST(HolePlan, SeatsComeBehindTheDrillAndBeforeTheReamer) {
  HoleWork work = hole("17/64", Make::counterbore);
  work.drilled.seatDiameter = figure("7/16");
  work.drilled.seatDepth = figure("1/4");
  EXPECT_EQ(toolsOf(plan(work)), "spot, 17/64, counterbore 7/16, deburr");
  work.drilled.make = Make::spotface;
  EXPECT_EQ(toolsOf(plan(work)), "spotface 7/16, spot, 17/64, deburr");
  work.drilled.make = Make::countersink;
  EXPECT_EQ(toolsOf(plan(work)), "spot, 17/64, countersink 7/16, deburr");
  work.drilled = {};
  work.drilled.diameter = figure("1/4");
  work.drilled.make = Make::ream;
  work.drilled.seatDiameter = figure("7/16");
  work.drilled.seatDepth = figure("1/8");
  EXPECT_EQ(toolsOf(plan(work)), "spot, C, counterbore 7/16, ream 1/4, deburr");
  Shop shop;
  shop.counterbores.emplace();
  shop.cutters.emplace();
  EXPECT_EQ(plan(work, shop).lacking[0].why, Lacking::Why::noSeatTool);
  shop.cutters = {OwnedCutter{figure("7/16"), 4, std::nullopt, std::nullopt, std::nullopt, {}}};
  EXPECT_EQ(toolsOf(plan(work, shop)), "spot, C, end mill 7/16, ream 1/4, deburr");
}

TEST(HolePlan, SuitsWaitForWhatIsMeasured) {
  HoleWork work = hole("1/4", Make::ream);
  work.drilled.locate = Locate::suit;
  const HolePlan made = plan(work);
  EXPECT_EQ(toolsOf(made), "spot, 7/32, to suit, deburr");
  EXPECT_FALSE(stepsOf(made, Op::ream).at(0)->size);
  EXPECT_EQ(made.notes, std::vector{HoleNote::waitsToSuit});
}

TEST(HolePlan, LimitsChooseReamerAndPins) {
  HoleWork work = hole("1/4", Make::ream);
  work.drilled.limits = "H7";
  const HolePlan made = plan(work);
  ASSERT_TRUE(made.limits && made.pins);
  EXPECT_EQ(made.limits->least, size("1/4"));
  EXPECT_EQ(made.limits->greatest.ticks() - size("1/4").ticks(), 1'500'000);  // 15 µm
  EXPECT_EQ(made.pins->go, size("1/4"));
  EXPECT_FALSE(made.pins->owned);
  work.drilled.limits = "0.2490/0.2493";
  EXPECT_EQ(plan(work).lacking[0].why, Lacking::Why::reamerBeyondLimits);
  Shop shop;
  shop.reamers = {reamer("1/4"), reamer("0.2492")};
  EXPECT_EQ(stepsOf(plan(work, shop), Op::ream).at(0)->tool, "ream 0.2492");
  work.drilled.limits = "RC4";
  EXPECT_EQ(plan(work).limits->greatest, size(".2509"));
}

TEST(HolePlan, PinsOfTheShopShowThatTheHoleIsWithin) {
  HoleWork work = hole("1/4", Make::ream);
  work.drilled.limits = "0.2495/0.2525";
  Shop shop;
  OwnedPins pins;
  pins.sizes = *pinSizesIn("0.2400 to 0.2600");
  shop.pins = {pins};  // ZZ minus: .0002 under
  const HolePlan made = plan(work, shop);
  ASSERT_TRUE(made.pins);
  EXPECT_TRUE(made.pins->owned);
  EXPECT_EQ(made.pins->go, size(".250"));    // at least .2498, so no smaller than the least
  EXPECT_EQ(made.pins->noGo, size(".252"));  // at most .252
}

TEST(HolePlan, LimitsByNameOrFiguresOrNot) {
  Drilled drilled;
  drilled.diameter = figure("1/4");
  EXPECT_FALSE(limitsOfHole(drilled, Unit::inch)->has_value());
  drilled.limits = ".2500/.2506";
  EXPECT_EQ((*limitsOfHole(drilled, Unit::inch))->greatest, size(".2506"));
  for (const char* bad : {"Q9", "1/4", "H99", "hello", "?"}) {
    drilled.limits = bad;
    EXPECT_FALSE(limitsOfHole(drilled, Unit::inch).ok()) << bad;
  }
  drilled.limits.clear();
  drilled.diameter = figure("1/4 +.001 -.000");
  EXPECT_EQ((*limitsOfHole(drilled, Unit::inch))->greatest, size(".251"));
  drilled.diameter.reset();
  drilled.limits = "H7";
  EXPECT_FALSE(limitsOfHole(drilled, Unit::inch).ok());
}

TEST(HolePlan, SpeedsAreAGuideTheMachineHas) {
  HoleWork work = hole("1/4", Make::ream);
  work.material = "brass";
  const HolePlan guide = plan(work);
  EXPECT_EQ(stepsOf(guide, Op::drill).at(0)->speed, 3157);  // 12·200/(π·.242)
  EXPECT_EQ(stepsOf(guide, Op::ream).at(0)->speed, 1528);   // half of 3056
  EXPECT_FALSE(stepsOf(guide, Op::drill).at(0)->ownSpeed);
  const HolePlan machine = planHole(work, ToolsOwned(Shop{}), {180, 1400, 2800});
  EXPECT_EQ(stepsOf(machine, Op::drill).at(0)->speed, 2800);
  EXPECT_EQ(stepsOf(machine, Op::ream).at(0)->speed, 1400);
  EXPECT_TRUE(stepsOf(machine, Op::drill).at(0)->ownSpeed);
  work.material = "";
  EXPECT_FALSE(stepsOf(plan(work), Op::drill).at(0)->speed);
}

}  // namespace
}  // namespace inchwright::test
