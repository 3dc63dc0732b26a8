#include "core/checks/checks.h"

#include <gtest/gtest.h>

#include "tests/core/checks/held_plate.h"

namespace inchwright::test {
namespace {

HeldPlate plate() {
  HeldPlate made("4", "2", "1");
  made.hole("A", "1", "1", "1/4");
  return made;
}

kind::Slot slotAlongX(const char* width, const char* length) {
  kind::Slot slot;
  slot.axis = Axis::x;
  slot.width = lettered(width);
  slot.length = lettered(length);
  return slot;
}

TEST(Checks, FindNothingWhereNothingIsAmiss) {
  EXPECT_EQ(linesOf(plate().findings()), Lines{});
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.setup.stop = Side::left;
  held.vice("1 1/2");
  held.parallel(Jaw::fixed, "1/8", "1", "0");
  held.parallel(Jaw::moving, "1/8", "1", "0");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Parallel, IsMetFromEitherJaw) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  // The hole's edge with its margin reaches from .84375 to 1.15625 off either jaw.
  held.parallel(Jaw::fixed, "1/8", "1", "3/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.0313"});
  EXPECT_EQ(held.findings()[0].shift, inch("-1/32"));
  held.setup.held.parallels->clear();
  held.parallel(Jaw::moving, "1/8", "1", "1 1/8");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.0313"});
  EXPECT_EQ(held.findings()[0].shift, inch("1/32"));
  // In the very middle: it has to go all the way out.
  held.setup.held.parallels->clear();
  held.parallel(Jaw::fixed, "1/8", "1", "15/16");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.2188"});
}

TEST(Parallel, JustTouchingIsNotMet) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.parallel(Jaw::fixed, "1/8", "1", decimal(8'437 - 1'250));
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Parallel, IsMeasuredFromTheStockAtTheJaw) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.setup.stock[static_cast<std::size_t>(Side::front)] = lettered("1/8");
  held.parallel(Jaw::fixed, "1/8", "1", "3/4");  // now 5/8 to 3/4 of the finished part
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.held.parallels->front().gap = lettered("7/8");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.0313"});
}

TEST(Parallel, LiesOnlyFromToAlongTheJaw) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  LaidParallel& one = held.parallel(Jaw::fixed, "1/8", "1", "15/16");
  one.from = lettered("1 1/2");
  one.to = lettered("4");
  EXPECT_EQ(linesOf(held.findings()), Lines{}) << "from the left end as it lies";
  held.setup.stop = Side::right;  // then from there: 0 to 2 1/2 in of the part
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.2188"});
  held.setup.stop.reset();
  held.setup.turn = 180;  // the right side lies to the left
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.2188"});
}

TEST(Parallel, IsMetByThroughWorkAlone) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.parallel(Jaw::fixed, "1/8", "1", "15/16");
  held.blind("A", "1/2");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.jaw.reset();
  held.blind("A", "1/2");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Parallel, TheSlotIsMetAlongItsLength) {
  HeldPlate held("4", "2", "1");
  Feature slot;
  slot.id = "S";
  slot.shape = slotAlongX("1/4", "2 1/4");
  held.part.features.push_back(slot);
  held.read(Axis::x, "L", "S", "2");
  held.read(Axis::y, "F", "S", "1");
  held.setup.jaw = Side::front;
  LaidParallel& one = held.parallel(Jaw::fixed, "1/8", "1", "3/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel S 0.0313"});
  one.from = lettered("3 1/4");  // the slot ends at 3 1/8, with its margin at 3 5/32
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.held.parallels->front().from = lettered("2 3/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel S 0.0313"});
}

