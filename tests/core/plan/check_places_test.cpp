#include "core/plan/check_places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using namespace plates;

std::vector<CheckPlace> looksAt(const Plate& plate, const Setup& setup,
                                const Job& job = jobWith()) {
  const Result<SetupTable> table = makeTable(job, plate.part, plate.solution, setup);
  EXPECT_TRUE(table.ok()) << table.error().text;
  return table.ok() ? table->checks : std::vector<CheckPlace>();
}

std::vector<std::string> inLines(const std::vector<CheckPlace>& checks) {
  std::vector<std::string> lines;
  for (const CheckPlace& check : checks) {
    lines.push_back(check.x.text + " " + check.y.text + " " + lookWords(check));
  }
  return lines;
}

using Lines = std::vector<std::string>;

TEST(CheckPlaces, ABareBlockHasZeroAndItsFarCorner) {
  EXPECT_EQ(inLines(looksAt(block(), lowerCorner())),
            (Lines{"0.0000 0.0000 zero: spindle over where L and F cross",
                   "2.0000 1.5000 spindle over the far right corner (R, K)"}));
}

TEST(CheckPlaces, TheCornerIsThatOfTheStockAndLiesWhereTheTurnPutsIt) {
  auto setup = lowerCorner(90);
  leaveOn(setup, Side::back, "1/4");
  // Turned by 90°, the back is at the left of the table and the right side at the far end.
  EXPECT_EQ(inLines(looksAt(block(), setup)).back(),
            "-1.7500 2.0000 spindle over the far left corner of the stock (K, R)");
  EXPECT_EQ(inLines(looksAt(block(), setup, jobWith(CountsX::left, CountsY::towards))).back(),
            "1.7500 -2.0000 spindle over the far left corner of the stock (K, R)");
}

TEST(CheckPlaces, OfTwoSidesAsFarOffTheFirstByName) {
  const auto middle = setupWith({zeroMiddle(Axis::x, "L", "R"), zeroMiddle(Axis::y, "F", "K")});
  EXPECT_EQ(inLines(looksAt(block(), middle)),
            (Lines{"0.0000 0.0000 zero: the readout shows 0 and 0",
                   "-1.0000 -0.7500 spindle over the near left corner (L, F)"}));
}

TEST(CheckPlaces, ZeroOnOneHoleIsSaidAsThatHole) {
  Plate plate = block();
  plate.hole("A", 64, 0, "1/4");
  const auto setup = setupWith({zeroAt(Axis::x, "A"), zeroAt(Axis::y, "A")});
  EXPECT_EQ(lookWords(looksAt(plate, setup).front()), "zero: over the middle of A");
  auto offset = setup;
  offset.zero[0].offset = figure("1/2");
  EXPECT_EQ(lookWords(looksAt(plate, offset).front()), "zero: the readout shows 0 and 0");
}

// The row farthest from zero, then the one farthest from that; a row at zero tells nothing new.
TEST(CheckPlaces, TheRowsAreFarFromZeroAndFromEachOther) {
  Plate plate = block();
  plate.hole("Z", 32, -16, "1/8").hole("A", 150, 70, "1/4").hole("B", 148, 68, "1/4");
  plate.hole("C", 36, 60, "1/4");
  const auto checks = looksAt(plate, lowerCorner());
  ASSERT_EQ(checks.size(), 4u);
  EXPECT_EQ(lookWords(checks[2]), "over the middle of hole A");
  EXPECT_EQ(lookWords(checks[3]), "over the middle of hole C");
  plate.at("A", Axis::x).disputed = true;
  EXPECT_EQ(lookWords(looksAt(plate, lowerCorner())[2]), "over the middle of hole B");
}

TEST(CheckPlaces, RowsThatShareOneSpotAreOneLook) {
  Plate plate = block();
  plate.hole("A", 100, 40, "1/4").hole("B", 100, 40, "1/2");
  EXPECT_EQ(looksAt(plate, lowerCorner()).size(), 3u);
}

TEST(CheckPlaces, TheOrderOfTheFeaturesChangesNothing) {
  Plate plate = block();
  plate.hole("A", 100, 40, "1/4").hole("B", 150, 70, "1/4").hole("C", 36, 70, "1/4");
  const Lines before = inLines(looksAt(plate, lowerCorner()));
  std::reverse(plate.part.features.begin(), plate.part.features.end());
  EXPECT_EQ(inLines(looksAt(plate, lowerCorner())), before);
}

TEST(CheckPlaces, ThoseTheSetupNamesStandInItsOrder) {
  Plate plate = block();
  plate.hole("A", 100, 40, "1/4").hole("B", 150, 70, "1/4");
  auto setup = lowerCorner();
  setup.checks = {"B", "R", "A"};
  EXPECT_EQ(inLines(looksAt(plate, setup)), (Lines{"1.8440 1.3440 over the middle of hole B",
                                                   "2.0000 0.0000 spindle over the finished edge R",
                                                   "1.0625 0.8750 over the middle of hole A"}));
}

// A hole of a ring is a hole, not a ring.
TEST(CheckPlaces, HolesOfRingsAndRowsAreCalledHoles) {
  Plate plate = block();
  plate.feature("M", FeatureKind::ring, 96, 32);
  plate.last().as<kind::Ring>()->holes = 2;
  plate.put("M1", Axis::x, 112)
      .put("M1", Axis::y, 32)
      .put("M2", Axis::x, 80)
      .put("M2", Axis::y, 32);
  plate.feature("S", FeatureKind::slot, 64, 16);
  plate.put("S1", Axis::x, 48).put("S1", Axis::y, 16).put("S2", Axis::x, 80).put("S2", Axis::y, 16);
  auto setup = lowerCorner();
  setup.checks = {"M1", "M", "S2", "S"};
  const Lines lines = inLines(looksAt(plate, setup));
  EXPECT_TRUE(lines.at(0).ends_with("over the middle of hole M1")) << lines[0];
  EXPECT_TRUE(lines.at(1).ends_with("over the middle of ring M")) << lines[1];
  EXPECT_TRUE(lines.at(2).ends_with("over the middle of slot end S2")) << lines[2];
  EXPECT_TRUE(lines.at(3).ends_with("over the middle of slot S")) << lines[3];
}

TEST(CheckPlaces, WhatTheSetupNamesHasToBeThere) {
  Plate plate = block();
  plate.hole("A", 100, 40, "1/4");
  Feature loose;
  loose.id = "N";
  loose.shape = kind::Hole{};
  plate.part.features.push_back(loose);
  for (const auto& [place, code] : {std::pair<const char*, ErrorCode>{"Q", ErrorCode::notFound},
                                    {"N", ErrorCode::unsolvable},
                                    {"T", ErrorCode::unsolvable}}) {
    auto setup = lowerCorner();
    setup.checks = {"A", place};
    const auto table = makeTable(jobWith(), plate.part, plate.solution, setup);
    ASSERT_FALSE(table.ok()) << place;
    EXPECT_EQ(table.error().code, code) << place;
    EXPECT_EQ(table.error().place, place);
  }
}

}  // namespace
}  // namespace inchwright
