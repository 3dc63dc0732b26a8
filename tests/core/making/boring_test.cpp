#include <gtest/gtest.h>

#include <random>

#include "core/making/boring_cuts.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

// Common practice, no source: a cut dialled 0.010 on the slide opens the bore 0.020; the last cuts
// halve what is left.
TEST(BoringCuts, OpenTheBoreTwiceWhatTheSlideMoves) {
  const auto cuts = boringCuts({size("3/4"), size("1"), {}, {}}, size(".001"), DialCounts::slide);
  ASSERT_GE(cuts.size(), 3u);
  Length at = size("3/4");
  for (const BoreCut& cut : cuts) {
    EXPECT_EQ(cut.size.ticks() - at.ticks(), 2 * cut.dial.ticks());
    at = cut.size;
  }
  EXPECT_EQ(at, size("1"));
  const Length last = cuts.back().dial, before = cuts[cuts.size() - 2].dial;
  EXPECT_LE(before.ticks() - last.ticks(), size(".001").ticks());
  EXPECT_GE(before, last);
}

TEST(BoringCuts, AddToTheTargetWhateverTheDial) {
  std::mt19937 random(1915);
  for (int i = 0; i < 500; ++i) {
    SCOPED_TRACE("seed 1915, draw " + std::to_string(i));
    const std::int64_t division = 254'000LL * (1 + static_cast<std::int64_t>(random() % 20));
    const std::optional<DialCounts> dial =
        i % 3 == 0 ? std::nullopt
                   : std::optional(i % 3 == 1 ? DialCounts::slide : DialCounts::diameter);
    const std::int64_t growth = division * (dial == DialCounts::slide ? 2 : 1);
    const Length start =
        Length::ticks(600'000'000 + static_cast<std::int64_t>(random() % 900'000'000));
    const Length target =
        Length::ticks(start.ticks() + static_cast<std::int64_t>(random() % 700'000'000));
    const auto cuts = boringCuts({start, target, {}, {}}, Length::ticks(division), dial);
    if (target.ticks() - start.ticks() < growth) {
      EXPECT_TRUE(cuts.empty());
      continue;
    }
    ASSERT_FALSE(cuts.empty());
    std::int64_t at = start.ticks();
    for (const BoreCut& cut : cuts) {
      EXPECT_GT(cut.dial, Length());
      EXPECT_EQ(cut.dial.ticks() % division, 0);
      at += cut.dial.ticks() / division * growth;
      EXPECT_EQ(cut.size.ticks(), at);
    }
    EXPECT_LE(at, target.ticks());
    EXPECT_LT(target.ticks() - at, growth);
    if (cuts.size() > 1) {
      const std::int64_t last = cuts.back().dial.ticks(),
                         before = cuts[cuts.size() - 2].dial.ticks();
      EXPECT_LE(std::abs(before - last), division);
    }
    EXPECT_EQ(cuts.front().trial, !dial && cuts.size() > 2);
  }
}

TEST(BoringCuts, KeepWithinLimitsOrRefuse) {
  BoreJob job{size(".9900"), size("1.0004"), size("1.0000"), size("1.0008")};
  const auto cuts = boringCuts(job, size(".0005"), DialCounts::slide);
  ASSERT_FALSE(cuts.empty());
  EXPECT_EQ(cuts.back().size, size("1.0000"));
  job.low = size("1.0002");
  job.high = size("1.0006");
  EXPECT_TRUE(boringCuts(job, size(".0005"), DialCounts::slide).empty());
  // Aimed near one of its limits the nearest may be beyond it, and the next within: .0107 are
  // nearest to 11 thousandths, which would come to 1.0011; .0104 to 10, and to .9997.
  const auto comesTo = [](const char* start, const char* target) {
    const BoreJob near{size(start), size(target), size("1.0000"), size("1.0009")};
    const auto made = boringCuts(near, size(".001"), DialCounts::diameter);
    return made.empty() ? Length() : made.back().size;
  };
  EXPECT_EQ(comesTo(".9901", "1.0008"), size("1.0001"));
  EXPECT_EQ(comesTo(".9897", "1.0001"), size("1.0007"));
  EXPECT_TRUE(boringCuts({size("1"), size("1"), {}, {}}, size(".001"), {}).empty());
  EXPECT_TRUE(boringCuts({size("1 1/2"), size("1"), {}, {}}, size(".001"), {}).empty());
}

