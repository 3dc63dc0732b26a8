// Whatever is owned: no plan drills to a reamer's own size, or for another thread, or leaves what
// the rule does not allow.

#include <gtest/gtest.h>

#include <random>

#include "core/shop/thread_work.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

Shop shopAtRandom(std::mt19937& random) {
  Shop shop;
  const auto one = [&](unsigned in) { return random() % in == 0; };
  if (!one(4)) {
    shop.drills.emplace();
    for (const char* text : {"fractional 1/16 to 1/2", "number", "letter", "metric 1 to 13 by 0.1",
                             "fractional 1/8 to 1 by 1/16", "1/4", "F", "6.35 mm", "15/64"}) {
      if (one(3)) shop.drills->push_back({*readDrillSet(text), std::nullopt, {}});
    }
  }
  if (!one(3)) {
    shop.reamers.emplace();
    for (const char* text : {"1/8", "3/16", "1/4", "0.2495", "3/8", "1/2", "6 mm"}) {
      if (one(2))
        shop.reamers->push_back(reamer(text, one(3) ? ReamedBy::hand : ReamedBy::machine));
    }
  }
  if (!one(3)) {
    shop.taps.emplace();
    for (const char* text : {"1/4-20 UNC", "2 BA", "M6", "1/4 BSW", "3/16-40 ME", "#8-32 UNC"}) {
      if (one(2))
        shop.taps->push_back({text, static_cast<TapLead>(random() % 3), std::nullopt, {}});
    }
  }
  if (!one(3)) {
    shop.boring.emplace();
    if (!one(3)) {
      shop.boring->push_back(boringHead("3/16", "2",
                                        one(2) ? std::optional(DialCounts::slide) : std::nullopt,
                                        one(2) ? ".001" : ".0005"));
    }
  }
  if (one(3)) {
    shop.reaming.emplace();
    shop.reaming->machine = {figure(".004"), figure(".020")};
  }
  return shop;
}

HoleWork workAtRandom(std::mt19937& random) {
  const char* const sizes[] = {"1/8", "3/16", "1/4", ".250", "3/8", "1/2", "6 mm", "7/8", "1 3/8"};
  const char* const threads[] = {"1/4-20 UNC", "2 BA",      "M6", "1/4 BSW",
                                 "3/16-40 ME", "#8-32 UNC", "M9"};
  const Make makes[] = {Make::drill, Make::ream, Make::ream, Make::bore, Make::tap, Make::tap};
  HoleWork work = hole(sizes[random() % std::size(sizes)], makes[random() % std::size(makes)],
                       threads[random() % std::size(threads)]);
  if (random() % 2 == 0) work = blind(work, "3/8");
  work.closePlace = random() % 4 == 0;
  work.breaksOut = random() % 6 == 0;
  return work;
}

void expectHarmless(const HoleWork& work, const Shop& shop, const HolePlan& made) {
  const auto reams = stepsOf(made, Op::ream);
  const auto taps = stepsOf(made, Op::tap);
  const auto drills = stepsOf(made, Op::drill);
  const ToolsOwned tools(shop);
  for (const HoleStep* drill : drills) {
    if (drill->kind == ToolKind::drill && shop.drills) {
      bool owned = false;
      for (const DrillAtHand& one : tools.drillsFor(Unit::inch))
        owned |= one.drill.name == drill->tool;
      EXPECT_TRUE(owned) << drill->tool << " is not owned";
    }
  }
  if (!reams.empty()) {
    ASSERT_EQ(reams.size(), 1u);
    const Length reamed = *reams[0]->size;
    EXPECT_FALSE(reams[0]->struckOut.empty());
    for (const HoleStep* drill : drills) EXPECT_LT(*drill->size, reamed);
    for (const HoleStep* bore : stepsOf(made, Op::bore)) {
      EXPECT_LE(bore->size->ticks(), reamed.ticks() - size(".005").ticks());
    }
    if (!drills.empty() && stepsOf(made, Op::bore).empty()) {
      const ReamedBy by = reams[0]->tool.starts_with("hand") ? ReamedBy::hand : ReamedBy::machine;
      const std::int64_t left = reamed.ticks() - drills.back()->size->ticks();
      EXPECT_GE(left, tools.leastLeft(by).ticks());
      EXPECT_LE(left, tools.greatestLeft(by).ticks());
    }
  }
  if (!taps.empty()) {
    const Thread thread = *threadNamed(work.drilled.thread);
    EXPECT_EQ(taps[0]->tool, "tap " + thread.name);
    for (const HoleStep* drill : drills) {
      const bool own = *drill->size == thread.tapDrillDiameter;
      const int percent = threadPercent(thread, *drill->size);
      EXPECT_TRUE(own || (percent >= 5500 && percent <= 8000)) << drill->tool;
    }
  }
  // What a hole wants is either planned or named as lacking.
  const bool finished = work.drilled.make == Make::ream   ? !reams.empty() && !drills.empty()
                        : work.drilled.make == Make::tap  ? !taps.empty() && !drills.empty()
                        : work.drilled.make == Make::bore ? !stepsOf(made, Op::bore).empty()
                                                          : !drills.empty();
  EXPECT_EQ(finished, made.lacking.empty());
}

TEST(OddShops, NeverMakeAWrongHole) {
  std::mt19937 random(15);
  int lacking = 0;
  for (int i = 0; i < 3000; ++i) {
    const Shop shop = shopAtRandom(random);
    const HoleWork work = workAtRandom(random);
    const HolePlan made = plan(work, shop);
    SCOPED_TRACE("seed 15, draw " + std::to_string(i) + ": " + toolsOf(made));
    expectHarmless(work, shop, made);
    lacking += !made.lacking.empty();
    if (HasFailure()) return;
  }
  EXPECT_GT(lacking, 300);
  EXPECT_LT(lacking, 2700);
}

}  // namespace
}  // namespace inchwright::test
