#include "core/seen/figure.h"

#include <gtest/gtest.h>

#include "core/measure/lettered.h"
#include "core/seen/net.h"
#include "core/seen/number.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kInch = 200;  // capitals are 25 pixels high

/// Marks of a plain row, 15 pixels wide each; a point is small and on the base line, a dash half
/// way up.
std::vector<Mark> row(const std::string& text, int x = 0, int y = 0, int high = 25,
                      double sure = 0.99) {
  std::vector<Mark> out;
  for (const char c : text) {
    if (c == '.') {
      out.push_back(mark(c, {x, y + high - 4, 4, 4}, sure));
      x += 8;
    } else if (c == '-') {
      out.push_back(mark(c, {x, y + high / 2, 10, 3}, sure));
      x += 14;
    } else if (c != ' ') {
      out.push_back(mark(c, {x, y, high * 3 / 5, high}, sure));
      x += high * 3 / 5 + 4;
    } else {
      x += 8;
    }
  }
  return out;
}

/// A stacked fraction with its bar 3 pixels thick round y 40, and the whole number before it.
std::pair<std::vector<Mark>, std::vector<Box>> stacked(const std::string& whole,
                                                       const std::string& over,
                                                       const std::string& under) {
  auto marks = row(whole, 0, 28);
  const int x = static_cast<int>(whole.size()) * 19 + 6;
  for (const auto& m : row(over, x + 2, 17, 18)) marks.push_back(m);
  for (const auto& m : row(under, x + 2, 45, 18)) marks.push_back(m);
  const int wide = static_cast<int>(std::max(over.size(), under.size())) * 14 + 4;
  return {marks, {Box{x, 39, wide, 3}}};
}

std::string first(const std::vector<FigureRead>& reads) {
  return reads.empty() ? "" : reads.front().text;
}

TEST(Figure, StackedFractions) {
  for (const auto& [w, n, d, text] :
       std::vector<std::array<std::string, 4>>{{"1", "3", "16", "1 3/16"},
                                               {"", "17", "64", "17/64"},
                                               {"12", "1", "2", "12 1/2"},
                                               {"", "7", "8", "7/8"}}) {
    const auto [marks, bars] = stacked(w, n, d);
    EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), text);
  }
}

// What stands to the left of a fraction is its whole number only where it is as high as a figure
// and on the bar's height.
TEST(Figure, WhatIsAsideOfAFractionIsNotItsWholeNumber) {
  struct Case {
    Box box;
    const char* text;
  };
  for (const Case& one : {Case{{4, 28, 15, 25}, "1 3/16"}, Case{{4, 6, 15, 25}, "3/16"},
                          Case{{4, 50, 15, 25}, "3/16"}, Case{{12, 37, 4, 7}, "3/16"}}) {
    auto [marks, bars] = stacked("", "3", "16");
    for (Mark& m : marks) m.box.x += 25;
    for (Box& b : bars) b.x += 25;
    marks.push_back(mark('1', one.box));
    EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), one.text) << one.box.y;
  }
}

TEST(Figure, FractionsOfNoRuleAreNotRead) {
  for (const auto& [n, d] : std::vector<std::pair<std::string, std::string>>{
           {"2", "16"}, {"3", "10"}, {"9", "8"}, {"1", "3"}}) {
    const auto [marks, bars] = stacked("", n, d);
    for (const FigureRead& r : readMarks(marks, bars, kInch, Unit::inch)) {
      EXPECT_LT(r.mean(), -1.5) << n << "/" << d << " read as " << r.text;
    }
  }
}

TEST(Figure, RowsWithAStroke) {
  const auto stroke = [](std::vector<Mark> marks) {
    for (Mark& m : marks) {
      if (kindOf(m.odds) == '/') m.box.h = 28;
    }
    return marks;
  };
  EXPECT_EQ(first(readMarks(stroke(row("1-3/16")), {}, kInch, Unit::inch)), "1 3/16");
  EXPECT_EQ(first(readMarks(stroke(row("15/32")), {}, kInch, Unit::inch)), "15/32");
  EXPECT_EQ(first(readMarks(stroke(row("11-7/8")), {}, kInch, Unit::inch)), "11 7/8");
}

