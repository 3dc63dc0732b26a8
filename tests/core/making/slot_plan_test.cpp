#include "core/making/slot_plan.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace inchwright::test
