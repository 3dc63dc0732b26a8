#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

// Untraced prints whose mirror images only a reading further on rules out.
namespace inchwright::test {
namespace {

// A at (1/2, 3/4), B 3 in to its right; C at (2, 2 3/4) or mirrored below them, D beyond C.
const std::string kTwoBelow =
    "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\nhole D 1/8\n"
    "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n";

PlacedForTest placedLines(const std::vector<std::string>& lines) {
  std::string text = kTwoBelow;
  for (const std::string& line : lines) text += line + "\n";
  return PlacedForTest::of(PartText::read(text));
}

TEST(PlaneLookahead, ALoopClosedFurtherOnSettlesAMirrorImageInWhateverOrderItIsRead) {
  std::vector<std::string> lines{"r1 centres A C 2 1/2", "r2 centres B C 2 1/2",
                                 "r3 centres C D 1 1/4", "r4 angle C D 126.87",
                                 "r5 centres A D 3.0923"};
  std::sort(lines.begin(), lines.end());
  int orders = 0;
  do {
    const auto part = placedLines(lines);
    ASSERT_TRUE(part.isPlaced("C", Axis::y) && part.isPlaced("D", Axis::y)) << lines[0];
    EXPECT_NEAR(part.from("F", "C", Axis::y), 2.75, 0.0005);
    EXPECT_NEAR(part.from("F", "D", Axis::y), 3.75, 0.0005);
    EXPECT_TRUE(part.placed.answers.empty()) << lines[0] << ", " << lines[1] << ", " << lines[2];
    EXPECT_TRUE(part.placed.clashes.empty());
    ++orders;
  } while (std::next_permutation(lines.begin(), lines.end()));
  EXPECT_EQ(orders, 120);
}

// D is (1 1/2, 3 1/4), a further answer of its own ruled out by its distance from B, and mirrored
// with C; G lies an inch from D at 30° and .4432 from E, which only with C above can be.
TEST(PlaneLookahead, GoesOnOverAPlaceOfWhichOneAnswerAgrees) {
  std::vector<std::string> lines{"hole E 1/8",           "e1 x L E 2",
                                 "e2 y F E 4",           "hole G 1/8",
                                 "r1 centres A C 2 1/2", "r2 centres B C 2 1/2",
                                 "r3 centres C D .7071", "r4 centres A D 2.6926",
                                 "r6 centres D G 1",     "r7 angle D G 30",
                                 "r8 centres E G .4432"};
  lines.push_back("r5 centres B D 3.2016");
  const auto part = placedLines(lines);
  ASSERT_TRUE(part.isPlaced("C", Axis::y));
  EXPECT_NEAR(part.from("F", "C", Axis::y), 2.75, 0.0005);
  EXPECT_NEAR(part.from("F", "G", Axis::y), 3.75, 0.0005);
  EXPECT_TRUE(part.placed.clashes.empty());
}

TEST(PlaneLookahead, AReadingThatNeitherAnswerAgreesWithSettlesNothing) {
  const auto part =
      placedLines({"r1 centres A C 2 1/2", "r2 centres B C 2 1/2", "r3 centres C D 1 1/4",
                   "r4 angle C D 126.87", "r5 centres A D 2 5/8"});
  EXPECT_FALSE(part.isPlaced("C", Axis::y));
  ASSERT_EQ(part.placed.answers.size(), 1U);
  EXPECT_EQ(part.placed.answers[0].answers.size(), 2U);
}

// Of two readings that no answer agrees with, neither alone mends all, and nor does any other.
TEST(PlaneLookahead, WhatMendsOneOfTwoThatNoAnswerAgreesWithDoesNotMendAll) {
  const std::vector<std::string> one{"hole E 1/8",           "e1 x L E 2",
                                     "e2 y F E 4",           "r1 centres A C 2 1/2",
                                     "r2 centres B C 2 1/2", "r3 centres E C 1.6"};
  std::vector<std::string> two = one;
  two.insert(two.end(), {"hole G 1/8", "g1 x L G 1/2", "g2 y F G 3 1/4", "r4 centres G C 1.2"});
  const auto mending = [](const PlacedForTest& part) {
    std::vector<Id> ids;
    for (const CentresClash& clash : part.placed.clashes) {
      for (const WouldBe& would : clash.wouldBe) {
        if (would.closesAll) ids.push_back(part.part.readings[would.reading].id);
      }
    }
    return ids;
  };
  const auto first = placedLines(one), both = placedLines(two);
  ASSERT_EQ(first.placed.clashes.size(), 1U);
  ASSERT_FALSE(both.placed.clashes.empty());
  const std::vector<Id> ids = mending(first);
  EXPECT_NE(std::find(ids.begin(), ids.end(), "r3"), ids.end());
  EXPECT_EQ(mending(both), std::vector<Id>{});
}

TEST(PlaneLookahead, APlaceThatOneAnswerCouldNotReachSettlesIt) {
  // From C mirrored below, nothing lies 1/2 from it and 7/8 from E above.
  const auto part = placedLines({"hole E 1/8", "e1 x L E 2", "e2 y F E 4", "r1 centres A C 2 1/2",
                                 "r2 centres B C 2 1/2", "r3 centres C D 1/2", "r4 centres E D 7/8",
                                 "r5 centres A D 3"});
  EXPECT_NEAR(part.from("F", "C", Axis::y), 2.75, 1e-9);
}

TEST(PlaneLookahead, ATracingThatSpeaksForTheOtherAnswerIsNotOverruledButTold) {
  // The figure from A to D is what it would be with C mirrored below.
  const std::vector<std::string> lines{"r1 centres A C 2 1/2", "r2 centres B C 2 1/2",
                                       "r3 centres C D 1 1/4", "r4 angle C D 150",
                                       "r5 centres A D 1.43698"};
  const auto untraced = placedLines(lines);
  EXPECT_NEAR(untraced.from("F", "C", Axis::y), -1.25, 0.0005);
  EXPECT_TRUE(untraced.placed.answers.empty());
  std::vector<std::string> traced = lines;
  traced.insert(traced.end(), {"traced C 2.01 2.74", "traced D 0.93 3.36"});
  const auto told = placedLines(traced);
  EXPECT_NEAR(told.from("F", "C", Axis::y), 2.75, 0.0005);
  EXPECT_TRUE(std::any_of(told.placed.answers.begin(), told.placed.answers.end(),
                          [](const auto& one) { return one.place == "C" && one.isTaken; }));
  // Where the two circles about A and C cross, D is traced nowhere near.
  EXPECT_FALSE(told.isPlaced("D", Axis::y));
}

TEST(PlaneLookahead, WhatIsLooseFurtherOnLeavesBothAnswers) {
  const auto part =
      placedLines({"r1 centres A C 2 1/2", "r2 centres B C 2 1/2", "r3 centres C D 1 1/4"});
  ASSERT_EQ(part.placed.answers.size(), 1U);
  EXPECT_EQ(part.placed.answers[0].place, "C");
}

TEST(PlaneLookahead, AWayRoundWaitsUntilAllItsPlacesAreThere) {
  // D's block gives E its X; which way round A, D and E go hangs on its Y as well.
  Part part = PartText::read(kTwoBelow +
                             "hole E 1/8\nr1 centres A D 2\nr2 centres B D 2\nin_line x D E\n"
                             "r3 centres D E 1\n");
  for (const auto& [of, sense] :
       {std::pair(std::vector<Id>{"A", "B", "D"}, Sense::anticlockwise),
        std::pair(std::vector<Id>{"A", "D", "E"}, Sense::anticlockwise)}) {
    Understanding what;
    what.kind = UnderstandingKind::wayRound;
    what.of = of;
    what.sense = sense;
    part.understood.push_back(what);
  }
  const auto placed = PlacedForTest::of(part);
  EXPECT_NEAR(placed.from("F", "D", Axis::y), 0.75 + std::sqrt(1.75), 1e-9);
  EXPECT_NEAR(placed.from("D", "E", Axis::y), 1, 1e-9);
}

}  // namespace
}  // namespace inchwright::test
