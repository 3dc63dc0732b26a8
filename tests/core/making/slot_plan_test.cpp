#include "core/making/slot_plan.h"

#include <gtest/gtest.h>

#include "core/shop/drill_work.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

SlotWork slot(const char* width, const char* depth) {
  SlotWork work;
  work.width = size(width);
  work.depth = size(depth);
  return work;
}

TEST(SlotPlan, GoesDownInPassesOfHalfTheCutter) {
  const auto made = planSlot(slot("1/4", "3/8"), ToolsOwned(Shop{}));
  ASSERT_TRUE(made);
  EXPECT_EQ(made->tool, "end mill 1/4");
  EXPECT_EQ(made->passes, (std::vector{size("1/8"), size("1/4"), size("3/8")}));
  EXPECT_FALSE(made->opensSides);
  EXPECT_FALSE(made->plunges) << "nobody said that it cuts over its centre";
}

TEST(SlotPlan, TakesTheLargestThatGoesIn) {
  Shop shop;
  shop.cutters = {OwnedCutter{figure("3/16"), 2, std::nullopt, true, std::nullopt, {}},
                  OwnedCutter{figure("1/8"), 2, std::nullopt, true, std::nullopt, {}},
                  OwnedCutter{figure("5/16"), 4, std::nullopt, true, std::nullopt, {}}};
  const auto made = planSlot(slot("1/4", "1/10"), ToolsOwned(shop));
  ASSERT_TRUE(made);
  EXPECT_EQ(made->tool, "end mill 3/16");
  EXPECT_TRUE(made->opensSides && made->plunges);
  EXPECT_EQ(made->passes.back(), size("1/10"));
  for (std::size_t i = 0; i < made->passes.size(); ++i) {
    const Length before = i == 0 ? Length() : made->passes[i - 1];
    EXPECT_LE(made->passes[i].ticks() - before.ticks(), made->size.ticks() / 2 + 1);
  }
  SlotWork asked = slot("1/4", "1/10");
  asked.cutter = size("1/8");
  EXPECT_EQ(planSlot(asked, ToolsOwned(shop))->tool, "end mill 1/8");
  asked.cutter = size("7/32");
  EXPECT_FALSE(planSlot(asked, ToolsOwned(shop)));
  EXPECT_FALSE(planSlot(slot("1/16", "1/10"), ToolsOwned(shop)));
  asked = slot("1/4", "1/10");
  asked.depth.reset();
  EXPECT_TRUE(planSlot(asked, ToolsOwned(shop))->passes.empty());
}

TEST(SlotPlan, TakesCustomaryMetricCuttersForMetricWork) {
  SlotWork work = slot("6 mm", "3 mm");
  work.unit = Unit::millimetre;
  EXPECT_EQ(planSlot(work, ToolsOwned(Shop{}))->tool, "end mill 6 mm");
}

TEST(SlotPlan, TakesOneUnderACloseSlot) {
  SlotWork work = slot("1/4", "1/8");
  work.close = true;
  const auto made = planSlot(work, ToolsOwned(Shop{}));
  EXPECT_EQ(made->tool, "end mill 3/16");
  EXPECT_TRUE(made->opensSides);
  EXPECT_TRUE(isClose(figure(".250")));
  EXPECT_FALSE(isClose(figure("1/4")));
  EXPECT_TRUE(isClose(figure("1/4 +.002 -0")));
  EXPECT_FALSE(isClose(figure(".250 ±.030")));
  work.cutter = size("1/4");
  EXPECT_EQ(planSlot(work, ToolsOwned(Shop{}))->tool, "end mill 1/4") << "the print's own";
}

// A cutter that is not known to cut over its centre goes into a drilled hole, which stays within
// the slot and above its floor.
TEST(SlotPlan, DrillsWhereTheCutterDoesNotPlunge) {
  const SlotWork work = slot("1/4", "3/8");
  const HolePlan steps = stepsOfSlot(work, planSlot(work, ToolsOwned(Shop{})));
  ASSERT_EQ(steps.steps.size(), 2u);
  EXPECT_EQ(steps.steps[0].tool, "C");
  EXPECT_LE(*steps.steps[0].pointDepth, size("3/8"));
  EXPECT_EQ(steps.steps[1].op, Op::mill);
  EXPECT_EQ(steps.steps[1].passes.size(), 3u);
  const HolePlan none = stepsOfSlot(work, std::nullopt);
  EXPECT_TRUE(none.steps.empty());
  ASSERT_EQ(none.lacking.size(), 1u);
  EXPECT_EQ(none.lacking[0].why, Lacking::Why::noCutter);
}