TEST(Jaw, IsMetBelowItsTopAlone) {
  HeldPlate held("4", "2", "1");
  Drilled& seat = held.hole("A", "2", "1/4", "1/4");
  seat.make = Make::counterbore;
  seat.seatDiameter = lettered("1/2");
  seat.seatDepth = lettered("1/4");
  held.setup.jaw = Side::front;
  held.vice("1 3/4");
  held.parallel(Jaw::fixed, "1/8", "1", "0");
  // Jaws begin 1 + 1 − 1 3/4 = 1/4 below the face: the seat just does not reach it.
  EXPECT_EQ(linesOf(held.findings()), Lines{"parallel A 0.0313"});
  held.vice("1.8");
  held.setup.held.parallels->front().thick = lettered("1/16");
  EXPECT_EQ(linesOf(held.findings()), Lines{"jaw A 0.0313"});
  EXPECT_EQ(held.findings()[0].jaw, Jaw::fixed);
  held.setup.jaw = Side::back;
  EXPECT_EQ(linesOf(held.findings()), Lines{"jaw A 0.0313"});
  EXPECT_EQ(held.findings()[0].jaw, Jaw::moving);
  // Where the work stands out of the jaws there is none.
  held.setup.held.overhang[static_cast<std::size_t>(Side::left)] = lettered("2 1/2");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

// Of a vice of which nobody said how high its jaws are, or where nobody knows how thick the work
// is.
TEST(Jaw, IsNotMetWhereItsHeightIsUnknown) {
  HeldPlate held("4", "2", "1");
  held.hole("A", "2", ".2", "1/4");
  held.setup.jaw = Side::front;
  held.setup.held.clearOf.clear();
  held.job.shop.margins.emplace();
  held.job.shop.margins->around = lettered("1/8");
  held.vice("1/2");
  EXPECT_EQ(linesOf(held.findings()), Lines{"jaw A 0.0500"}) << "1/8 wanted, .075 there";
  held.job.shop.vice->jawHeight.reset();
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Stop, IsMetByWhatReachesOverItsSide) {
  HeldPlate held("4", "2", "1");
  Drilled& seat = held.hole("A", "1/4", "1", "1/4");
  seat.make = Make::counterbore;
  seat.seatDiameter = lettered("1/2");
  held.setup.stop = Side::left;
  EXPECT_EQ(linesOf(held.findings()), Lines{"stop A 0.0313"});
  held.setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/16");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

Obstacle obstacle(const char* x0, const char* x1, const char* y0, const char* y1) {
  Obstacle one;
  one.along[0] = {lettered(x0), lettered(x1)};
  one.along[1] = {lettered(y0), lettered(y1)};
  return one;
}

TEST(Clamp, IsMetFromAboveWhateverTheDepth) {
  HeldPlate held = plate();
  held.blind("A", "1/8");
  held.setup.held.clamps = {obstacle("1.1", "2", "0", "2")};
  EXPECT_EQ(linesOf(held.findings()), Lines{"clamp A 0.0563"});
  held.setup.held.clamps = {obstacle("0", "1/2", "0", "2")};
  held.setup.held.clearOf = {obstacle("1 1/8", "1 1/2", "1 1/8", "1 1/2")};
  // Corner to corner: √2/8 = .1768 away, .15625 wanted.
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.held.clearOf = {obstacle("1.1", "1 1/2", "1.1", "1 1/2")};
  EXPECT_EQ(linesOf(held.findings()), Lines{"clear_of A 0.0148"});
  EXPECT_EQ(held.findings()[0].which, 0u);
}

TEST(Clamp, IsMeasuredFromTheFinishedSidesWhateverZeroIs) {
  HeldPlate held = plate();
  held.setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/4");
  ZeroAlong zero;
  zero.axis = Axis::x;
  zero.middle = {"L", "R"};
  held.setup.zero = {zero};
  held.setup.turn = 90;
  held.setup.held.clamps = {obstacle("1.1", "2", "0", "2")};
  EXPECT_EQ(linesOf(held.findings()), Lines{"clamp A 0.0563"});
}

TEST(ViceBed, IsMetWhereTheParallelsAreTooLow) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  // Point .0751 and 1/32: .1064.
  held.parallel(Jaw::fixed, "1/8", "0.1", "0");
  EXPECT_EQ(linesOf(held.findings()), Lines{"vice_bed A 0.0064"});
  held.setup.held.parallels->front().tall = lettered("0.11");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.held.parallels->clear();
  EXPECT_EQ(linesOf(held.findings()), Lines{"vice_bed A 0.1064"}) << "flat on the bed";
  held.setup.held.parallels.reset();
  EXPECT_EQ(linesOf(held.findings()), Lines{}) << "nobody said";
  held.parallel(Jaw::fixed, "1/8", "0.11", "0");
  held.part.features.back().drilled()->make = Make::ream;  // a machine reamer goes 1/8 below
  EXPECT_EQ(linesOf(held.findings()), Lines{"vice_bed A 0.0150"});
}

TEST(BreaksInto, OfOneFace) {
  HeldPlate held = plate();
  held.hole("B", "1.27", "1", "1/4");  // a wall of .02
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0113"});
  held.part.features.back().drilled()->meets = {"A"};
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  HeldPlate through = plate();
  through.hole("B", "1.2", "1", "1/4");  // .05 into each other
  EXPECT_EQ(linesOf(through.findings()), Lines{"breaks_into A B 0.0813"});
  HeldPlate exact = plate();
  exact.hole("B", "1 9/32", "1", "1/4");  // just 1/32
  EXPECT_EQ(linesOf(exact.findings()), Lines{});
}

TEST(BreaksInto, OfFacesAcross) {
  HeldPlate held = plate();
  held.hole("B", "1", "1/2", "1/4", Face::front);  // under A, right through
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.2813"});
  held.blind("B", "3/4");  // its point reaches .7500 + .0751, A begins at .875
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.blind("B", ".79");  // tip at .8651: .0099 left
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0214"});
  held.blind("B", "1/2");
  held.hole("C", "1.27", "1/2", "1/4", Face::front);
  EXPECT_EQ(linesOf(held.findings()), (Lines{"breaks_into A C 0.0113", "breaks_into B C 0.0113"}));
}

TEST(BreaksInto, OfFacesOpposite) {
  HeldPlate held = plate();
  held.blind("A", "1/2");
  held.hole("B", "1", "1", "1/4", Face::bottom);
  held.blind("B", "3/8");
  // Tips at 1 − .5751 and .4501: .0252 into each other, but as bodies they only touch tip to tip.
  EXPECT_EQ(linesOf(held.findings()).size(), 1u);
  held.blind("B", "1/4");  // .0998 left
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.blind("B", "0.33");  // .0198 left
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0115"});
}

TEST(BreaksInto, CountsTheDeeperDrillUnderAReamer) {
  HeldPlate held = plate();
  held.part.features.back().drilled()->make = Make::ream;
  held.blind("A", "1/2");
  // Drilled .242 to .5 + 1/32 + .0605 with a point of .0727: the tip is .66445 deep, .33555 above
  // U.
  held.hole("B", "1", "0.2", "1/4", Face::front);  // its top at .325
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0207"});
  // What is left on the face is drilled away first: the hole in the finished part is the same.
  held.setup.stock[static_cast<std::size_t>(Side::top)] = lettered("1/16");
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0207"});
}

TEST(BreaksInto, WithoutAThicknessThroughHolesOfAFaceStillCount) {
  HeldPlate held = plate();
  held.part.features.erase(held.part.features.begin() + 4, held.part.features.begin() + 6);
  held.part.readings.erase(held.part.readings.begin() + 2);
  held.hole("B", "1.27", "1", "1/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0113"});
  held.blind("A", "1/2");
  held.blind("B", "1/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_into A B 0.0113"});
}