// Raised and lowered figures: a whole number's are all as high as the line.
TEST(Figure, AWholeNumberIsOfOneHeight) {
  auto marks = row("2");
  for (const auto& m : row("15", 22, 0, 17)) marks.push_back(m);
  marks.push_back(mark('/', {50, 0, 14, 30}));
  for (const auto& m : row("16", 66, 13, 17)) marks.push_back(m);
  const auto reads = readMarks(marks, {}, kInch, Unit::inch);
  EXPECT_EQ(first(reads), "2 15/16");
  for (const FigureRead& r : reads) {
    if (r.text == "21 5/16") {
      EXPECT_LT(r.odds, reads.front().odds - 3);
    }
  }
}

// In one size, a space tells where the whole number ends.
TEST(Figure, ASpacePartsAWholeNumberFromItsFraction) {
  for (const auto& [gap, text] : {std::pair(16, "3 1/32"), std::pair(4, "31/32")}) {
    auto marks = row("3");
    for (const auto& m : row("1/32", 15 + gap)) marks.push_back(m);
    for (Mark& m : marks) {
      if (kindOf(m.odds) == '/') m.box.h = 28;
    }
    const auto reads = readMarks(marks, {}, kInch, Unit::inch);
    ASSERT_GE(reads.size(), 2U);
    EXPECT_EQ(first(reads), text);
    EXPECT_GT(reads[0].odds, reads[1].odds + 1);
  }
}

// A fraction so faint that all but its 1 fell to scraps is no 1.
TEST(Figure, ALoneFigureAmongScrapsIsUnsure) {
  std::vector<Mark> marks{mark('1', {0, 0, 6, 25})};
  for (const int y : {2, 12, 20}) marks.push_back(mark('?', {16, y, 5, 4}));
  for (const FigureRead& r : readMarks(marks, {}, kInch, Unit::inch))
    EXPECT_LT(r.mean(), -3) << r.text;
}

TEST(Figure, PlainAndDecimal) {
  EXPECT_EQ(first(readMarks(row("2"), {}, kInch, Unit::inch)), "2");
  EXPECT_EQ(first(readMarks(row(".375"), {}, kInch, Unit::inch)), ".375");
  EXPECT_EQ(first(readMarks(row("1.1875"), {}, kInch, Unit::inch)), "1.1875");
  EXPECT_EQ(first(readMarks(row("118"), {}, kInch, Unit::millimetre)), "118");
  EXPECT_EQ(first(readMarks(row("18.5"), {}, kInch, Unit::millimetre)), "18.5");
  EXPECT_EQ(first(readMarks(row("118"), {}, kInch, Unit::inch)), "");  // no print is so large
}

TEST(Figure, ALoneScrapIsNoOne) {
  EXPECT_GT(readMarks({mark('1', {0, 0, 6, 25})}, {}, kInch, Unit::inch).front().mean(), -0.1);
  for (const int high : {12, 60}) {
    for (const FigureRead& r : readMarks({mark('1', {0, 0, 6, high})}, {}, kInch, Unit::inch))
      EXPECT_LT(r.mean(), -3);
  }
}

// A lost bar once made 34 of 3/4: digits of a plain number share a base line.
TEST(Figure, DigitsOfANumberShareABaseLine) {
  auto marks = row("3", 0, 0);
  for (const auto& m : row("4", 20, 20)) marks.push_back(m);
  for (const FigureRead& r : readMarks(marks, {}, kInch, Unit::inch))
    EXPECT_LT(r.mean(), -1.5) << r.text;
}

