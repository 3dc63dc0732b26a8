#include "core/seen/joins.h"

#include <gtest/gtest.h>

#include <numbers>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfJoin = 200;  // the sheet's inch, pixels

/// Sides of a part, 4 pixels thick, that end before they meet.
struct Sides : Pen {
  Sides() : Pen(360, 300) {}

  /// A level side from the left, and a plumb one from above: what would be a lower right corner at
  /// (260, 220), less so much of each.
  void corner(double level, double plumb) {
    line(20, 220, 260 - level, 220, 4);
    line(260, 20, 260, 220 - plumb, 4);
    ends = {{{260 - level, 220}, 0, true, false, 4}, {{260, 220 - plumb}, 1, true, true, 4}};
  }

  /// Degrees anticlockwise as seen.
  void arc(PlanePoint centre, double radius, double begin, double end, double thick = 4) {
    constexpr int kPieces = 24;
    const auto at = [&](int i) {
      const double t = (begin + (end - begin) * i / kPieces) * std::numbers::pi / 180;
      return PlanePoint{centre.x + radius * std::cos(t), centre.y - radius * std::sin(t)};
    };
    for (int i = 0; i < kPieces; ++i) {
      const PlanePoint a = at(i), b = at(i + 1);
      line(a.x, a.y, b.x, b.y, thick);
    }
  }

  std::vector<Join> joins() const { return joinsOf(ends, cover, kOfJoin); }

  std::vector<LooseEnd> ends;
};

void expectAt(PlanePoint p, double x, double y) {
  EXPECT_NEAR(p.x, x, 3);
  EXPECT_NEAR(p.y, y, 3);
}

TEST(Joins, ACornerCutOffStraight) {
  for (const auto& [level, plumb] : {std::pair(60.0, 60.0), {100.0, 50.0}, {40.0, 120.0}}) {
    Sides sides;
    sides.corner(level, plumb);
    sides.line(260 - level, 220, 260, 220 - plumb, 4);
    const auto found = sides.joins();
    ASSERT_EQ(found.size(), 1U) << level;
    EXPECT_FALSE(found[0].arc);
    EXPECT_GE(found[0].drawn, kWholeJoin);
    expectAt(found[0].from, 260 - level, 220);
    expectAt(found[0].to, 260, 220 - plumb);
  }
}

// Its ink lengthens the strokes: they seem to end where it has left them already.
TEST(Joins, EndsThatLieALittleOffItAreMended) {
  Sides sides;
  sides.corner(60, 60);
  sides.line(200, 220, 260, 160, 4);
  sides.ends[0].at.x += 8;
  sides.ends[1].at.y += 6;
  const auto found = sides.joins();
  ASSERT_EQ(found.size(), 1U);
  expectAt(found[0].from, 200, 220);
  expectAt(found[0].to, 260, 160);
}

TEST(Joins, ACornerCutOffHollow) {
  Sides sides;
  sides.corner(80, 80);
  sides.arc({260, 220}, 80, 90, 180);
  const auto found = sides.joins();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0].arc);
  expectAt(found[0].centre, 260, 220);
  EXPECT_NEAR(found[0].radius, 80, 3);
  EXPECT_TRUE(isOnArc(found[0], {180, 220}, 4));
  EXPECT_FALSE(isOnArc(found[0], {340, 220}, 4));
}

// Another line may run over its middle.
TEST(Joins, WhatRunsOverItDoesNotHideIt) {
  Sides sides;
  sides.corner(80, 80);
  sides.arc({260, 220}, 80, 90, 180);
  sides.line(260, 220, 150, 110, 1.6);
  ASSERT_EQ(sides.joins().size(), 1U);
}

TEST(Joins, AnEndRoundedAboutAHole) {
  Sides sides;
  for (const double y : {60.0, 180.0}) sides.line(20, y, 160, y, 4);
  sides.arc({160, 120}, 60, -90, 90);
  sides.circle(160, 120, 25, 3);
  sides.ends = {{{160, 60}, 0, true, false, 4}, {{160, 180}, 1, true, false, 4}};
  const auto found = sides.joins();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0].arc);
  expectAt(found[0].centre, 160, 120);
  EXPECT_NEAR(found[0].radius, 60, 3);
}

TEST(Joins, WhatIsNone) {
  Sides sharp, thin, broken, rim, same;
  sharp.corner(60, 60);
  EXPECT_TRUE(sharp.joins().empty()) << "nothing is drawn between the ends";
  thin.corner(60, 60);
  thin.line(200, 220, 260, 160, 1.6);
  EXPECT_TRUE(thin.joins().empty()) << "a leader or a line of a dimension";
  broken.corner(60, 60);
  broken.line(200, 220, 225, 195, 4);
  EXPECT_TRUE(broken.joins().empty()) << "it goes half of the way";
  rim.corner(80, 80);
  rim.circle(260, 220, 80, 4);
  EXPECT_TRUE(rim.joins().empty()) << "a whole circle";
  same.line(20, 220, 200, 220, 4);
  same.ends = {{{20, 220}, 0, false, false, 4}, {{200, 220}, 0, true, false, 4}};
  EXPECT_TRUE(same.joins().empty()) << "a stroke is no side of its own";
}

TEST(Joins, AnEndBelongsToOne) {
  Sides sides;
  sides.corner(60, 60);
  sides.line(200, 220, 260, 160, 4);
  sides.ends.push_back({{261, 161}, 2, true, true, 4});
  EXPECT_EQ(sides.joins().size(), 1U);
}

}  // namespace
}  // namespace inchwright::seen
