#include "core/seen/weigh.h"

#include <gtest/gtest.h>

#include <tuple>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"

namespace inchwright::seen {
namespace {

constexpr double kSigmaHere = 0.0105;

Weighed weighed(const std::vector<FigureRead>& figures, double drawn,
                const std::vector<Length>& closing = {}, bool crowded = false) {
  const Reads reads{{1, 2, 3, 4}, false, crowded, figures};
  return weigh({{&reads, 0.05, false}}, {drawn, kSigmaHere}, false, Unit::inch, closing);
}

TEST(Weigh, PlainAndAgreedIsReady) {
  const Weighed w = weighed({{"1 3/16", -0.1, 4}, {"1 5/16", -6, 4}}, 1.19);
  EXPECT_EQ(w.witnesses.letters(), "G S");
  EXPECT_TRUE(w.witnesses.ready());
  EXPECT_EQ(w.candidates.front().text, "1 3/16");
  EXPECT_EQ(w.candidates.front().ticks, 19 * Length::kTicksPerInch / 16);
  EXPECT_EQ(w.box, (Box{1, 2, 3, 4}));
}

// A misprint: what is plainly lettered stays, though another figure would fit the drawing.
TEST(Weigh, AMisprintIsAskedAboutAndNeverPutRight) {
  const Weighed w = weighed({{"1 3/16", -0.1, 4}, {"1 5/16", -5, 4}}, 1.3125);
  EXPECT_EQ(w.candidates.front().text, "1 3/16");
  EXPECT_EQ(w.witnesses.letters(), "G");
  EXPECT_FALSE(w.witnesses.ready());
}

TEST(Weigh, AMisprintOfUnsureGlyphsIsNotPutRightEither) {
  const Weighed w = weighed({{"2 13/32", -3, 5}, {"2 15/32", -4.5, 5}}, 2.47);
  EXPECT_EQ(w.candidates.front().text, "2 15/32");
  EXPECT_EQ(w.witnesses.letters(), "g");
}

// As likely a misprinted 13/32: the drawing does not choose.
TEST(Weigh, OfTwoNearlyAsLikelyTheDrawingChoosesNone) {
  const Weighed w = weighed({{"15/32", -2.6, 4}, {"13/32", -3.1, 4}}, 0.469);
  EXPECT_EQ(w.candidates.front().text, "15/32");
  EXPECT_EQ(w.witnesses.letters(), "g");
}

TEST(Weigh, UnsureGlyphsAreNotReadyThoughTheyAgree) {
  const Weighed w = weighed({{"3/8", -1.4, 2}, {"5/8", -2.2, 2}}, 0.376);
  EXPECT_EQ(w.candidates.front().text, "3/8");
  EXPECT_EQ(w.witnesses.letters(), "g S");
}

// Two candidates that both fit the drawing: the distance is no witness between them.
TEST(Weigh, TheDistanceMustTellThemApart) {
  const Weighed near = weighed({{".875", -0.4, 3}, {".876", -3, 3}}, 0.875);
  EXPECT_EQ(near.witnesses.letters(), "G");
  const Weighed far = weighed({{".875", -0.4, 3}, {".876", -9, 3}}, 0.875);
  EXPECT_EQ(far.witnesses.letters(), "G S");
}

// The foot of a ± or a stroke beside it reads like a 1: nobody letters so wide a tolerance.
TEST(Weigh, ATooWideToleranceIsNeverReady) {
  EXPECT_EQ(weighed({{"21/32 ±1/64", -0.2, 7}}, 0.656).witnesses.letters(), "G S");
  for (const char* text : {"21/32 ±11/64", ".656 ±1.002", ".656 ±.102"})
    EXPECT_FALSE(weighed({{text, -0.2, 7}}, 0.656).witnesses.ready()) << text;
}

TEST(Weigh, WhatIsConfirmedBearsWitness) {
  const Length length = Length::ticks(3 * Length::kTicksPerInch / 8);
  const Weighed w = weighed({{"3/8", -1.4, 2}, {"5/8", -2.2, 2}}, 0.376, {length});
  EXPECT_EQ(w.witnesses.letters(), "g S C");
  EXPECT_TRUE(w.candidates.front().closes);
  EXPECT_FALSE(w.candidates[1].closes);
}

TEST(Weigh, HopelessGlyphsAndNoFiguresGiveNothing) {
  EXPECT_TRUE(weighed({{"3/8", -9, 2}}, 0.375).candidates.empty());
  EXPECT_TRUE(weighed({}, 0.375).candidates.empty());
  EXPECT_TRUE(weigh({}, {1, kSigmaHere}, false, Unit::inch, {}).candidates.empty());
  EXPECT_EQ(weigh({}, {1, kSigmaHere}, false, Unit::inch, {}).witnesses.letters(), "");
}

// The same marks parted in another way, or a lost bar: the drawing tells which.
TEST(Weigh, OtherWaysToPartTheMarksAreToldByTheDrawing) {
  EXPECT_EQ(weighed({{"2 15/16", -0.4, 5}, {"21 5/16", -0.4, 5}}, 2.94).witnesses.letters(), "G S");
  EXPECT_EQ(weighed({{"34", -0.1, 2}, {"3/4", -0.3, 2}}, 0.751).candidates.front().text, "3/4");
  EXPECT_TRUE(weighed({{"34", -0.1, 2}, {"3/4", -0.3, 2}}, 0.751).witnesses.ready());
  // Where it speaks for neither, or the spaces speak against what it says, nobody is sure.
  EXPECT_FALSE(weighed({{"2 15/16", -0.4, 5}, {"21 5/16", -0.4, 5}}, 2.5).witnesses.plain);
  EXPECT_FALSE(weighed({{"3 1/32", -0.2, 4}, {"31/32", -0.9, 4}}, 0.97).witnesses.plain);
  // A slip of the pen is no other way to part marks.
  EXPECT_FALSE(weighed({{"2 1/4", -0.4, 3}, {"2 3/4", -0.6, 3}}, 2.25).witnesses.plain);
}

// Arrows that point at one another may be those of two neighbours, and the figure one of theirs.
TEST(Weigh, AFigureBesideArrowsOutsideIsChosenAndNotReady) {
  const Reads reads{{0, 0, 9, 9}, false, false, {{"1/2", -0.05, 2}}};
  const auto letters = [&](bool beside) {
    return weigh({{&reads, 0.5, beside}}, {0.5, kSigmaHere}, false, Unit::inch, {})
        .witnesses.letters();
  };
  EXPECT_EQ(letters(false), "G S");
  EXPECT_EQ(letters(true), "g S");
}

TEST(Weigh, APieceOfAFigureIsNoRivalOfOneThatFits) {
  const auto both = [](double drawn) {
    const Reads whole{{0, 0, 90, 25}, false, false, {{"2.188", -0.3, 4}}},
        piece{{50, 0, 40, 25}, false, false, {{"88", -0.02, 2}}};
    return weigh({{&whole, 0, false}, {&piece, 0.05, false}}, {drawn, kSigmaHere}, false,
                 Unit::inch, {});
  };
  EXPECT_EQ(both(2.19).witnesses.letters(), "G S");
  EXPECT_EQ(both(2.19).candidates.front().text, "2.188");
  EXPECT_FALSE(both(2.5).witnesses.ready());
}

// Half of `1/2 ±1/64` is no plain figure.
TEST(Weigh, WhatMoreIsLetteredBesideItIsNotLeftOut) {
  EXPECT_EQ(weighed({{"1/2", -0.1, 2}}, 0.5, {}, true).witnesses.letters(), "g");
}

// 1 13/16 lettered where 1 15/16 is drawn, its 3 not clear of a 5.
TEST(Weigh, WhatIsLessLikelyByItsGlyphsIsNoChoiceForAMisprint) {
  const Weighed w = weighed({{"1 15/16", -2.4, 5}, {"1 13/16", -1.6, 5}}, 1.9375);
  EXPECT_FALSE(w.witnesses.plain);
  EXPECT_FALSE(w.witnesses.scale);
}

// The bracket of (2.406) read as a 1: both figures fit the drawing, only one is lettered.
TEST(Weigh, ALastOneBehindThePointMayBeAStroke) {
  for (const char* text : {"(2.4061)", "2.4061", "2.401", "2.4 ±.0011", "2.406 ±.01"})
    EXPECT_EQ(weighed({{text, -0.1, 4}}, 2.406).witnesses.plain, false) << text;
  for (const char* text : {"2.406", "(2.406)", "2.406 ±.001", "2.4062"})
    EXPECT_EQ(weighed({{text, -0.1, 4}}, 2.406).witnesses.letters(), "G S") << text;
}

// Decimals of an inch have three places: of .375 a line may have taken the last.
TEST(Weigh, ADecimalOfFewerPlacesMayLackOne) {
  for (const char* text : {".37", "2.4", "(2.40)"})
    EXPECT_FALSE(weighed({{text, -0.1, 3}}, readLength("2.4")->value.toInches()).witnesses.plain)
        << text;
  EXPECT_EQ(weighed({{"2.400", -0.1, 4}}, 2.4).witnesses.letters(), "G S");
  const Reads metric{{0, 0, 9, 9}, false, false, {{"61.5", -0.1, 3}}};
  EXPECT_TRUE(weigh({{&metric, 0, false}}, {61.5 / 25.4, kSigmaHere}, false, Unit::millimetre, {})
                  .witnesses.plain);
}

// Plain glyphs are three fifths likely on average and 2.7 times likelier than any other's, unsure
// ones a seventh; a distance agrees within 1.6 of how far it strays (.0105), and tells two apart
// where the other that fits it is 400 times less likely.
TEST(Weigh, HowSureIsSure) {
  struct Case {
    std::vector<FigureRead> reads;
    double drawn;
    const char* letters;
  };
  const Case rows[] = {
      {{{"3/8", -1.02, 2}}, 0.375, "G S"},
      {{{"3/8", -1.03, 2}}, 0.375, "g S"},
      {{{"3/8", -3.78, 2}}, 0.375, "g S"},
      {{{"3/8", -3.81, 2}}, 0.375, "S"},
      {{{"3/8", -0.2, 2}}, 0.3917, "G S"},
      {{{"3/8", -0.2, 2}}, 0.3920, "G"},
      {{{"3/8", -0.2, 2}}, 0.3583, "G S"},
      {{{"3/8", -0.2, 2}}, 0.3580, "G"},
      {{{"3/8", -0.4, 2}, {"5/8", -1.41, 2}}, 0.375, "G S"},
      {{{"3/8", -0.4, 2}, {"5/8", -1.39, 2}}, 0.375, "g S"},
      {{{"3/8", -0.4, 2}, {"3/8", -0.5, 2}}, 0.375, "G S"},
      {{{"3/8", -0.4, 2}, {".375", -0.6, 3}}, 0.375, "G S"},
      {{{".875", -0.4, 3}, {".876", -6.35, 3}}, 0.875, "G"},
      {{{".875", -0.4, 3}, {".876", -6.45, 3}}, 0.875, "G S"},
      // Likelier by a third of a nat is what does not fit: it may be a misprint.
      {{{"3/8", -1.4, 2}, {"5/8", -1.05, 2}}, 0.375, "g"},
      // By no more than that, or less likely by three fifths at most: either may be lettered.
      {{{"3/8", -1.4, 2}, {"5/8", -1.15, 2}}, 0.375, "g"},
      {{{"3/8", -1.4, 2}, {"5/8", -1.95, 2}}, 0.375, "g"},
      {{{"3/8", -1.4, 2}, {"5/8", -2.05, 2}}, 0.375, "g S"},
  };
  for (const Case& row : rows) {
    EXPECT_EQ(weighed(row.reads, row.drawn).witnesses.letters(), row.letters)
        << row.reads.front().text << " " << row.reads.front().odds << " " << row.reads.back().odds
        << " " << row.drawn;
  }
  // Of glyphs less likely than a twentieth on average nothing is made.
  EXPECT_EQ(weighed({{"3/8", -5.79, 2}}, 0.375).candidates.size(), 1U);
  EXPECT_TRUE(weighed({{"3/8", -5.81, 2}}, 0.375).candidates.empty());
}

// Where neither glyphs nor the drawing tell, the coarser fraction stands first; six at most.
TEST(Weigh, TheOrderInWhichTheyAreOffered) {
  for (const auto& [coarse, fine, drawn] :
       {std::tuple("1/2", "33/64", 0.5078125), std::tuple("5/16", "21/64", 0.3203125),
        std::tuple("7/8", "57/64", 0.8828125), std::tuple("3/16", "11/64", 0.1796875),
        std::tuple("7/32", "15/64", 0.2265625), std::tuple("1/4", "7/32", 0.234375),
        std::tuple("3/4", "25/32", 0.765625), std::tuple("1/2", "7/16", 0.46875)}) {
    const Weighed w = weighed({{fine, -1.6, 2}, {coarse, -1.6, 2}}, drawn);
    ASSERT_EQ(w.candidates.size(), 2U);
    EXPECT_EQ(w.candidates[0].text, coarse);
    EXPECT_EQ(w.candidates[1].text, fine);
  }
  std::vector<FigureRead> many;
  for (const char* text : {"1", "2", "3", "4", "5", "6", "7", "8"})
    many.push_back({text, -0.7 - 0.2 * static_cast<double>(many.size()), 1});
  const Weighed w = weighed(many, 20);
  ASSERT_EQ(w.candidates.size(), 6U);
  for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(w.candidates[i].text, many[i].text);
  // What is read twice is offered once, by the likelier reading.
  const Weighed twice = weighed({{"1/2", -1.6, 2}, {"1/2", -0.2, 2}}, 0.5);
  ASSERT_EQ(twice.candidates.size(), 1U);
  EXPECT_NEAR(twice.candidates[0].glyphs, std::exp(-0.1), 1e-9);
  EXPECT_EQ(twice.candidates[0].ticks, Length::kTicksPerInch / 2);
  // So much further off counts against it: a quarter of an inch costs a nat.
  const Reads near{{0, 0, 9, 9}, false, false, {{"1", -0.9, 1}}},
      far{{50, 0, 9, 9}, false, false, {{"2", -0.2, 1}}};
  for (const auto& [apart, first] : {std::pair(0.15, "2"), std::pair(0.2, "1")}) {
    EXPECT_EQ(
        weigh({{&near, 0, false}, {&far, apart, false}}, {20, kSigmaHere}, false, Unit::inch, {})
            .candidates[0]
            .text,
        first);
  }
}

TEST(Weigh, AnglesByTheirDegree) {
  const Reads reads{{0, 0, 9, 9}, false, false, {{"58°", -0.1, 2}, {"1/2", -0.1, 2}}};
  const Weighed w = weigh({{&reads, 0, false}}, {58.2, 0.5}, true, Unit::inch, {});
  ASSERT_FALSE(w.candidates.empty());
  EXPECT_EQ(w.candidates.front().text, "58°");
  EXPECT_EQ(w.candidates.front().ticks, 58 * Angle::kPerDegree);
}

TEST(Weigh, NoFigureIsALength) {
  for (const char* text : {"58°", "0", "9/0"})
    EXPECT_TRUE(weighed({{text, -0.1, 2}}, 0.5).candidates.empty()) << text;
}

}  // namespace
}  // namespace inchwright::seen