TEST(Figure, BracketsRadiusDiameterDegreeTolerance) {
  auto brackets = row("2.5", 20);
  brackets.push_back(mark('(', {0, -3, 8, 32}));
  brackets.push_back(mark(')', {90, -3, 8, 32}));
  EXPECT_EQ(first(readMarks(brackets, {}, kInch, Unit::millimetre)), "(2.5)");
  EXPECT_EQ(first(readMarks(row("R.25"), {}, kInch, Unit::inch)), "R.25");
  EXPECT_EQ(first(readMarks(row("=.25"), {}, kInch, Unit::inch)), "Ø.25");
  auto angle = row("58");
  angle.push_back(mark(kDegreeGlyph, {40, 0, 9, 9}));
  EXPECT_EQ(first(readMarks(angle, {}, kInch, Unit::inch)), "58°");
  EXPECT_EQ(first(readMarks(row(".375 #.002"), {}, kInch, Unit::inch)), ".375 ±.002");
  auto [marks, bars] = stacked("1", "3", "16");
  for (const auto& m : row("#.005", 80, 28)) marks.push_back(m);
  EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), "1 3/16 ±.005");
  auto [lone, bar] = stacked("", "3", "16");
  for (const auto& m : row("#.005", 60, 28)) lone.push_back(m);
  EXPECT_EQ(first(readMarks(lone, bar, kInch, Unit::inch)), "3/16 ±.005");
}

TEST(Figure, AToleranceInARowUnderTheFigure) {
  auto [marks, bars] = stacked("1", "3", "16");
  for (const auto& m : row("#.005", -10, 72)) marks.push_back(m);
  EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), "1 3/16 ±.005");
  // Its sign's lower stroke may stand apart.
  for (Mark& m : marks) {
    if (kindOf(m.odds) == kPlusMinusGlyph) m.box.h = 18;
  }
  marks.push_back(mark('?', {-10, 94, 14, 3}));
  EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), "1 3/16 ±.005");
  // Where a third row stands below, nobody can tell what is whose.
  for (const auto& m : row("2", -40, 125)) marks.push_back(m);
  EXPECT_NE(first(readMarks(marks, bars, kInch, Unit::inch)), "1 3/16 ±.005");
}

// It goes past the bar above and below, which the figures of the fraction do not.
TEST(Figure, AWholeNumberMayStandCloseToTheBar) {
  auto [marks, bars] = stacked("1", "11", "32");
  marks.front().box = {bars[0].x - 6, 28, 6, 25};
  EXPECT_EQ(first(readMarks(marks, bars, kInch, Unit::inch)), "1 11/32");
}

TEST(Figure, LimitsAboveOneAnother) {
  auto marks = row(".5005", 0, 0);
  for (const auto& m : row(".4995", 0, 34)) marks.push_back(m);
  EXPECT_EQ(first(readMarks(marks, {}, kInch, Unit::inch)), ".5005/.4995");
}

TEST(Figure, UnreadGlyphsCost) {
  auto marks = row(".375");
  const double alone = readMarks(marks, {}, kInch, Unit::inch).front().odds;
  marks.push_back(mark('8', {20, 40, 12, 12}));
  const auto beside = readMarks(marks, {}, kInch, Unit::inch);
  ASSERT_FALSE(beside.empty());
  EXPECT_LT(beside.front().odds, alone - 2);
}

// Whatever is offered can be read as a length, and unsure glyphs give several.
TEST(Figure, EveryTextIsALength) {
  for (const auto& marks :
       {row("1.25", 0, 0, 25, 0.3), row("17", 0, 0, 25, 0.4), row(".875 #.002", 0, 0, 25, 0.6)}) {
    const auto reads = readMarks(marks, {}, kInch, Unit::inch);
    EXPECT_GT(reads.size(), 3U);
    for (const FigureRead& r : reads) EXPECT_TRUE(readLength(r.text).ok()) << r.text;
    for (std::size_t i = 1; i < reads.size(); ++i) EXPECT_GE(reads[i - 1].odds, reads[i].odds);
  }
}

TEST(Figure, NothingOfNothing) {
  EXPECT_TRUE(readMarks({}, {}, kInch, Unit::inch).empty());
  EXPECT_TRUE(readFigure(Grey(), {}, kInch, Unit::inch, Net()).empty());
  EXPECT_TRUE(readFigure(Grey(40, 40), {}, kInch, Unit::inch, Net()).empty());
  std::vector<FigureRead> reads{{"1", -2, 1}, {"2", -1, 1}, {"1", -1.5, 1}};
  settle(reads, 5);
  ASSERT_EQ(reads.size(), 2U);
  EXPECT_EQ(reads[1].odds, -1.5);
}

