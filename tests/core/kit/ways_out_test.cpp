#include "core/kit/ways_out.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

constexpr const char* kOver =
    R"({"place": "A", "setup": "1", "x": "1.0000", "y": ".7500", "size": ".2518", "with": {"error": ".0003"}})";
constexpr const char* kAstray =
    R"({"place": "A", "setup": "1", "x": "1.0080", "y": ".7440", "size": ".2502", "with": {"error": ".0001"}})";

std::vector<Way> waysFor(const std::string& made, const char* place = "A") {
  const KitJob kit(made);
  auto ways = waysOut(kit.job, kit.solutions, "Plate", place);
  EXPECT_TRUE(ways.ok()) << ways.error().text;
  return ways.ok() ? *std::move(ways) : std::vector<Way>{};
}

const Way& the(const std::vector<Way>& ways, WayOut kind) {
  const auto found =
      std::find_if(ways.begin(), ways.end(), [&](const Way& one) { return one.way == kind; });
  if (found == ways.end()) throw std::runtime_error("no such way");
  return *found;
}

const Effect& the(const Way& way, Effect::Of of, const std::string& name) {
  const auto found = std::find_if(way.effects.begin(), way.effects.end(), [&](const Effect& one) {
    return one.of == of && one.name == name;
  });
  if (found == way.effects.end()) throw std::runtime_error("no such effect");
  return *found;
}

TEST(WaysOut, OfAHoleOverSize) {
  const std::vector<Way> ways = waysFor(kOver);
  // Found + error − greatest to found − error − least: .2521 − .0016 to .2515 − .0007.
  const Way& shaft = the(ways, WayOut::shaft);
  EXPECT_EQ(*shaft.shaft, tenths(2505, 2508));
  EXPECT_TRUE(the(shaft, Effect::Of::mate, "arbor in A").holds);
  EXPECT_EQ(the(shaft, Effect::Of::mate, "arbor in A").after, tenths(7, 16));
  const Way& bush = the(ways, WayOut::bush);
  EXPECT_EQ(*bush.centreX, inTenThousandths(10000));
  EXPECT_EQ(bush.bushing->bore, readLength("5/16")->value);
  EXPECT_EQ(bush.bushing->inside, inTenThousandths(2500));
  EXPECT_TRUE(the(bush, Effect::Of::mate, "arbor in A").holds);
  EXPECT_EQ(the(ways, WayOut::nextSize).size->ticks(), readLength("17/64")->value.ticks());
  // Not off its place: nothing for an eccentric bush to do.
  EXPECT_TRUE(std::none_of(ways.begin(), ways.end(),
                           [](const Way& one) { return one.way == WayOut::eccentricBush; }));
  EXPECT_EQ(ways.back().way, WayOut::leave);
  EXPECT_FALSE(the(ways.back(), Effect::Of::mate, "arbor in A").holds);
}

// .2518 ± .00045: .25225 less .0016 and .25135 less .0007 are both .25065, the one size that suits.
TEST(WaysOut, AShaftOfOneSizeAloneCanStillBeMade) {
  const auto holds = [](const char* error) {
    const std::vector<Way> ways =
        waysFor(R"({"place": "A", "setup": "1", "size": ".2518", "with": {"error": ")" +
                std::string(error) + "\"}}");
    return the(the(ways, WayOut::shaft), Effect::Of::mate, "arbor in A").holds;
  };
  EXPECT_TRUE(holds(".00045"));
  EXPECT_FALSE(holds(".00046"));
}

// Metal is there still: opening it comes first, and nothing is lined.
TEST(WaysOut, OfAHoleUnderSize) {
  const std::vector<Way> ways =
      waysFor(R"({"place": "A", "setup": "1", "x": "1.0000", "y": ".7500", "size": ".2480"})");
  EXPECT_EQ(ways.front().way, WayOut::openToSize);
  EXPECT_EQ(*ways.front().size, inTenThousandths(2500));
  EXPECT_TRUE(the(ways.front(), Effect::Of::mate, "arbor in A").holds);
  for (const Way& way : ways) {
    EXPECT_TRUE(way.way != WayOut::bush && way.way != WayOut::plug);
  }
}

