#include "core/plan/milled_cuts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/plan/table.h"
#include "tests/core/plan/milled_plate.h"

namespace inchwright::test {
namespace {

using What = CutterRun::What;
using Runs = std::vector<std::string>;

TEST(MilledCuts, TakeASlotDownItsMiddle) {
  MilledPlate plate;
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", "3/16");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_EQ(cuts[0].tool, "end mill 1/4");
  EXPECT_EQ(runsOf(cuts[0]), (Runs{"middle 0.8750 2.2500 > 1.6250 2.2500"}));
  EXPECT_TRUE(cuts[0].left.empty());
  EXPECT_FALSE(cuts[0].liftBetween);
  EXPECT_EQ(cuts[0].drill, "C");
  ASSERT_TRUE(cuts[0].drillFirst);
  EXPECT_EQ(cuts[0].drillFirst->x.text, "0.8750");
}

// Lettered close it is opened up by a smaller cutter: over the whole length, then clockwise seen
// from above: away from you to the right, towards you to the left.
TEST(MilledCuts, OpenACloseSlotEitherSide) {
  MilledPlate plate;
  plate.slot("S", Axis::x, ".250", "1", "1 1/4", "2 1/4", "3/16");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_EQ(cuts[0].tool, "end mill 3/16");
  EXPECT_EQ(runsOf(cuts[0]),
            (Runs{"middle 0.8440 2.2500 > 1.6565 2.2500", "side 0.8750 2.2815 > 1.6250 2.2815",
                  "side 1.6250 2.2190 > 0.8750 2.2190"}));
  // R 1/8, r 3/32, a quarter turn between the two: 1/8 − 1/32 cos 45° − √(r² − 1/32² sin² 45°).
  ASSERT_EQ(cuts[0].left.size(), 1u);
  const double e = 1.0 / 32, r = 3.0 / 32;
  const double left = 0.125 - e * std::sqrt(0.5) - std::sqrt(r * r - e * e / 2);
  EXPECT_NEAR(cuts[0].left[0].height->toInches(), left, 1e-8);
  EXPECT_EQ(cuts[0].drillFirst->x.text, "0.8750") << "the hole stays within the slot's round end";
}

// Far wider than the cutter: further out each time by two thirds of it, so that nothing stays
// standing between.
TEST(MilledCuts, LeaveNothingStandingInAWideSlot) {
  MilledPlate plate;
  plate.job.shop.cutters = {plate.cutter("1/4")};
  plate.slot("S", Axis::x, "1", "2 1/2", "2", "1 1/2", "3/16");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  double last = 0;
  for (const CutterRun& run : cuts[0].runs) {
    const double off = std::abs(run.from.y.value.toInches() - 1.5);
    EXPECT_LE(off - last, 0.25 * 2 / 3 + 1e-9);
    last = std::max(last, off);
  }
  EXPECT_NEAR(last, 0.375, 1e-9);
}

TEST(MilledCuts, EmptyAPocketAndGoRoundIt) {
  MilledPlate plate;
  plate.pocket("1/2", "1 1/2", "1/2", "1", "1/4");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_TRUE(cuts[0].isPocket);
  EXPECT_EQ(cuts[0].id, "pocket");
  EXPECT_EQ(cuts[0].tool, "end mill 1/2") << "about half its width where its corners are square";
  const Runs all = runsOf(cuts[0]);
  ASSERT_EQ(all.size(), 10u);
  const Runs last(all.end() - 4, all.end());
  EXPECT_EQ(last,
            (Runs{"wall 0.7500 0.7500 > 0.7500 1.2500", "wall 0.7500 1.2500 > 1.7500 1.2500",
                  "wall 1.7500 1.2500 > 1.7500 0.7500", "wall 1.7500 0.7500 > 0.7500 0.7500"}))
      << "clockwise seen from above";
  ASSERT_EQ(cuts[0].left.size(), 1u);
  EXPECT_EQ(cuts[0].left[0].why, LeftStanding::Why::squareCorner);
  EXPECT_NEAR(cuts[0].left[0].height->toInches(), 0.25 * (std::sqrt(2.0) - 1), 1e-8);
}

// With the corner's own radius nothing stays; with a smaller one a lump in each corner, and the
// straight runs end where the round begins.
TEST(MilledCuts, GoIntoRoundCorners) {
  MilledPlate plate;
  plate.pocket("1/2", "1 1/2", "1/2", "1", "1/4", "3/16");
  auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_EQ(cuts[0].tool, "end mill 3/8");
  EXPECT_TRUE(cuts[0].left.empty());
  EXPECT_FALSE(cuts[0].liftBetween);
  const Runs filled = runsOf(cuts[0]);
  EXPECT_EQ(filled[filled.size() - 8], "leaving 0.7030 0.7030 > 0.7030 1.2970");
  plate.job.shop.cutters = {plate.cutter("1/4")};
  cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  ASSERT_EQ(cuts[0].left.size(), 4u);
  EXPECT_EQ(cuts[0].left[0].why, LeftStanding::Why::roundCorner);
  EXPECT_TRUE(cuts[0].liftBetween);
  EXPECT_EQ(runsOf(cuts[0]).back(), "wall 1.8125 0.6250 > 0.6875 0.6250");
  plate.job.shop.cutters = {plate.cutter("1/2")};
  EXPECT_TRUE(plate.cuts().empty()) << "none goes into its corners";
}

// A through slot turned on the table and seen from below: every figure turns with it, and the
// runs stay clockwise as they are seen.
TEST(MilledCuts, TurnWithTheWork) {
  for (const Face face : {Face::top, Face::bottom}) {
    for (const int turn : {0, 90, 180, 270}) {
      MilledPlate plate;
      plate.setup.face = face;
      plate.setup.turn = turn;
      plate.slot("S", Axis::y, ".500", "1 1/2", "1 1/4", "1 1/2", "");
      plate.part.features.back().face = face;
      const auto cuts = plate.cuts();
      ASSERT_EQ(cuts.size(), 1u);
      // The area that the two sides enclose with the ways between them, as the work lies.
      double twice = 0;
      std::vector<PlanePoint> at;
      for (const CutterRun& run : cuts[0].runs) {
        if (run.what != What::side) continue;
        at.push_back({run.from.x.value.toInches(), run.from.y.value.toInches()});
        at.push_back({run.to.x.value.toInches(), run.to.y.value.toInches()});
      }
      ASSERT_EQ(at.size(), 4u);
      for (std::size_t i = 0; i < 4; ++i) {
        const PlanePoint& p = at[i];
        const PlanePoint& q = at[(i + 1) % 4];
        twice += p.x * q.y - q.x * p.y;
      }
      EXPECT_LT(twice, 0) << "turn " << turn;
    }
  }
}

TEST(MilledCuts, TurnACurvedSlotOnTheRotaryTable) {
  MilledPlate plate;
  plate.curvedSlot("1/4", "2", "1/4");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  ASSERT_TRUE(cuts[0].about);
  EXPECT_NEAR(cuts[0].about->degrees, 90, 1e-6);
  ASSERT_EQ(cuts[0].about->spindle.size(), 1u);
  EXPECT_NEAR(cuts[0].about->spindle[0].toInches(), 1, 1e-9);
  EXPECT_TRUE(cuts[0].runs.empty());
}

// A quarter of a turn in every quadrant, begun at either end: never the long way round.
TEST(MilledCuts, TurnACurvedSlotTheShortWayWhereverItLies) {
  const std::pair<const char*, const char*> ends[] = {
      {"2 1/2", "1 1/2"}, {"2", "2"}, {"1 1/2", "1 1/2"}, {"2", "1"}};
  for (std::size_t k = 0; k < 4; ++k) {
    for (const bool isBackwards : {false, true}) {
      const auto& [ax, ay] = ends[isBackwards ? (k + 1) % 4 : k];
      const auto& [bx, by] = ends[isBackwards ? k : (k + 1) % 4];
      MilledPlate plate;
      plate.point("E0", "2", "1 1/2");
      plate.point("E1", ax, ay);
      plate.point("E2", bx, by);
      plate.slotAbout("1/4", "1/4");
      const auto cuts = plate.cuts();
      ASSERT_EQ(cuts.size(), 1u);
      ASSERT_TRUE(cuts[0].about) << k;
      EXPECT_FALSE(cuts[0].offCircle);
      EXPECT_NEAR(cuts[0].about->degrees, 90, 1e-6) << k << isBackwards;
      EXPECT_NEAR(cuts[0].about->spindle[0].toInches(), 0.5, 1e-9);
    }
  }
}

TEST(MilledCuts, SayWhereACurvedSlotDoesNotCloseOnItsCentre) {
  MilledPlate plate;
  plate.curvedSlot("1/4", "2 1/8", "1/4");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_TRUE(cuts[0].offCircle);
}

// An L-shaped pocket: no run leaves it, and what lies between runs is to be lifted over.
TEST(MilledCuts, LiftOverWhatStandsIn) {
  MilledPlate plate;
  plate.ell("1/4");
  const auto cuts = plate.cuts();
  ASSERT_EQ(cuts.size(), 1u);
  const Solution solution = solved(plate.part);
  const auto shapes = milledShapes(plate.part, solution);
  ASSERT_EQ(shapes.size(), 1u);
  const double radius = cuts[0].cutter.toInches() / 2;
  for (const CutterRun& run : cuts[0].runs) {
    for (int i = 0; i <= 20; ++i) {
      const double on = i / 20.0;
      const auto between = [&](const Coordinate& a, const Coordinate& b) {
        return a.value.toInches() + on * (b.value.toInches() - a.value.toInches());
      };
      const PlanePoint p{between(run.from.x, run.to.x), between(run.from.y, run.to.y)};
      EXPECT_LE(shapes[0].edgeFrom(p), -radius + 1e-8);
    }
  }
}

// Nobody says which slide moves first, so both ways from run to run are to be clear. By hand, with
// a cutter of 1/4 in a pocket of 2 1/2 by 29/32 whose right three fifths are 3/16 less high: four
// level runs, the odd one 1 in long. Where it is the lowest, the way to the next one is barred to
// who goes sideways first, and where it is the highest, to who goes up first; no other way is.
TEST(MilledCuts, AreLiftedWhereEitherWayBetweenTwoRunsIsBarred) {
  for (const bool standsBelow : {true, false}) {
    MilledPlate plate;
    plate.job.shop.cutters = {plate.cutter("1/4")};
    plate.inner("PL", Axis::x, "1/2");
    plate.inner("PM", Axis::x, "1 1/2");
    plate.inner("PR", Axis::x, "3");
    plate.inner("PF", Axis::y, "1/2");
    plate.inner("PN", Axis::y, standsBelow ? "11/16" : "1 7/32");
    plate.inner("PK", Axis::y, "1 13/32");
    if (standsBelow) {
      plate.outline({"PF", "PM", "PN", "PR", "PK", "PL"}, "1/4");
    } else {
      plate.outline({"PF", "PR", "PN", "PM", "PK", "PL"}, "1/4");
    }
    const auto cuts = plate.cuts();
    ASSERT_EQ(cuts.size(), 1u);
    const Runs runs = runsOf(cuts[0]);
    ASSERT_EQ(std::count_if(runs.begin(), runs.end(),
                            [](const std::string& run) { return run.starts_with("clearing"); }),
              4);
    EXPECT_TRUE(cuts[0].liftBetween) << standsBelow;
  }
}

}  // namespace
}  // namespace inchwright::test