TEST(Outline, BreaksOutAndThinWall) {
  HeldPlate held("4", "2", "1");
  held.hole("A", ".1", "1", "1/4");       // .025 out
  held.hole("B", ".14", "1 1/2", "1/4");  // a wall of .015
  held.hole("C", "4.05", "1", "1/4");     // beyond the side
  EXPECT_EQ(linesOf(held.findings()),
            (Lines{"breaks_out A 0.0250", "breaks_out C 0.1750", "thin_wall B 0.0163"}));
  EXPECT_TRUE(held.findings()[0].nowToo);
  held.setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/4");
  EXPECT_FALSE(held.findings()[0].nowToo) << "drill it before that side is cut down";
  for (Feature& feature : held.part.features) {
    if (feature.drilled()) feature.drilled()->breaksOut = true;
  }
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Outline, GoesByRoundedCorners) {
  HeldPlate held("4", "2", "1");
  Feature corner;
  corner.id = "Q";
  kind::Round round;
  round.radius = lettered("1");
  round.corner = {"L", "F"};
  corner.shape = round;
  held.part.features.push_back(corner);
  // Its centre is (1, 1): a hole at (.4, .4) lies .8485 from it, with its edge at .9735.
  held.hole("A", ".4", ".4", "1/4");
  held.hole("B", ".34", ".34", "1/4");  // .9334 and 1.0584
  held.hole("C", ".1", ".1", "1/8");    // beyond the corner altogether: 1.2728 and 1.3353
  held.hole("D", "2", "1", "1/4");
  EXPECT_EQ(linesOf(held.findings()), (Lines{"breaks_into A B 0.1964", "breaks_out B 0.0584",
                                             "breaks_out C 0.3353", "thin_wall A 0.0048"}));
}