// Passes of half of 1/4: as many as are needed, alike, and never a thousand and more.
TEST(SlotPlan, PassesAreAlikeAndNoDeeperThanHalf) {
  const auto passes = [](const char* depth) {
    return planSlot(slot("1/4", depth), ToolsOwned(Shop{}))->passes;
  };
  EXPECT_EQ(passes("1/8"), (std::vector{size("1/8")}));
  EXPECT_EQ(passes("1/4"), (std::vector{size("1/8"), size("1/4")}));
  EXPECT_EQ(passes(".2502"), (std::vector{size(".0834"), size(".1668"), size(".2502")}));
  EXPECT_EQ(passes("125").size(), 1000u);
  EXPECT_EQ(passes("126").size(), 1000u);
  EXPECT_EQ(passes("126").back(), size("126"));
}

TEST(SlotPlan, SpeedsAreThoseOfTheCutterInTheMaterial) {
  SlotWork work = slot("1/4", "1/8");
  EXPECT_FALSE(planSlot(work, ToolsOwned(Shop{}))->speed);
  work.material = "brass";
  EXPECT_EQ(planSlot(work, ToolsOwned(Shop{}))->speed, 3056);  // 12·200/(π·.250)
  EXPECT_FALSE(planSlot(work, ToolsOwned(Shop{}))->ownSpeed);
  const auto machine = planSlot(work, ToolsOwned(Shop{}), {500, 2800, 4000});
  EXPECT_EQ(machine->speed, 2800);
  EXPECT_TRUE(machine->ownSpeed);
  const HoleStep mill = stepsOfSlot(work, machine).steps.back();
  EXPECT_EQ(mill.speed, 2800);
  EXPECT_TRUE(mill.ownSpeed);
}

TEST(SlotPlan, CuttersAtTheEndsOfWhatGoesIn) {
  SlotWork work = slot(".250", "1/8");
  work.close = true;
  Shop shop;
  shop.cutters = {OwnedCutter{figure("1/4"), 2, {}, true, {}, {}}};
  EXPECT_EQ(planSlot(work, ToolsOwned(shop))->tool, "end mill 1/4") << "none smaller is owned";
  EXPECT_FALSE(planSlot(work, ToolsOwned(shop))->opensSides);
  shop.cutters->push_back(OwnedCutter{figure("15/64"), 2, {}, true, {}, {}});
  EXPECT_EQ(planSlot(work, ToolsOwned(shop))->tool, "end mill 15/64") << "just 1/64 under";
  // One that the print names, where nobody said which are owned.
  SlotWork named = slot("1/4", "1/8");
  named.cutter = size("7/32");
  EXPECT_EQ(planSlot(named, ToolsOwned(Shop{}))->tool, "end mill 7/32");
  named.cutter = size("17/64");
  EXPECT_FALSE(planSlot(named, ToolsOwned(Shop{}))) << "it does not go in";
  named.width = size("15/64");
  named.cutter = size("15/64");
  EXPECT_EQ(planSlot(named, ToolsOwned(Shop{}))->tool, "end mill 15/64");
  EXPECT_FALSE(planSlot(named, ToolsOwned(Shop{}))->opensSides);
  EXPECT_TRUE(isClose(figure("1/4 BSC")));
  EXPECT_FALSE(isClose(figure("1/4 ±1/64"))) << "a fraction either way";
  EXPECT_TRUE(isClose(figure(".250 ±.0156")));
  EXPECT_FALSE(isClose(figure(".25")));
}

