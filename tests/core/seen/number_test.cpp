#include "core/seen/number.h"

#include <gtest/gtest.h>

#include <optional>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfNumber = 200;  // capitals are 25 pixels high

std::optional<double> oddsOf(const std::vector<Mark>& marks, const std::vector<Box>& bars,
                             const std::string& text, Unit unit = Unit::inch) {
  for (const FigureRead& one : readNumber(marks, bars, kOfNumber, unit)) {
    if (one.text == text) return one.odds;
  }
  return std::nullopt;
}

// As plain as glyphs can be, less what speaks against it, in nats. Each plain glyph is a hundredth.
void expectCost(std::optional<double> odds, std::optional<double> cost, const std::string& what) {
  ASSERT_EQ(odds.has_value(), cost.has_value()) << what;
  if (cost) {
    EXPECT_NEAR(*odds, -*cost, 0.1) << what;
  }
}

// 3/16 over a bar from 60 to 100 at 40, its figures 18 high.
std::vector<Mark> threeSixteenths() {
  return {mark('3', {74, 17, 11, 18}), mark('1', {64, 45, 8, 18}), mark('6', {80, 45, 11, 18})};
}
const std::vector<Box> kBar{{60, 39, 40, 3}};

// It is a little higher than the figures of its fraction and at most twice as high, stands within
// 32 pixels of the bar and on its height within 12. What is neither is left unread.
TEST(Number, OfAWholeNumberBeforeAFraction) {
  struct Row {
    Box box;
    const char* text;
    double cost;
  };
  const double plain = 3.9;  // a glyph as plain as that, left unread
  const Row rows[] = {
      {{40, 28, 12, 25}, "1 3/16", 0},   {{44, 31, 12, 19}, "1 3/16", 0},
      {{44, 31, 12, 18}, "1 3/16", 4},   {{44, 22, 12, 36}, "1 3/16", 0},
      {{44, 21, 12, 37}, "1 3/16", 4},   {{16, 28, 12, 25}, "1 3/16", 0},
      {{15, 28, 12, 25}, "1 3/16", 4},   {{40, 39, 12, 25}, "1 3/16", 0},
      {{40, 41, 12, 25}, "3/16", plain}, {{40, 17, 12, 25}, "1 3/16", 0},
      {{40, 14, 12, 25}, "3/16", plain}, {{120, 28, 12, 25}, "3/16", plain},
      {{40, 36, 8, 8}, "3/16", 0.2},     {{40, 36, 9, 8}, "3/16", plain},
      {{40, 35, 12, 10}, "3/16", plain},
  };
  for (const Row& row : rows) {
    std::vector<Mark> marks = threeSixteenths();
    marks.push_back(mark('1', row.box));
    expectCost(oddsOf(marks, kBar, row.text), row.cost,
               std::to_string(row.box.x) + " " + std::to_string(row.box.y) + " " +
                   std::to_string(row.box.h));
  }
}

// Figures of the fraction reach six pixels past its bar at most, and stand within 18 of it.
TEST(Number, OfTheFiguresOverABar) {
  struct Row {
    Box three;
    bool isRead;
  };
  for (const Row& row :
       {Row{{74, 17, 11, 18}, true}, Row{{100, 17, 11, 18}, true}, Row{{102, 17, 11, 18}, false},
        Row{{49, 17, 11, 18}, true}, Row{{47, 17, 11, 18}, false}, Row{{74, 4, 11, 18}, true},
        Row{{74, 3, 11, 18}, false}, Row{{74, 28, 11, 7}, true}, Row{{74, 29, 11, 6}, false}}) {
    std::vector<Mark> marks = threeSixteenths();
    marks[0].box = row.three;
    EXPECT_EQ(oddsOf(marks, kBar, "3/16").has_value(), row.isRead)
        << row.three.x << " " << row.three.y << " " << row.three.h;
  }
}

// Of two bars the wider is the fraction's.
TEST(Number, TheWiderBarIsTheFractions) {
  EXPECT_TRUE(oddsOf(threeSixteenths(), {{10, 10, 20, 3}, kBar[0], {10, 70, 30, 3}}, "3/16"));
}