TEST(Outline, BreaksOutIsSilencedAgainstTheOutlineAlone) {
  HeldPlate held("4", "2", "1");
  held.hole("A", "2", "0", "1/4").breaksOut = true;
  held.setup.jaw = Side::front;
  held.vice("1 1/2");
  held.parallel(Jaw::fixed, "1/8", "1", "0");
  EXPECT_EQ(linesOf(held.findings()), (Lines{"jaw A 0.1563", "parallel A 0.1563"}));
}

TEST(Outline, BreaksThroughCountsThePointAndTheLead) {
  HeldPlate held = plate();
  held.blind("A", "7/8");  // tip at .9501; .9687 is allowed
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.blind("A", ".9");  // .9751
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_through A 0.0064"});
  held.part.features.back().drilled()->make = Make::tap;
  held.part.features.back().drilled()->thread = "1/4-20 UNC";
  held.blind("A", ".85");  // even a bottoming tap's .1, and the drill's point below that
  EXPECT_EQ(linesOf(held.findings()), Lines{"breaks_through A 0.0416"});
}

TEST(Tools, WhatIsNotOwnedIsNamedOnceForAlikeHoles) {
  HeldPlate held = plate();
  held.hole("B", "2", "1", "1/4");
  held.hole("C", "3", "1", "3/16");
  held.job.shop.drills.emplace();
  held.job.shop.drills->push_back({*readDrillSet("3/16"), std::nullopt, {}});
  EXPECT_EQ(linesOf(held.findings()), Lines{"no_tool A B"});
  EXPECT_EQ(held.findings()[0].lacking->why, Lacking::Why::noDrillOfSize);
}

TEST(Tools, FlutesAreToldOfInTheSetupThatHasTheFaceUp) {
  HeldPlate held("4", "2", "1");
  held.hole("A", "1", "1/2", "1/4", Face::front).make = Make::ream;
  held.job.shop.reamers.emplace();
  held.job.shop.reamers->push_back({lettered("1/4"), {}, lettered("1 1/2"), {}, {}});
  EXPECT_EQ(linesOf(held.findings()), Lines{}) << "the front is not up";
  held.setup.face = Face::front;
  EXPECT_EQ(linesOf(held.findings()), Lines{"too_deep A 0.5000"});
}

TEST(Tools, FlutesAndCutters) {
  HeldPlate held("4", "2", "1");
  Feature slot;
  slot.id = "S";
  slot.shape = slotAlongX("1/4", "1");
  slot.as<kind::Slot>()->cutter = lettered("5/16");
  held.part.features.push_back(slot);
  held.read(Axis::x, "L", "S", "2");
  held.read(Axis::y, "F", "S", "1");
  EXPECT_EQ(linesOf(held.findings()), Lines{"cutter_too_big S 0.0625"});
  held.part.features.back().as<kind::Slot>()->cutter.reset();
  held.job.shop.cutters.emplace();
  EXPECT_EQ(linesOf(held.findings()), Lines{"no_tool S"});
  held.job.shop.cutters->push_back({lettered("3/16"), 2, lettered("3/4"), {}, {}, {}});
  EXPECT_EQ(linesOf(held.findings()), Lines{"too_deep S 0.2813"});  // 1 1/32 asked of 3/4
}