TEST(SlotPlan, StepsSayWhyThisCutterAndHowDeep) {
  SlotWork work = slot("1/4", "3/8");
  HolePlan steps = stepsOfSlot(work, planSlot(work, ToolsOwned(Shop{})));
  EXPECT_EQ(steps.steps[0].rule, Rule::holeForCutter);
  EXPECT_EQ(steps.steps[0].pointDepth, size("3/8"));
  EXPECT_EQ(steps.steps[0].fullDepth, size("3/8").minus(pointLength(size(".242"))));
  EXPECT_EQ(steps.steps[1].rule, Rule::largestThatGoes);
  EXPECT_EQ(steps.steps[1].fullDepth, size("3/8"));
  EXPECT_EQ(steps.steps[1].pointDepth, size("3/8"));
  EXPECT_FALSE(steps.steps[0].through || steps.steps[1].through);
  work.depth = size(".050");  // a point of .0727 goes no deeper
  steps = stepsOfSlot(work, planSlot(work, ToolsOwned(Shop{})));
  EXPECT_EQ(steps.steps[0].fullDepth, Length());
  work.close = work.through = true;
  steps = stepsOfSlot(work, planSlot(work, ToolsOwned(Shop{})));
  EXPECT_EQ(steps.steps[1].rule, Rule::underCloseSlot);
  EXPECT_TRUE(steps.steps[0].through && steps.steps[1].through);
  // No drill stays within the cutter, and it is not known to plunge.
  work.close = false;
  steps = stepsOfSlot(work, planSlot(work, ToolsOwned(drillsOwned({"1/4"}))));
  ASSERT_EQ(steps.lacking.size(), 1u);
  EXPECT_EQ(steps.lacking[0].why, Lacking::Why::noDrillUnder);
  EXPECT_EQ(steps.lacking[0].wanted, "1/4");
  ASSERT_EQ(steps.steps.size(), 1u);
  work.pocket = true;
  steps = stepsOfSlot(work, planSlot(work, ToolsOwned(Shop{})));
  EXPECT_EQ(steps.steps[1].rule, Rule::largestInCorners);
  steps = stepsOfSlot(work, std::nullopt);
  EXPECT_EQ(steps.lacking[0].why, Lacking::Why::noCutterForPocket);
  EXPECT_EQ(steps.lacking[0].wanted, "");
}

// A pocket of 1 1/2 by 1, anticlockwise, its corners square or rounded.
std::vector<PathPiece> pocketWall(double radius) {
  const double w = 1.5, h = 1, r = radius;
  const PlanePoint corners[] = {{w, 0}, {w, h}, {0, h}, {0, 0}};
  const PlanePoint ways[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
  std::vector<PathPiece> wall;
  PlanePoint at{r, 0};
  for (std::size_t i = 0; i < 4; ++i) {
    const PlanePoint corner = corners[i], on = ways[i], next = ways[(i + 1) % 4];
    const PlanePoint before{corner.x - r * on.x, corner.y - r * on.y};
    const PlanePoint behind{corner.x + r * next.x, corner.y + r * next.y};
    wall.push_back({at, before, std::nullopt, 1, false});
    if (r > 0) {
      const PlanePoint centre{before.x + r * next.x, before.y + r * next.y};
      wall.push_back({before, behind, PlaneCircle{centre, r}, 1, false});
    }
    at = behind;
  }
  return wall;
}

TEST(PocketPlan, TheCutterGoesIntoTheCornersOrIsHalfAsWideAtMost) {
  const auto tool = [](double radius, std::vector<const char*> owned) {
    SlotWork work;
    work.pocket = true;
    work.depth = size("1/8");
    Shop shop;
    if (!owned.empty()) shop.cutters.emplace();
    for (const char* text : owned) shop.cutters->push_back({figure(text), 4, {}, {}, {}, {}});
    const auto made = planPocket(work, pocketWall(radius), ToolsOwned(shop));
    return made ? made->tool : "none";
  };
  EXPECT_EQ(tool(0, {}), "end mill 1/2") << "half of 1";
  EXPECT_EQ(tool(0.125, {}), "end mill 1/4") << "just goes in";
  EXPECT_EQ(tool(0.124, {}), "end mill 3/16");
  EXPECT_EQ(tool(0.4, {}), "end mill 1/2");
  EXPECT_EQ(tool(0, {"3/4", "5/8"}), "end mill 5/8") << "the smallest of larger ones";
  EXPECT_EQ(tool(0.25, {"5/8"}), "none");
  EXPECT_EQ(tool(0.25, {"5/8", "1/8", "3/8"}), "end mill 3/8");
}

}  // namespace
}  // namespace inchwright::test