TEST(Pieces, NoLettersStrokeIsABar) {
  Pen letters(120, 100);  // an L over an E, and an H
  letters.line(20, 5, 16, 30, 3);
  letters.line(16, 30, 32, 30, 3);
  for (const int y : {50, 63, 76}) letters.line(16, y, 32, y, 3);
  letters.line(17, 50, 17, 76, 3);
  for (const int x : {60, 80}) letters.line(x, 5, x, 35, 3);
  letters.line(60, 20, 80, 20, 3);
  EXPECT_TRUE(piecesOf(letters.cover, kInk, kInch).bars.empty());
}

TEST(Pieces, AShortBarThatFiguresLeanOver) {
  Pen pen(60, 80);  // 5/8 in a sloping hand, the 8 on its bar
  pen.line(20, 5, 31, 5, 3);
  pen.line(20, 5, 18, 14, 3);
  pen.circle(22, 22, 6, 3);
  pen.line(14, 36, 30, 36, 3);
  pen.circle(18, 43, 5, 3);
  pen.circle(17, 54, 6, 3);
  const Pieces pieces = piecesOf(pen.cover, kInk, kInch);
  ASSERT_EQ(pieces.bars.size(), 1U);
  EXPECT_NEAR(pieces.bars[0].midY(), 36, 1);
}

TEST(Pieces, ABarIsTakenOutAndWhatTouchesItComesFree) {
  Pen pen(60, 80);
  pen.line(20, 40, 42, 40, 2.2);
  pen.line(30, 10, 30, 30, 4);
  pen.line(30, 50, 30, 70, 4);
  const Pieces pieces = piecesOf(pen.cover, kInk, kInch);
  ASSERT_EQ(pieces.bars.size(), 1U);
  EXPECT_EQ(pieces.glyphs.size(), 2U);
  Pen low(60, 80);
  low.line(20, 40, 42, 40, 2.2);
  EXPECT_TRUE(piecesOf(low.cover, kInk, kInch).bars.empty());
}

TEST(Glyph, PatchFillsItsSquare) {
  const GlyphPatch wide = patchOf(Grey(40, 10, 128));
  EXPECT_EQ(wide[10 * kGlyphSide + 1], 255);
  EXPECT_EQ(wide[10 * kGlyphSide + 18], 255);
  EXPECT_EQ(wide[2 * kGlyphSide + 10], 0);
  EXPECT_EQ(patchOf(Grey()), GlyphPatch{});
}

// A bar on a dimension line goes with it when that is taken out: along its row figures one above
// the other are a fraction, and otherwise they are none.
TEST(Figure, ALineThatWasTakenOutMayHaveBeenItsBar) {
  for (const double low : {-8.0, 0.0, 3.0}) {  // the 1 ends so much lower than two pixels above
    Pen pen(60, 90);
    pen.line(30, 14 + low, 30, 36 + low, 3);  // 1
    pen.line(32, 48, 22, 64, 3);              // 4
    pen.line(22, 64, 38, 64, 3);
    pen.line(33, 48, 33, 71, 3);
    const auto readAlong = [&](const std::vector<int>& rules) {
      const auto reads = readFigure(pen.cover, rules, kInch, Unit::inch, builtInNets().glyphs);
      return std::any_of(reads.begin(), reads.end(),
                         [](const FigureRead& r) { return r.text == "1/4" && r.mean() > -1; });
    };
    EXPECT_TRUE(readAlong({40})) << low;
    EXPECT_TRUE(readAlong({8, 40, 80})) << low;
    EXPECT_FALSE(readAlong({})) << low;
    EXPECT_FALSE(readAlong({26})) << low << ": it runs through the 1";
    EXPECT_FALSE(readAlong({60})) << low << ": it runs through the 4";
    EXPECT_FALSE(readAlong({8})) << low << ": it runs over both";
  }
}

}  // namespace
}  // namespace inchwright::seen