TEST(WaysOut, OfAHoleUnderSizeAndOffItsPlace) {
  const std::vector<Way> ways =
      waysFor(R"({"place": "A", "setup": "1", "x": "1.0080", "y": ".7440", "size": ".2480"})");
  EXPECT_EQ(ways.front().way, WayOut::openToSize);
  EXPECT_NO_THROW(the(ways, WayOut::bush));
}

TEST(WaysOut, OfAHoleOffItsPlace) {
  const std::vector<Way> ways = waysFor(kAstray);
  const Way& bush = the(ways, WayOut::bush);
  EXPECT_EQ(*bush.centreX, inTenThousandths(10000));
  EXPECT_EQ(*bush.centreY, inTenThousandths(7500));
  // .2503 + 2 × .010.
  EXPECT_GE(bush.bushing->bore, inTenThousandths(2703));
  EXPECT_FALSE(the(bush, Effect::Of::reading, "r1").before ==
               the(bush, Effect::Of::reading, "r1").after);
  EXPECT_TRUE(the(bush, Effect::Of::reading, "r1").holds);
  const Way& eccentric = the(ways, WayOut::eccentricBush);
  EXPECT_EQ(eccentric.bushing->throwBy, inTenThousandths(100));
  EXPECT_EQ(eccentric.towardX, inTenThousandths(-80));
  EXPECT_EQ(eccentric.towardY, inTenThousandths(60));
  EXPECT_EQ(*eccentric.centreX, inTenThousandths(10080));
  EXPECT_TRUE(the(ways, WayOut::plug).bushing->cutsJoint);
  const Way& leave = the(ways, WayOut::leave);
  EXPECT_EQ(the(leave, Effect::Of::reading, "r1").before, tenths(10080, 10080));
  EXPECT_FALSE(the(leave, Effect::Of::reading, "r1").holds);
  // r5 runs from A: it comes out that much shorter.
  EXPECT_EQ(the(leave, Effect::Of::reading, "r5").before, tenths(9920, 9920));
  EXPECT_TRUE(the(leave, Effect::Of::mate, "arbor in A").holds);
}

TEST(WaysOut, FollowWhichWayTheReadoutCounts) {
  KitJob kit(R"({"place": "A", "setup": "1", "x": "-1.0080", "y": ".7440", "size": ".2502"})");
  kit.job.machine.xCounts = CountsX::left;
  const auto ways = waysOut(kit.job, kit.solutions, "Plate", "A");
  ASSERT_TRUE(ways.ok()) << ways.error().text;
  EXPECT_EQ(the(*ways, WayOut::bush).towardX, inTenThousandths(80));
  EXPECT_EQ(the(the(*ways, WayOut::leave), Effect::Of::reading, "r1").before, tenths(10080, 10080));
}

TEST(WaysOut, OfAThreadIsTheNextOfItsSeries) {
  const std::vector<Way> ways =
      waysFor(R"({"place": "C", "setup": "1", "size": ".145", "with": {"error": ".001"}})", "C");
  const Way& next = the(ways, WayOut::nextSize);
  EXPECT_EQ(next.sizeName, "#10-24 UNC");  // its tapping drill, #25 at .1495, cleans up .146
}

TEST(WaysOut, KeepGapsInSight) {
  const std::vector<Way> ways =
      waysFor(R"({"place": "A", "setup": "1", "x": "1.0080", "y": ".7500", "size": ".2530"},
      {"place": "B", "setup": "1", "x": "2.0000", "y": ".7500"})");
  const Way& leave = the(ways, WayOut::leave);
  EXPECT_EQ(the(leave, Effect::Of::gap, "pitch").before, tenths(9920, 9920));
  EXPECT_FALSE(the(leave, Effect::Of::gap, "pitch").holds);
  EXPECT_TRUE(the(the(ways, WayOut::bush), Effect::Of::gap, "pitch").holds);
  EXPECT_FALSE(the(leave, Effect::Of::gap, "rock").holds);
  EXPECT_TRUE(the(the(ways, WayOut::bush), Effect::Of::gap, "rock").holds);
}