TEST(BoredHole, StartsFromTheLargestOwnedUnderIt) {
  Shop shop = drillsOwned({"fractional 1/16 to 1/2"});
  shop.boring = {boringHead("1/2", "3", DialCounts::slide, "0.001")};
  shop.cutters = {OwnedCutter{figure("3/4"), 4, std::nullopt, std::nullopt, std::nullopt, {}},
                  OwnedCutter{figure("1"), 4, std::nullopt, std::nullopt, std::nullopt, {}}};
  const HolePlan made = plan(hole("1", Make::bore), shop);
  EXPECT_EQ(toolsOf(made).substr(0, 26), "spot, 1/2, end mill 3/4, b");
  const auto bores = stepsOf(made, Op::bore);
  ASSERT_FALSE(bores.empty());
  EXPECT_EQ(bores.back()->size, size("1"));
  for (const HoleStep* step : bores) EXPECT_TRUE(step->measure && step->dial);
  EXPECT_TRUE(made.notes.empty());
}

TEST(BoredHole, SaysWhatTheDialCountsWhereNobodyDid) {
  const HolePlan made = plan(hole("7/8", Make::bore));
  const auto bores = stepsOf(made, Op::bore);
  ASSERT_FALSE(bores.empty());
  EXPECT_EQ(made.notes, std::vector{HoleNote::dialUnsaid});
  const HoleStep& start = *stepsOf(made, Op::drill).back();
  std::int64_t dialled = 0;
  for (const HoleStep* step : bores) dialled += step->dial->ticks();
  EXPECT_EQ(start.size->ticks() + dialled, bores.back()->size->ticks()) << "growth of the hole";
}

TEST(BoredHole, NamesWhatIsLacking) {
  Shop shop;
  shop.boring = {boringHead("3/8", "3/4", {}, ".001")};
  EXPECT_EQ(plan(hole("1", Make::bore), shop).lacking[0].why, Lacking::Why::noBar);
  EXPECT_EQ(plan(hole("1/4", Make::bore), shop).lacking[0].why, Lacking::Why::noBar);
  shop.boring.emplace();
  EXPECT_EQ(plan(hole("1/2", Make::bore), shop).lacking[0].why, Lacking::Why::noBar);
  Shop bare;
  bare.drills.emplace();
  bare.cutters.emplace();
  EXPECT_EQ(plan(hole("1/2", Make::bore), bare).lacking[0].why, Lacking::Why::noDrillUnder);
  HoleWork close = hole("1/2", Make::bore);
  close.drilled.limits = "0.50005/0.50010";
  shop.boring = {boringHead("1/8", "3", DialCounts::slide, ".005")};
  EXPECT_EQ(plan(close, shop).lacking[0].why, Lacking::Why::dialTooCoarse);
}

TEST(BoredHole, MillsFirstWhereItBreaksOut) {
  HoleWork work = hole("7/8", Make::bore);
  work.breaksOut = true;
  const HolePlan made = plan(work);
  ASSERT_EQ(stepsOf(made, Op::drill).size(), 1u) << "no drill, which would wander";
  EXPECT_EQ(stepsOf(made, Op::drill).back()->tool, "end mill 3/4");
  EXPECT_NE(std::find(made.notes.begin(), made.notes.end(), HoleNote::interrupted),
            made.notes.end());
}

}  // namespace
}  // namespace inchwright::test