TEST(Tools, ADrillTickedOffAtTheReamersSize) {
  HeldPlate held = plate();
  held.part.features.back().drilled()->make = Make::ream;
  MadePlace made;
  made.place = "A";
  made.setup = "1";
  made.ticks = {"spot", "C"};
  held.part.made = {made};
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.part.made[0].ticks.push_back("drill 1/4");
  EXPECT_EQ(linesOf(held.findings()), Lines{"drill_at_ream_size A 0.0000"});
}

TEST(Room, GripIsAnEighthAndAThird) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.vice("1 1/4");
  held.parallel(Jaw::fixed, "1/8", "1", "0");  // 1/4 held of an inch
  EXPECT_EQ(linesOf(held.findings()), Lines{"grip 0.0833"});
  held.vice("1.3334");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.vice("7/8");  // parallels above the jaw
  EXPECT_EQ(linesOf(held.findings()), Lines{"grip 0.4583"});
  held.setup.jaw.reset();
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Room, WorkGoesBetweenTheJaws) {
  HeldPlate held = plate();
  held.setup.jaw = Side::front;
  held.vice("2");
  held.job.shop.vice->opens = lettered("2");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.setup.stock[static_cast<std::size_t>(Side::back)] = lettered("1/16");
  EXPECT_EQ(linesOf(held.findings()), Lines{"grip 0.0625"});
  held.setup.jaw = Side::left;
  EXPECT_EQ(linesOf(held.findings()), Lines{"grip 2.0000"});
  held.setup.jaw.reset();
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Room, TravelGoesByTheMachinesAxes) {
  HeldPlate held = plate();
  held.hole("B", "3 1/2", "1", "1/4");
  held.job.machine.travel[0] = lettered("2");
  held.job.machine.travel[1] = lettered("3");
  EXPECT_EQ(linesOf(held.findings()), Lines{"travel A B 0.5000"});
  held.setup.turn = 90;  // now they lie one behind the other
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Room, HeadroomIsTheDifferenceOfTools) {
  HeldPlate held = plate();
  held.part.features.back().drilled()->make = Make::ream;
  held.job.shop.drills.emplace();
  held.job.shop.drills->push_back({*readDrillSet("C"), lettered("2"), {}});
  held.job.shop.reamers = {{lettered("1/4"), ReamedBy::machine, {}, lettered("5 1/2"), {}}};
  EXPECT_EQ(linesOf(held.findings()), Lines{});
  held.job.machine.quill = lettered("3");
  EXPECT_EQ(linesOf(held.findings()), Lines{"headroom 0.5000"});
  held.job.machine.quill = lettered("3 1/2");
  EXPECT_EQ(linesOf(held.findings()), Lines{});
}

TEST(Pieces, KeepTheStockAtStopAndJaw) {
  HeldPlate held = plate();
  held.setup.stop = Side::right;
  held.setup.jaw = Side::front;
  held.setup.stock[static_cast<std::size_t>(Side::right)] = lettered("1/16");
  StockPiece good, bad;
  good.name = "1";
  good.size[0] = lettered("4.0625");
  good.size[1] = lettered("2 1/8");
  bad.name = "2";
  bad.size[0] = lettered("4.05");
  held.setup.held.pieces = {good, bad};
  const Solution solution = solved(held.part);
  const auto left = piecesLeft(held.setup, WorkBlock(held.part, solution, &held.setup));
  ASSERT_EQ(left.size(), 2u);
  EXPECT_TRUE(left[0].cleansUp) << "nothing left is enough";
  EXPECT_EQ(left[0].left[static_cast<std::size_t>(Side::left)], Length());
  EXPECT_EQ(left[0].left[static_cast<std::size_t>(Side::right)], inch("1/16"));
  EXPECT_EQ(left[0].left[static_cast<std::size_t>(Side::back)], inch("1/8"));
  EXPECT_FALSE(left[0].left[static_cast<std::size_t>(Side::top)]);
  EXPECT_FALSE(left[1].cleansUp);
  EXPECT_EQ(left[1].left[static_cast<std::size_t>(Side::left)], inch("-0.0125"));
  EXPECT_EQ(linesOf(held.findings()), Lines{"stock_too_small 0.0125"});
  EXPECT_EQ(held.findings()[0].piece, "2");
}

}  // namespace
}  // namespace inchwright::test
