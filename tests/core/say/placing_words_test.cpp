#include "core/say/placing_words.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {
namespace {

const std::string kPlate =
    "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\n"
    "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n";

/// What is said of placing, one text a doubt, in the order of the doubts.
std::vector<std::string> saidOf(const std::string& text) {
  const Part part = PartText::read(kPlate + text);
  const Solution solution = solved(part);
  std::vector<std::string> said;
  for (const Doubt& doubt : solution.doubts) {
    if (doubt.placing != PlacingDoubt::none) said.push_back(doubtText(part, solution, doubt));
  }
  return said;
}

using Texts = std::vector<std::string>;

TEST(PlacingWords, ACrookedPictureSaysByHowMuch) {
  EXPECT_EQ(crookedText({false, 34.6, 1.84}),
            "by its points the print leans by 35° and is 1.8 times as long one way as the other: "
            "one of them lies elsewhere");
  EXPECT_NE(crookedText({false, 2, 12.06}).find(" is 12.1 times "), std::string::npos);
  EXPECT_NE(crookedText({false, 2, 1e300}).find(" is 1000000.0 times "), std::string::npos);
  EXPECT_EQ(crookedText({true, 34.6, 1.84}),
            "by its points the print comes mirrored: one of them lies elsewhere, or across and up "
            "are exchanged");
}

TEST(PlacingWords, TwoAnswersAreNamedWithTheirFigures) {
  // Half of 3, and the other side of a triangle of 2, 2 and 3: the root of 1.75 above and below.
  EXPECT_EQ(saidOf("r1 centres A C 2\nr2 centres B C 2\n"),
            (Texts{"C may lie at (2.0000, -0.5729) or (2.0000, 2.0729); say which way round it "
                   "lies, or on which side"}));
  EXPECT_EQ(saidOf("r1 centres A C 2\nr2 centres B C 2\ntraced C 2 2.1\n"),
            (Texts{"C is taken to lie at (2.0000, 2.0729), where it is traced; (2.0000, -0.5729) "
                   "would do as well"}));
}

TEST(PlacingWords, ALineThatCanRunInSeveralWaysIsAskedAboutAndNothingElseIsSaidOfIt) {
  const Part part = PartText::read(kPlate + "line M\ntangent M A\ntangent M B\n");
  const Solution solution = solved(part);
  Texts said;
  for (const Doubt& doubt : solution.doubts) {
    const std::string text = doubtText(part, solution, doubt);
    if (text.find("M") != std::string::npos) said.push_back(text);
  }
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(said[0].rfind("M may run through (", 0), 0U) << said[0];
  EXPECT_NE(said[0].find("(0.5000, 0.6250)"), std::string::npos) << said[0];
  EXPECT_NE(said[0].find("; say on which side of it what it touches lies"), std::string::npos);
}

TEST(PlacingWords, AContradictionNamesReadingsByTheirEndsAndTheLikeliestToLookAtAgain) {
  // 2 and 2 over 3 make 41.41 degrees.
  const Texts said =
      saidOf("r1 centres A C 2\nr2 centres B C 2\nr3 angle A C 47\ntraced C 2 2.1\n");
  ASSERT_EQ(said.size(), 2u);
  EXPECT_EQ(said[0].rfind("3 from A to B, 2 from A straight to C, 2 from B straight to C and 47° "
                          "from A to C do not agree: 47° from A to C misses by ",
                          0),
            0u)
      << said[0];
  EXPECT_NE(said[0].find("; 47° from A to C may be 41°: looks like 41°"), std::string::npos)
      << said[0];
}

TEST(PlacingWords, WhatDoesNotMeetIsSaidSo) {
  const Texts said = saidOf("r1 centres A C 1\nr2 centres B C 1\n");
  ASSERT_EQ(said.size(), 1u);
  for (const char* part : {"1 from A straight to C", "1 from B straight to C",
                           " do not meet: they miss each other by "}) {
    EXPECT_NE(said[0].find(part), std::string::npos) << said[0];
  }
}

TEST(PlacingWords, AFlatCrossingIsWeaklyHeld) {
  const Texts said = saidOf("r1 centres A C 1.505\nr2 centres B C 1.505\ntraced C 2 0.87\n");
  EXPECT_NE(std::find_if(said.begin(), said.end(),
                         [](const std::string& one) {
                           return one.rfind("C is weakly held: a thou in ", 0) == 0;
                         }),
            said.end());
}

TEST(PlacingWords, AReadingIsNamedByItsEndsAndFigure) {
  const Part part =
      PartText::read(kPlate + "r1 centres A C 5/8\nr2 angle A C 55\nr3 diameter A 1/4\n");
  EXPECT_EQ(readingWords(part, "b3"), "3 from A to B");
  EXPECT_EQ(readingWords(part, "r1"), "5/8 from A straight to C");
  EXPECT_EQ(readingWords(part, "r2"), "55° from A to C");
  EXPECT_EQ(readingWords(part, "r3"), "1/4 for the diameter of A");
}

TEST(PlacingWords, WhatIsHeldHalfIsToldHowItMoves) {
  const Part part = PartText::read(kPlate + "r1 centres A C 2\n");
  const Solution solution = solved(part);
  ASSERT_EQ(solution.loose.size(), 2u);
  EXPECT_EQ(adviceText(solution.loose[0]),
            "it can still swing about A; give its distance along X from L, or say what it is in "
            "line with");
}

TEST(PlacingWords, LinesAndTangentsThatComeToNothingAreTold) {
  const Part part = PartText::read(kPlate +
                                   "line M\nround Q 1/4 about C\ntangent M Q\n"
                                   "r1 centres A C 2\nr2 angle A C 30\n");
  const Solution solution = solved(part);
  Texts said;
  for (const Doubt& doubt : solution.doubts) {
    if (doubt.key.topic == DoubtTopic::notPlaced) said.push_back(doubtText(part, solution, doubt));
  }
  EXPECT_EQ(said,
            (Texts{"M is a line that nothing places: give two places on it, or one and its "
                   "angle",
                   "M and Q: that they are tangent is kept but does not place anything yet"}));
}

TEST(PlacingWords, DegreesToAHundredth) {
  EXPECT_EQ(degreesText(55), "55°");
  EXPECT_EQ(degreesText(33.689), "33.69°");
  EXPECT_EQ(degreesText(33.5001), "33.5°");
  EXPECT_EQ(degreesText(-0.25), "−0.25°");
}

}  // namespace
}  // namespace inchwright::test