TEST(WaysOut, AreRefusedWithTheReason) {
  const KitJob kit(kOver);
  const auto code = [&](const char* part, const char* place) {
    return waysOut(kit.job, kit.solutions, part, place).error().code;
  };
  EXPECT_EQ(code("Plat", "A"), ErrorCode::notFound);
  EXPECT_EQ(code("Plate", "Q"), ErrorCode::notFound);
  EXPECT_EQ(code("Plate", "L"), ErrorCode::badRequest);
  EXPECT_EQ(code("Plate", "B"), ErrorCode::badRequest);  // nothing was measured there
}

// No press fit is known over 19.69 in.
TEST(WaysOut, AHoleTooLargeForAnyBushIsRefusedWithTheReason) {
  KitJob kit(R"({"place": "A", "setup": "1", "size": "20.0200"})");
  kit.job.parts[0].features[4].drilled()->diameter = *readLength("20.000 ±.001");
  kit.job.parts[0].features[4].drilled()->limits.clear();
  const auto ways = waysOut(kit.job, kit.solutions, "Plate", "A");
  ASSERT_FALSE(ways.ok());
  EXPECT_EQ(ways.error().code, ErrorCode::notFound);
}

// A found .0080 to the right, B .0030, C .0010. A bush puts A alone on its place: from A to B it is
// then 1.000 ±.001 as drawn, from C to B still 1.5020 as found.
TEST(WaysOut, ABushedHoleIsOnItsPlaceAndTheOthersWhereTheyWereFound) {
  KitJob kit(R"({"place": "A", "setup": "1", "x": "1.0080", "y": ".7500", "size": ".2518"},
                {"place": "B", "setup": "1", "x": "2.0030", "y": ".7500", "size": ".2504"},
                {"place": "C", "setup": "1", "x": ".5010", "y": ".3750"})");
  Gap both = kit.job.gaps[0];
  both.name = "both";
  both.least.reset();
  both.greatest.reset();
  both.members.push_back(both.members[0]);
  both.members[1].from = "C";
  both.members[1].sign = -1;
  Gap back = kit.job.gaps[0];
  back.name = "back";
  std::swap(back.members[0].from, back.members[0].to);
  Gap others = both;
  others.name = "others";
  others.members.erase(others.members.begin());
  others.members[0].sign = 1;
  kit.job.gaps = {both, back, others};
  const auto ways = waysOut(kit.job, kit.solutions, "Plate", "A");
  ASSERT_TRUE(ways.ok()) << ways.error().text;
  const Way &bush = the(*ways, WayOut::bush), &left = the(*ways, WayOut::leave);
  EXPECT_EQ(the(bush, Effect::Of::gap, "both").before, tenths(-5070, -5070));
  EXPECT_EQ(the(bush, Effect::Of::gap, "both").after, tenths(-5030, -5010));
  EXPECT_EQ(the(left, Effect::Of::gap, "both").after, tenths(-5070, -5070));
  EXPECT_EQ(the(bush, Effect::Of::gap, "back").after, tenths(-10010, -9990));
  for (const Effect& effect : bush.effects) EXPECT_NE(effect.name, "others");
}

// C stands on no dimension along X, and was measured: from A as found it is known, from A put on
// its place by a bush it is not.
TEST(WaysOut, AGapThatOnlyMeasuringTellsIsNotTurnedIntoOneThePrintTells) {
  KitJob kit(R"({"place": "A", "setup": "1", "x": "1.0080", "y": ".7500", "size": ".2518"},
                {"place": "C", "setup": "1", "x": ".5010", "y": ".3750"})");
  std::erase_if(kit.job.parts[0].readings, [](const Reading& one) { return one.id == "r7"; });
  kit.solutions[0] = *solve(kit.job.parts[0]);
  kit.job.gaps[0].members[0].from = "C";
  kit.job.gaps[0].members[0].to = "A";
  const auto ways = waysOut(kit.job, kit.solutions, "Plate", "A");
  ASSERT_TRUE(ways.ok()) << ways.error().text;
  EXPECT_EQ(the(the(*ways, WayOut::leave), Effect::Of::gap, "pitch").after, tenths(5070, 5070));
  for (const Effect& effect : the(*ways, WayOut::bush).effects) EXPECT_NE(effect.name, "pitch");
}

}  // namespace
}  // namespace inchwright
