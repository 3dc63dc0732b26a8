#include "core/solution/placed_solution.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {
namespace {

const std::string kPlate =
    "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\n"
    "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n";

Solution solvedText(const std::string& text) {
  Part part = PartText::read(text);
  part.name = "Plate";
  return solved(part);
}

/// Of the plate's readings b1 to b3 and those that follow them, r1 on.
ReadingStatus statusOf(const Solution& solution, std::string_view id) {
  return solution.status.at((id[0] == 'b' ? 0u : 3u) + static_cast<unsigned>(id[1] - '1'));
}

double inchesOf(const Solution& solution, const Id& id, Axis axis) {
  const auto from = axis == Axis::x ? "L" : "F";
  const auto ticks = solution.between(from, id, axis);
  EXPECT_TRUE(ticks) << id;
  return ticks ? ticks->toDouble() / static_cast<double>(Length::kTicksPerInch) : 0;
}

TEST(PlacedSolution, ACentreDistanceAndAnAnglePlaceAndStandAlone) {
  const Solution solution =
      solvedText(kPlate + "hole C 1/8\nr1 centres A C 5/8\nr2 angle A C 55\n");
  EXPECT_TRUE(solution.loose.empty());
  EXPECT_NEAR(inchesOf(solution, "C", Axis::x), 0.5 + 0.625 * std::cos(55 * M_PI / 180), 1e-9);
  EXPECT_EQ(statusOf(solution, "r1"), ReadingStatus::alone);
  EXPECT_EQ(statusOf(solution, "r2"), ReadingStatus::alone);
  EXPECT_EQ(solution.placed, (std::vector<Id>{"L", "F", "A", "B", "C"}));
  const auto isKept = [](const Doubt& one) { return one.key.topic == DoubtTopic::notPlaced; };
  EXPECT_FALSE(std::any_of(solution.doubts.begin(), solution.doubts.end(), isKept));
}

TEST(PlacedSolution, WhatIsInDoubtIsLooseWithAllThatHangsOnIt) {
  const Solution solution = solvedText(
      kPlate +
      "hole C 1/8\nhole D 1/8\nr1 centres A C 2\nr2 centres B C 2\nr3 x C D 1\nr4 y C D 1\n");
  std::vector<Id> loose;
  for (const Loose& one : solution.loose) loose.push_back(one.id);
  EXPECT_TRUE(std::find(loose.begin(), loose.end(), "C") != loose.end());
  EXPECT_TRUE(std::find(loose.begin(), loose.end(), "D") != loose.end());
  const auto asks = [](const Doubt& one) {
    return one.key.topic == DoubtTopic::question && one.key.places == std::vector<Id>{"C"};
  };
  const auto asked = std::find_if(solution.doubts.begin(), solution.doubts.end(), asks);
  ASSERT_TRUE(asked != solution.doubts.end());
  // Half way from A at 1/2, 3/4 to B, 3 in on: √(2² − 1.5²) = 1.3229 above or below.
  const std::string above = "2.0000, 2.0729", below = "2.0000, -0.5729";
  EXPECT_TRUE(asked->about == above + " or " + below + ", none taken" ||
              asked->about == below + " or " + above + ", none taken")
      << asked->about;
  EXPECT_TRUE(solution.isDraft());
}

TEST(PlacedSolution, ASpareReadingThatMissesMakesItADraft) {
  const Solution solution = solvedText(
      kPlate + "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\nr3 angle A C 45\ntraced C 2 2.1\n");
  EXPECT_EQ(statusOf(solution, "r3"), ReadingStatus::clashes);
  const auto asks = [](const Doubt& one) {
    return one.key.readings == std::vector<Id>{"b3", "r1", "r2", "r3"};
  };
  EXPECT_TRUE(std::any_of(solution.doubts.begin(), solution.doubts.end(), asks));
  EXPECT_TRUE(solution.isDraft());
  EXPECT_TRUE(solution.position("C", Axis::x)->disputed);
}

// Of a 3, 4, 5 triangle twice over one of the 5s is read as 6, and nothing is traced: neither
// mirror image agrees with the angle, and 6 would have to be 5.
TEST(PlacedSolution, AReadingThatAgreesWithNeitherMirrorImageContradicts) {
  const std::string text =
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\n"
      "b1 x L A 1\nb2 y F A 4\nb3 x A B 6\nin_line y A B\n"
      "r1 centres A C 5\nr2 centres B C ";
  const std::string angle = "\nr3 angle A C 53.13\n";
  const Solution sound = solvedText(text + "5" + angle);
  EXPECT_TRUE(sound.beyond.clashes.empty());
  EXPECT_NEAR(inchesOf(sound, "C", Axis::y), 8, 1e-4);
  const Solution wrong = solvedText(text + "6" + angle);
  EXPECT_FALSE(wrong.position("C", Axis::x)->group == 0);
  ASSERT_EQ(wrong.beyond.clashes.size(), 1U);
  const CentresClash& clash = wrong.beyond.clashes[0];
  EXPECT_EQ(clash.members, (std::vector<std::uint32_t>{2, 3, 4, 5}));
  // 5 sin(65.38° − 53.13°), at the image above; below it would be 4.4.
  EXPECT_NEAR(std::abs(clash.missesBy), 1.0605, 1e-3);
  ASSERT_FALSE(wrong.centreSuspects[0].empty());
  const CentreSuspect& first = wrong.centreSuspects[0][0];
  EXPECT_EQ(first.reading, 4U);
  EXPECT_NEAR(first.wouldBe.toInches(), 5, 1e-3);
  EXPECT_TRUE(wrong.isDraft());
  const auto asks = [](const Doubt& one) {
    return one.key.topic == DoubtTopic::question && one.key.places == std::vector<Id>{"C"};
  };
  EXPECT_TRUE(std::any_of(wrong.doubts.begin(), wrong.doubts.end(), asks));
}

// 2 and 2.999 don't reach across 5: a figure that looks alike but reaches still less is none.
TEST(PlacedSolution, WhatADistanceMayBeLiesOnTheSideThatIsWanting) {
  const Solution solution = solvedText(
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\n"
      "b1 x L A 1\nb2 y F A 4\nb3 x A B 5\nin_line y A B\n"
      "r1 centres A C 2\nr2 centres B C 2.999\n");
  ASSERT_EQ(solution.beyond.clashes.size(), 1U);
  for (const CentreSuspect& one : solution.centreSuspects[0]) {
    if (one.reading != 4) continue;
    EXPECT_EQ(one.wouldBeText, "3.000");
  }
  EXPECT_FALSE(solution.centreSuspects[0].empty());
}

TEST(PlacedSolution, ASpareReadingThatAgreesChecksTheOthers) {
  const Solution solution = solvedText(kPlate +
                                       "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\n"
                                       "r3 angle A C 41 1/2\ntraced C 2 2.1\n");
  for (const char* id : {"b3", "r1", "r2", "r3"}) {
    EXPECT_EQ(statusOf(solution, id), ReadingStatus::agrees) << id;
  }
  EXPECT_EQ(statusOf(solution, "b1"), ReadingStatus::alone);
}

// Its ends say all of a curved slot: nothing is left to be given of its middle.
TEST(PlacedSolution, ACurvedSlotIsPlacedByItsEnds) {
  Part part = partFrom(R"(
edge L x left
edge F y front
point E0
point E1
point E2
r1 x L E0 2
r2 y F E0 1
r3 x E0 E1 3/4
r4 y F E1 1
r5 x L E2 2
r6 y E0 E2 3/4
)");
  Feature slot;
  slot.id = "V";
  kind::Slot shape;
  shape.width = *readLength("1/4");
  shape.ends = {"E1", "E2"};
  shape.about = "E0";
  slot.shape = shape;
  part.features.push_back(slot);
  const auto whole = solve(part);
  ASSERT_TRUE(whole.ok());
  EXPECT_TRUE(whole->loose.empty());
  EXPECT_FALSE(whole->isDraft());
  EXPECT_EQ(whole->placed.size(), part.features.size());
  EXPECT_EQ(whole->position("V2", Axis::y)->ticks, Rational(7 * Length::kTicksPerInch / 4));

  // With one end unplaced the end is told, not the middle.
  part.readings.pop_back();
  const auto half = solve(part);
  ASSERT_TRUE(half.ok());
  ASSERT_EQ(half->loose.size(), 2U);
  EXPECT_EQ(half->loose[0].id, "E2");
  EXPECT_EQ(half->loose[1].id, "V2");
  EXPECT_EQ(half->placed.size(), part.features.size() - 2);
}

}  // namespace
}  // namespace inchwright::test