// Digits of one height, 15 wide and 25 high, on one base line.
TEST(Number, OfAPlainNumber) {
  struct Row {
    std::vector<Mark> marks;
    Unit unit;
    const char* text;
    std::optional<double> cost;
  };
  const auto digit = [](char c, int x, int y = 0, int high = 25) {
    return mark(c, {x, y, 15, high});
  };
  const auto point = [](int x, int y = 21, int high = 4) { return mark('.', {x, y, 4, high}); };
  const Row rows[] = {
      {{digit('1', 0), digit('8', 39)}, Unit::inch, "18", 0},
      {{digit('1', 0), digit('8', 40)}, Unit::inch, "18", 3},
      {{digit('1', 0), digit('8', 19, 5)}, Unit::inch, "18", 0},
      {{digit('1', 0), digit('8', 19, 6)}, Unit::inch, "18", 6},
      {{digit('1', 0, 0, 18)}, Unit::inch, "1", 0},
      {{digit('1', 0, 0, 17)}, Unit::inch, "1", 4},
      {{digit('1', 0, 0, 36)}, Unit::inch, "1", 0},
      {{digit('1', 0, 0, 37)}, Unit::inch, "1", 4},
      {{digit('1', 0, 0, 10), point(19, 8, 2)}, Unit::inch, "1.", {}},
      {{digit('1', 0), digit('1', 19), digit('8', 38)}, Unit::inch, "118", {}},
      {{digit('1', 0), digit('1', 19), digit('8', 38)}, Unit::millimetre, "118", 0},
      {{digit('0', 0), digit('8', 19)}, Unit::millimetre, "08", {}},
      {{point(0), digit('2', 8), digit('5', 27)}, Unit::inch, ".25", 0},
      {{point(0), digit('5', 8)}, Unit::inch, ".5", 3},
      {{point(19), digit('0', 0), digit('5', 27)}, Unit::millimetre, "0.5", 0},
      {{digit('0', 0), digit('0', 19), point(38), digit('5', 46)}, Unit::millimetre, "00.5", {}},
      {{digit('2', 0), digit('5', 19), point(38)}, Unit::millimetre, "25.", {}},
      {{digit('2', 0), point(19), digit('5', 27), point(46), digit('1', 54)},
       Unit::millimetre,
       "2.51",
       {}},
      // A point stands on the base line, six pixels off it at most, and is smaller than a digit.
      {{digit('2', 0), point(19, 15), digit('5', 27)}, Unit::millimetre, "2.5", 0},
      {{digit('2', 0), point(19, 14), digit('5', 27)}, Unit::millimetre, "25", 0.2},
      {{digit('2', 0), point(19, 17, 8), digit('5', 27)}, Unit::millimetre, "2.5", 0},
      {{digit('2', 0), point(19, 16, 9), digit('5', 27)}, Unit::millimetre, "25", 3.9},
      {{digit('2', 0), digit('5', 27), digit('8', 50, 10, 15)}, Unit::millimetre, "25", 3.9},
      {{digit('2', 0), digit('5', 27), digit('8', 50, 9, 16)}, Unit::millimetre, "258", 0},
  };
  for (const Row& row : rows) {
    expectCost(oddsOf(row.marks, {}, row.text, row.unit), row.cost,
               std::string(row.text) + " " + std::to_string(row.marks.back().box.x) + " " +
                   std::to_string(row.marks.back().box.y));
  }
  // Six digits at most.
  std::vector<Mark> many{point(0)};
  std::string text = ".";
  for (int i = 1; i <= 7; ++i) {
    many.push_back(digit(static_cast<char>('0' + i), 19 * i));
    text += static_cast<char>('0' + i);
    expectCost(oddsOf(many, {}, text, Unit::millimetre), i < 7 ? std::optional(0.0) : std::nullopt,
               text);
  }
}

// In one row with a stroke: what is lettered in one size, or with a dash between.
TEST(Number, OfAFractionWithAStroke) {
  const auto digit = [](char c, int x, int high = 25) { return mark(c, {x, 0, 15, high}); };
  struct Row {
    std::vector<Mark> marks;
    const char* text;
    std::optional<double> cost;
  };
  const Mark stroke = mark('/', {40, 0, 12, 28}), low = mark('/', {40, 0, 12, 15}),
             lower = mark('/', {40, 0, 12, 13}), faint = mark('/', {40, 0, 12, 28}, 0.19);
  const Row rows[] = {
      {{digit('3', 20), stroke, digit('8', 60)}, "3/8", 0},
      {{digit('3', 20), low, digit('8', 60)}, "3/8", 0},
      {{digit('3', 20), lower, digit('8', 60)}, "3/8", {}},
      {{digit('3', 20), faint, digit('8', 60)}, "3/8", {}},
      // Half a nat at least, and four where no space stands between.
      {{digit('2', -10), digit('3', 20), stroke, digit('8', 60)}, "2 3/8", 0.5},
      {{digit('2', 1), digit('3', 20), stroke, digit('8', 60)}, "2 3/8", 4},
      {{digit('2', 1), digit('3', 20, 20), stroke, digit('8', 60, 20)}, "2 3/8", 0},
      {{digit('1', 1), digit('3', 20), stroke, digit('1', 60), digit('6', 80)}, "13/16", 0},
      // A raised figure after a higher one, or one that stands apart, is no number with it.
      {{digit('1', 1), digit('3', 20, 20), stroke, digit('1', 60), digit('6', 80)}, "13/16", 4},
      {{digit('1', -11), digit('3', 20), stroke, digit('1', 60), digit('6', 80)}, "13/16", 2},
      {{digit('2', -20), mark('-', {0, 11, 10, 3}), digit('3', 20), stroke, digit('8', 60)},
       "2 3/8",
       0},
  };
  for (const Row& row : rows) {
    expectCost(oddsOf(row.marks, {}, row.text), row.cost,
               std::string(row.text) + " " + std::to_string(row.marks[0].box.x) + " " +
                   std::to_string(row.marks[1].box.h));
  }
}

}  // namespace
}  // namespace inchwright::seen
