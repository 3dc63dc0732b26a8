#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/core/plan/milled_plate.h"

namespace inchwright::test {
namespace {

Lines milledLines(const MilledPlate& plate) {
  Lines lines;
  for (const std::string& line : linesOf(plate.findings())) {
    if (line.starts_with("breaks_into") || line.starts_with("breaks_through")) {
      lines.push_back(line);
    }
  }
  return lines;
}

MilledPlate slotted() {
  MilledPlate plate;
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", "3/16");
  return plate;
}

TEST(MilledChecks, ASlotAgainstAHole) {
  MilledPlate beside = slotted();
  beside.hole("A", "1 1/4", "2.52", "1/4");
  EXPECT_EQ(milledLines(beside), Lines{"breaks_into S A 0.0113"});
  MilledPlate clear = slotted();
  clear.hole("A", "1 1/4", "2.5313", "1/4");
  EXPECT_EQ(milledLines(clear), Lines{});
  // Off the end: its round end, not a square one.
  MilledPlate off = slotted();
  off.hole("A", "1.8", "2.45", "1/4");
  const double wall = std::hypot(0.175, 0.2) - 0.25;
  EXPECT_EQ(milledLines(off),
            Lines{"breaks_into S A " + decimal(std::llround((1.0 / 32 - wall) * 10'000))});
  MilledPlate across = slotted();
  across.hole("A", "1 1/4", "2 3/8", "1/4");
  EXPECT_EQ(milledLines(across), Lines{"breaks_into S A 0.1563"});
  across.part.features.back().drilled()->meets = {"S"};
  EXPECT_EQ(milledLines(across), Lines{});
  MilledPlate bySlot = slotted();
  bySlot.part.features.back().as<kind::Slot>()->meets = {"A"};
  bySlot.hole("A", "1 1/4", "2 3/8", "1/4");
  EXPECT_EQ(milledLines(bySlot), Lines{});
  MilledPlate within = slotted();
  within.hole("A", "1 5/8", "2 1/4", "1/4");
  EXPECT_EQ(milledLines(within), Lines{}) << "it goes down from the slot's floor";
}

// A print without a thickness: what runs into each other in one face does so at any.
TEST(MilledChecks, WithoutAThickness) {
  const auto thin = [](MilledPlate plate) {
    std::erase_if(plate.part.features,
                  [](const Feature& one) { return one.id == "U" || one.id == "T"; });
    std::erase_if(plate.part.readings, [](const Reading& one) { return one.axis == Axis::z; });
    return plate;
  };
  for (const char* depth : {"", "3/16"}) {
    MilledPlate plate;
    plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", depth);
    MilledPlate clear = plate;
    clear.hole("A", "1 1/4", "2.5313", "1/4");
    EXPECT_EQ(milledLines(thin(clear)), Lines{}) << depth;
    MilledPlate across = plate;
    across.hole("A", "1 1/4", "2 3/8", "1/4");
    EXPECT_EQ(milledLines(thin(across)), Lines{"breaks_into S A 0.1563"}) << depth;
    MilledPlate slots = plate;
    slots.slot("W", Axis::y, "1/4", "1", "1 1/4", "2", depth);
    EXPECT_EQ(milledLines(thin(slots)).size(), 1u) << depth;
    // Nobody knows how high this one lies.
    MilledPlate side = plate;
    side.part.features.push_back(Feature());
    side.part.features.back().id = "B";
    side.part.features.back().face = Face::front;
    side.part.features.back().shape = kind::Hole{{.diameter = lettered("1/4")}};
    EXPECT_EQ(milledLines(thin(side)), Lines{}) << depth;
  }
}

TEST(MilledChecks, HolesOfOtherFaces) {
  // From the front, its upper side 1/64 below the slot's floor.
  MilledPlate under = slotted();
  under.hole("A", "1 1/4", "0.1718", "9/32", Face::front);
  const Lines lines = milledLines(under);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0], "breaks_into S A 0.0312");
  MilledPlate low = slotted();
  low.hole("A", "1 1/4", "1/8", "1/8", Face::front);
  EXPECT_EQ(milledLines(low), Lines{});
  // From below, its point short of the floor by so much.
  MilledPlate below = slotted();
  below.hole("A", "1 1/4", "2 1/4", "1/4", Face::bottom);
  below.blind("A", "1/4");
  EXPECT_EQ(milledLines(below).size(), 1u);
  below.blind("A", "1/8");
  EXPECT_EQ(milledLines(below), Lines{});
  // The floor is .3125 up and the point .0751 long: a hole .2218 deep leaves .0156 of the .03125.
  below.blind("A", ".2218");
  EXPECT_EQ(milledLines(below), Lines{"breaks_into S A 0.0157"});
  below.blind("A", ".2061");  // .0313
  EXPECT_EQ(milledLines(below), Lines{});
  // The same upside down: the slot from below, the hole from above.
  MilledPlate above = slotted();
  above.part.features.back().face = Face::bottom;
  above.hole("A", "1 1/4", "2 1/4", "1/4");
  above.blind("A", ".2218");
  EXPECT_EQ(milledLines(above), Lines{"breaks_into S A 0.0157"});
  above.blind("A", ".2061");
  EXPECT_EQ(milledLines(above), Lines{});
}

TEST(MilledChecks, SlotsAndPocketsAgainstEachOther) {
  MilledPlate cross = slotted();
  cross.slot("W", Axis::y, "1/4", "1", "1 1/4", "2", "1/8");
  EXPECT_EQ(milledLines(cross).size(), 1u);
  cross.part.features.back().as<kind::Slot>()->meets = {"S"};
  EXPECT_EQ(milledLines(cross), Lines{});
  MilledPlate pocket = slotted();
  pocket.pocket("1/2", "1 1/2", "1/2", "1.61", "1/8");
  EXPECT_EQ(milledLines(pocket), Lines{"breaks_into S pocket 0.0163"});
  pocket.part.features[6].as<kind::Slot>()->meets = {"PK"};
  EXPECT_EQ(milledLines(pocket), Lines{}) << "a pocket goes by what it follows";
  MilledPlate apart = slotted();
  apart.pocket("1/2", "1 1/2", "1/2", "1 1/2", "1/8");
  EXPECT_EQ(milledLines(apart), Lines{});
}

TEST(MilledChecks, APocketAgainstHoles) {
  MilledPlate plate;
  plate.pocket("1/2", "1 1/2", "1/2", "1", "1/4");
  plate.hole("A", "1", "1", "1/4");  // on its floor
  EXPECT_EQ(milledLines(plate), Lines{});
  plate.hole("B", "2 1/8", "1", "7/32");  // 1/64 beside its wall
  plate.hole("C", "2", "1 1/2", "1/4");   // over its corner
  EXPECT_EQ(milledLines(plate),
            (Lines{"breaks_into pocket B 0.0156", "breaks_into pocket C 0.1563"}));
  plate.part.features.back().drilled()->meets = {"PK"};
  EXPECT_EQ(milledLines(plate), Lines{"breaks_into pocket B 0.0156"});
}

TEST(MilledChecks, AFloorTooThin) {
  MilledPlate plate;
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", "31/64");
  EXPECT_EQ(milledLines(plate), Lines{"breaks_through S 0.0156"});
  plate.part.features.back().as<kind::Slot>()->depth.length = lettered("15/32");
  EXPECT_EQ(milledLines(plate), Lines{});
}

// Sizes that are just enough, though they go through arithmetic that rounds. 0.00000001 mm is one
// tick, the least that a length is told apart by.
TEST(MilledChecks, ATickOfRoundingIsNoFault) {
  const auto corners = [](const char* radius, const char* cutter) {
    MilledPlate plate;
    plate.pocket("1/2", "1 1/2", "1/2", "1", "1/4", radius);
    plate.job.shop.cutters = {MilledPlate::cutter("1/2"), MilledPlate::cutter(cutter)};
    Lines lines;
    for (const std::string& line : linesOf(plate.findings())) {
      if (line.starts_with("corner_too_tight")) lines.push_back(line);
    }
    return lines;
  };
  EXPECT_EQ(corners("1/8", "1/4"), Lines{});
  EXPECT_EQ(corners("3.17499999 mm", "1/4"), Lines{});
  EXPECT_EQ(corners("3.17499998 mm", "1/4").size(), 4u);
  EXPECT_EQ(corners("1/8", "5/16"),  // by half of 1/16
            (Lines{"corner_too_tight C1 0.0313", "corner_too_tight C2 0.0313",
                   "corner_too_tight C3 0.0313", "corner_too_tight C4 0.0313"}));
  // A corner rounded by 1 about (1, 1), and a hole .48 and .64 off that: .8 of 1, and with half
  // of .3375 there are .03125 left. A hole two ticks larger leaves one tick less.
  const auto wall = [](const char* size) {
    MilledPlate plate;
    plate.round("Q", "L", "F", "1");
    plate.hole("A", ".52", ".36", size);
    Lines lines;
    for (const std::string& line : linesOf(plate.findings())) {
      if (line.starts_with("thin_wall")) lines.push_back(line);
    }
    return lines;
  };
  EXPECT_EQ(wall(".3375"), Lines{});
  EXPECT_EQ(wall("8.57250002 mm"), Lines{});
  EXPECT_EQ(wall("8.57250004 mm"), Lines{"thin_wall A 0.0000"});
}

// A pocket that is as large as the plate, and a slot along its edge; one open at an end is meant.
TEST(MilledChecks, OuterSides) {
  const auto sides = [](const MilledPlate& plate) {
    Lines lines;
    for (const std::string& line : linesOf(plate.findings())) {
      if (line.starts_with("breaks_out") || line.starts_with("thin_wall")) lines.push_back(line);
    }
    return lines;
  };
  MilledPlate pocket;
  pocket.pocket("1/64", "1 1/2", "1/2", "1", "1/4");
  EXPECT_EQ(sides(pocket), Lines{"thin_wall pocket 0.0156"});
  MilledPlate out;
  out.pocket("1/2", "3 5/8", "1/2", "1", "1/4");
  EXPECT_EQ(sides(out), Lines{"breaks_out pocket 0.1250"});
  MilledPlate along;
  along.slot("S", Axis::x, "1/4", "1", "1 1/4", "9/64", "3/16");
  EXPECT_EQ(sides(along), Lines{"thin_wall S 0.0156"});
  MilledPlate open;
  open.slot("S", Axis::x, "1/4", "1", "3/8", "1", "3/16");
  EXPECT_EQ(sides(open), Lines{});
}

// A parallel under a through slot that runs askew, a curved one and a through pocket.
TEST(MilledChecks, WhatLiesUnderThem) {
  const auto found = [](MilledPlate& plate) {
    plate.setup.jaw = Side::front;
    plate.parallel(Jaw::fixed, "1/8", "1", "1");  // from 1 to 1 1/8
    Lines lines;
    for (const std::string& line : linesOf(plate.findings())) {
      if (line.starts_with("parallel")) lines.push_back(line);
    }
    return lines;
  };
  MilledPlate askew;
  askew.point("E1", "1", "1/2");
  askew.point("E2", "2", "1 1/2");
  kind::Slot shape;
  shape.width = lettered("1/4");
  shape.ends = {"E1", "E2"};
  shape.depth.through = true;
  Feature feature;
  feature.id = "S";
  feature.shape = shape;
  askew.part.features.push_back(feature);
  // Its way crosses the parallel; deepest in the middle of it, 1/16 from either side.
  EXPECT_EQ(found(askew), Lines{"parallel S 0.2188"});
  MilledPlate curved;
  curved.curvedSlot("1/4", "2", "");
  const Lines under = found(curved);  // to a millionth of an inch
  ASSERT_EQ(under.size(), 1u);
  EXPECT_TRUE(under[0].starts_with("parallel V 0.218")) << under[0];
  MilledPlate pocket;
  pocket.pocket("1/2", "1 1/2", "1/2", "1", "");
  EXPECT_EQ(found(pocket).size(), 1u);
  MilledPlate blind;
  blind.pocket("1/2", "1 1/2", "1/2", "1", "1/4");
  EXPECT_EQ(found(blind), Lines{});
}

// Whether metal stays between, looked at point by point: a fine grid over what a slot takes away.
double wallByGrid(double x, double y, double half, double radius, bool alongX, double floor,
                  double hx, double hy, double hr, double low, double high) {
  double least = 1e9;
  const double zGap = std::max({0.0, floor - high, low - 0.5});
  for (int i = 0; i <= 4000; ++i) {
    const double on = -half + 2 * half * i / 4000;
    const double px = x + (alongX ? on : 0), py = y + (alongX ? 0 : on);
    const double beside = std::hypot(px - hx, py - hy) - radius - hr;
    const double wall = zGap > 0 ? std::hypot(std::max(beside, 0.0), zGap) : beside;
    least = std::min(least, wall);
  }
  return least;
}

TEST(MilledChecks, FindWhatAGridFindsAndNothingElse) {
  std::mt19937 random(4711);
  std::uniform_int_distribution<int> at(80, 300), depth(10, 40), size(8, 24);
  int found = 0;
  for (int trial = 0; trial < 300; ++trial) {
    const auto hundredths = [](int value) { return decimal(std::int64_t{value} * 100); };
    MilledPlate plate;
    const bool alongX = trial % 2 == 0, fromBelow = trial % 3 == 0;
    const int x = at(random), y = at(random) * 2 / 3, deep = depth(random), width = size(random);
    plate.slot("S", alongX ? Axis::x : Axis::y, hundredths(width), hundredths(80), hundredths(x),
               hundredths(y), hundredths(deep));
    const int hx = x + at(random) % 90 - 45, hy = y + at(random) % 60 - 30, hole = size(random);
    plate
        .hole("A", hundredths(hx), hundredths(hy), hundredths(hole),
              fromBelow ? Face::bottom : Face::top)
        .make = Make::bore;
    const int hd = depth(random);
    plate.part.features.back().drilled()->depth = {false, lettered(hundredths(hd))};
    // A flat bottom: nothing of the shop's drills under it, so that the grid is simple.
    plate.job.shop.drills.emplace();
    plate.job.shop.cutters.emplace();
    const double radius = width / 200.0, half = 0.4 - radius;
    const double low = fromBelow ? 0 : 0.5 - hd / 100.0, high = fromBelow ? hd / 100.0 : 0.5;
    const double wall = wallByGrid(x / 100.0, y / 100.0, half, radius, alongX, 0.5 - deep / 100.0,
                                   hx / 100.0, hy / 100.0, hole / 200.0, low, high);
    const double off = std::abs(alongX ? hy - y : hx - x) / 100.0;
    const double on = std::max(0.0, std::abs(alongX ? hx - x : hy - y) / 100.0 - half);
    const bool within = !fromBelow && std::hypot(off, on) + hole / 200.0 <= radius + 1e-9;
    const bool wanted = wall < 1.0 / 32 - 1e-6 && !within;
    const Lines lines = milledLines(plate);
    const bool is = std::any_of(lines.begin(), lines.end(), [](const std::string& one) {
      return one.starts_with("breaks_into");
    });
    EXPECT_EQ(is, wanted) << "trial " << trial << ": wall " << wall;
    found += is;
  }
  EXPECT_GT(found, 60);
  EXPECT_LT(found, 250);
}

}  // namespace
}  // namespace inchwright::test
