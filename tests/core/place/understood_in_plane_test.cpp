// What a print understands in its plane, each alone, worked out by hand.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/place/plane_rows.h"
#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

namespace inchwright::test {
namespace {

// A of 1/2 at (1, 1) and B at (3, 2); M runs at 45° through B; C of 1 is sought.
const std::string kKnown =
    "edge L x left\nedge F y front\nhole A 1/2\nhole B 1/4\nhole C 1\nline M\nb1 x L A 1\n"
    "b2 y F A 1\nb3 x A B 2\nb4 y A B 1\nr1 angle M - 45\n";

Part partOf(const std::string& lines) {
  Part part = PartText::read(kKnown + lines);
  for (Feature& feature : part.features) {
    if (auto* line = feature.as<kind::Line>()) line->through = {feature.id == "M" ? "B" : "A"};
  }
  for (Reading& reading : part.readings) {
    if (reading.to == "-") reading.to.clear();
  }
  return part;
}

TEST(UnderstoodInPlane, WhereAPlaceLies) {
  struct Row {
    const char* lines;
    double x, y;
    std::optional<Touch> touch = {};
  };
  const Row rows[] = {
      {"in_line A B C\nc x L C 4\n", 4, 2.5},
      {"in_line C A B\nc y F C 1 1/4\n", 1.5, 1.25},
      // As far from one as the next, √5; between them on what halves the way from A to B.
      {"equal A B C\nr2 angle B C 0\n", 3 + std::sqrt(5.0), 2},
      {"equal C A B\nr2 angle A C 90\n", 1, 1 + std::sqrt(5.0)},
      {"equal A C B\nc x L C 1 1/2\n", 1.5, 2.5},
      {"symmetric A C about M\n", 2, 0},
      {"symmetric C A about M\n", 2, 0},
      {"on C about M\nc x L C 4\n", 4, 3},
      {"tangent A C\nr2 angle A C 0\ntraced C 1.7 1\n", 1.75, 1},
      {"tangent A C\nr2 angle A C 0\ntraced C 1.3 1\n", 1.25, 1},
      {"tangent A C\nr2 angle A C 0\n", 1.75, 1, Touch::outside},
      {"tangent A C\nr2 angle A C 0\n", 1.25, 1, Touch::inside},
      {"tangent C A\nr2 angle A C 90\n", 1, 1.25, Touch::inside},
      // Half an inch off M, which rises at 45°: C is .7071 above it, or below.
      {"tangent C M\nc x L C 4\ntraced C 4 3.6\n", 4, 3 + std::sqrt(0.5)},
      {"tangent C M\nc x L C 4\ntraced C 4 2.2\n", 4, 3 - std::sqrt(0.5)},
  };
  for (const Row& row : rows) {
    SCOPED_TRACE(row.lines);
    Part part = partOf(row.lines);
    if (row.touch) part.understood.back().touch = *row.touch;
    if (part.understood.back().kind == UnderstandingKind::equal) {
      part.understood.back().by = EqualBy::spacing;
    }
    const auto placed = PlacedForTest::of(part);
    ASSERT_TRUE(placed.isPlaced("C", Axis::x) && placed.isPlaced("C", Axis::y));
    EXPECT_NEAR(placed.from("L", "C", Axis::x), row.x, 1e-8);
    EXPECT_NEAR(placed.from("F", "C", Axis::y), row.y, 1e-8);
    EXPECT_TRUE(placed.placed.clashes.empty());
    EXPECT_EQ(placed.placed.understood, std::set<std::uint32_t>{0});
    EXPECT_EQ(placed.placed.held.at("C").understood, std::vector<std::uint32_t>{0});
  }
}

// An arc of which only a reading says how large it is, traced half as large again.
TEST(UnderstoodInPlane, AnArcTouchesAsLargeAsItIsRead) {
  for (const char* size : {"r5 radius D 1/2", "r5 diameter D 1"}) {
    const auto placed = PlacedForTest::of(PartText::read(
        "edge L x left\nedge F y front\nedge P x\nb1 x L P 1\narc D\nb2 y F D 1\ntangent P D\n" +
        std::string(size) + "\ntraced D 1.6 1 0.75\n"));
    ASSERT_TRUE(placed.isPlaced("D", Axis::x)) << size;
    EXPECT_NEAR(placed.from("L", "D", Axis::x), 1.5, 1e-8) << size;
  }
}

// N through A, and how far it is turned from M.
TEST(UnderstoodInPlane, HowALineRuns) {
  for (const auto& [lines, degrees] :
       {std::pair("parallel M N\n", 45.0), std::pair("parallel N M\n", 45.0),
        std::pair("square M N\n", 135.0), std::pair("square N M\n", 135.0)}) {
    const auto placed = PlacedForTest::of(partOf(std::string("line N\n") + lines));
    ASSERT_TRUE(placed.placed.lines[0].contains("N")) << lines;
    const PlaneLine& line = placed.placed.lines[0].at("N");
    EXPECT_NEAR(std::remainder(line.direction * 180 / std::numbers::pi - degrees, 180), 0, 1e-7);
    EXPECT_NEAR(leftOf(line, {1, 1}), 0, 1e-9) << lines;
  }
}

// C lies square off M by so much: half an inch up and to the left of it, or down and to the right.
TEST(UnderstoodInPlane, HowFarOffALineAPlaceLies) {
  for (const int side : {1, -1}) {
    Part part = partOf("c x L C 4\ntraced C 4 " + std::string(side > 0 ? "3.6" : "2.4") + "\n");
    Reading reading;
    reading.id = "r2";
    reading.kind = ReadingKind::squareOff;
    reading.from = "C";
    reading.to = "M";
    reading.figure = *readLength("1/2");
    part.readings.push_back(reading);
    const auto placed = PlacedForTest::of(part);
    ASSERT_TRUE(placed.isPlaced("C", Axis::y)) << side;
    EXPECT_NEAR(placed.from("F", "C", Axis::y), 3 + side * std::sqrt(0.5), 1e-8);
  }
}

// In decimal places of a degree; minutes are two of them, seconds four.
TEST(UnderstoodInPlane, HowFinelyAnAngleIsLettered) {
  for (const auto& [text, places] :
       {std::pair("22", 0), std::pair("22 1/2", 0), std::pair("22°", 0), std::pair("22.5°", 1),
        std::pair("22.50", 2), std::pair("22° 30'", 2), std::pair("22° 30′", 2),
        std::pair("22° 30' 15\"", 4), std::pair("22° 30′ 15″", 4), std::pair("22.5 ±.25", 1)}) {
    Reading reading;
    reading.kind = ReadingKind::angle;
    reading.figure.text = text;
    EXPECT_EQ(placesOfAngle(reading), places) << text;
  }
}

// A copy that lies seven inches along and four up. Three holes in the front are traced in a view of
// their own, far off: where C is traced is told by the holes of its own view.
TEST(UnderstoodInPlane, WhatIsTracedInAnotherViewMovesNothing) {
  const std::string text =
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\nb1 x L A 1/2\n"
      "b2 y F A 3/4\nb3 x A B 3\nin_line y A B\nr1 centres A C 2 1/2\nr2 centres B C 2 1/2\n"
      "traced A 7.5 4.75\ntraced B 10.5 4.75\ntraced C 9 6.75\n";
  for (const char* face : {"front", "top"}) {
    std::string more;
    for (const char* id : {"S", "T", "U"}) {
      more += "hole " + std::string(id) + " 1/8 " + face + "\nc" + id + " x L " + id + " 1\n" +
              "traced " + id + " 31 1\n";
    }
    const auto placed = PlacedForTest::of(PartText::read(text + more));
    EXPECT_EQ(placed.isPlaced("C", Axis::y), face == std::string("front"));
    if (!placed.isPlaced("C", Axis::y)) continue;
    EXPECT_NEAR(placed.from("F", "C", Axis::y), 2.75, 1e-8);
    EXPECT_NEAR(placed.from("L", "C", Axis::x), 2, 1e-8);
  }
}

}  // namespace
}  // namespace inchwright::test
