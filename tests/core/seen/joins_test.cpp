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

/// Half a pen's breadth is what an end of ink may be off.
void expectAt(PlanePoint p, double x, double y) {
  EXPECT_NEAR(p.x, x, 2.5);
  EXPECT_NEAR(p.y, y, 2.5);
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

// What crosses it at its middle is looked past a tenth of the way to either side.
TEST(Joins, OneIsSeenBesideWhatCrossesIt) {
  struct Case {
    std::vector<double> crossed;  ///< of its way
    bool isOne;
  };
  for (const Case& one : {Case{{0.5}, true}, Case{{0.5, 0.6}, true}, Case{{0.5, 0.4}, true},
                          Case{{0.4, 0.5, 0.6}, false}}) {
    Sides sides;
    sides.corner(160, 160);
    sides.line(100, 220, 260, 60, 4);
    for (const double at : one.crossed) {
      const double x = 100 + 160 * at, y = 220 - 160 * at;
      sides.line(x - 90, y - 90, x + 60, y + 60, 2);
    }
    EXPECT_EQ(sides.joins().size(), one.isOne) << one.crossed.size() << " " << one.crossed.back();
  }
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

// Of 32 to 600 pixels from end to end, off level and plumb by a twelfth of its length, as thick as
// four fifths of its neighbours and no thicker than twelve pixels.
TEST(Joins, OfWhatIsDrawnBetweenTheEndsWhatIsASide) {
  struct Row {
    double level, plumb;  ///< what the corner lacks
    double thick;
    bool isOne;
  };
  const Row rows[] = {
      {28, 28, 4, true},  {20, 20, 4, false},  {200, 200, 4, true}, {100, 14, 4, true},
      {100, 5, 4, false}, {14, 100, 4, true},  {5, 100, 4, false},  {60, 60, 2.6, false},
      {60, 60, 10, true}, {60, 60, 16, false},
  };
  for (const Row& row : rows) {
    Sides sides;
    sides.corner(row.level, row.plumb);
    sides.line(260 - row.level, 220, 260, 220 - row.plumb, row.thick);
    const auto found = sides.joins();
    ASSERT_EQ(found.size(), row.isOne) << row.level << " " << row.plumb << " " << row.thick;
    if (!row.isOne) continue;
    EXPECT_EQ(found[0].one.stroke + 2 * found[0].other.stroke, 2U);
    EXPECT_FALSE(found[0].arc);
  }
}

// A gap of a twentieth is a slip of the pen and not drawn whole; of a sixth it is no side.
TEST(Joins, DrawnAllTheWayOrNearly) {
  for (const double gap : {0.0, 0.05, 0.17}) {
    Sides sides;
    sides.corner(100, 100);
    const auto at = [](double part) { return PlanePoint{160 + 100 * part, 220 - 100 * part}; };
    const PlanePoint a = at(0), b = at(0.68 - gap / 2), c = at(0.68 + gap / 2), d = at(1);
    sides.line(a.x, a.y, b.x, b.y, 4);
    sides.line(c.x, c.y, d.x, d.y, 4);
    if (gap > 0) {  // the pen's round ends
      for (int y = 0; y < sides.cover.height; ++y) {
        for (int x = 0; x < sides.cover.width; ++x) {
          const double part = (x - 160.0 + 220.0 - y) / 200;
          if (std::abs(part - 0.68) < gap / 2 && x > 165 && y < 215) sides.cover.row(y)[x] = 0;
        }
      }
    }
    const auto found = sides.joins();
    ASSERT_EQ(found.size(), gap < 0.1) << gap;
    if (gap > 0.1) continue;
    EXPECT_EQ(found[0].drawn >= kWholeJoin, gap == 0) << found[0].drawn;
    EXPECT_LE(found[0].drawn, 1);
  }
}

TEST(Joins, AnArcBeginsAndEndsAtItsSides) {
  for (const double radius : {30.0, 80.0, 150.0}) {
    Sides hollow, round;
    hollow.corner(radius, radius);
    hollow.arc({260, 220}, radius, 90, 180);
    round.corner(radius, radius);
    round.arc({260 - radius, 220 - radius}, radius, -90, 0);
    for (const bool isHollow : {true, false}) {
      const auto found = (isHollow ? hollow : round).joins();
      ASSERT_EQ(found.size(), 1U) << radius << isHollow;
      EXPECT_TRUE(found[0].arc);
      EXPECT_NEAR(found[0].radius, radius, 3) << isHollow;
      const double in = isHollow ? 0 : radius;
      EXPECT_NEAR(found[0].centre.x, 260 - in, 2.5) << radius << isHollow;
      EXPECT_NEAR(found[0].centre.y, 220 - in, 2.5) << radius << isHollow;
      const auto [left, right] =
          std::minmax({found[0].from, found[0].to}, [](auto a, auto b) { return a.x < b.x; });
      // Where a round one runs into its sides nobody sees to a sixth of its radius.
      const double seen = isHollow ? 2.5 : 14 + radius / 10;
      EXPECT_LT(std::hypot(left.x - (260 - radius), left.y - 220), seen) << radius << isHollow;
      EXPECT_LT(std::hypot(right.x - 260, right.y - (220 - radius)), seen) << radius << isHollow;
      EXPECT_GE(found[0].drawn, kWholeJoin);
    }
  }
}

// What is drawn further on its circle behind a gap of two degrees is no more of it, behind one of
// half a degree it is.
TEST(Joins, AnArcEndsAtAGap) {
  for (const double gap : {0.4, 2.2}) {
    Sides sides;
    sides.corner(150, 150);
    sides.arc({260, 220}, 150, 90, 180);
    // The pen's round end and half the side's thickness are three quarters of a degree each.
    sides.arc({260, 220}, 150, 181.5 + gap, 186);
    const auto found = sides.joins();
    ASSERT_EQ(found.size(), gap > 2) << "it would end off its side";
    if (found.empty()) continue;
    const PlanePoint left = found[0].from.x < found[0].to.x ? found[0].from : found[0].to;
    EXPECT_LT(std::hypot(left.x - 110, left.y - 220), 4);
  }
}

// A hollow of 80 from (160, 220) to (260, 170), 112 pixels apart: its centre lies 57.2 off their
// middle, at (235.6, 246.2), and it goes from 72 to 161 degrees.
TEST(Joins, AnArcThatLeavesItsSidesUnevenly) {
  Sides sides;
  sides.corner(100, 50);
  sides.arc({235.6, 246.2}, 80, 72.2, 160.9);
  const auto found = sides.joins();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0].arc);
  EXPECT_NEAR(found[0].radius, 80, 3);
  EXPECT_NEAR(found[0].centre.x, 235.6, 3);
  EXPECT_NEAR(found[0].centre.y, 246.2, 3);
  EXPECT_GE(found[0].drawn, kWholeJoin);
}

// Between two sides 30 pixels apart half a circle of 15 is less than a tenth of an inch in radius.
TEST(Joins, AnArcIsNoLessThanATenthInRadius) {
  for (const double radius : {17.0, 24.0}) {
    Sides sides;
    for (const int side : {-1, 1}) sides.line(20, 120 + side * radius, 160, 120 + side * radius, 4);
    sides.arc({160, 120}, radius, -90, 90);
    sides.ends = {{{160, 120 - radius}, 0, true, false, 4},
                  {{160, 120 + radius}, 1, true, false, 4}};
    EXPECT_EQ(sides.joins().size(), radius > 20) << radius;
  }
}

// From (100, 220) to (260, 60) and bowed towards the corner: what rises by a twelfth of its way or
// more is an arc, what rises by a hundredth is straight, and what lies between is told as neither.
TEST(Joins, AnArcRisesClearly) {
  struct Row {
    double rise;  ///< of the way
    std::size_t count;
    bool isArc;
  };
  for (const Row& row : {Row{0, 1, false}, Row{0.01, 1, false}, Row{0.065, 0, false},
                         Row{0.1, 1, true}, Row{0.2, 1, true}}) {
    Sides sides;
    sides.corner(160, 160);
    const double half = 80 * std::numbers::sqrt2, rise = 2 * half * row.rise;
    const double radius = rise > 0 ? (half * half + rise * rise) / (2 * rise) : 0;
    const double away = (radius - rise) / std::numbers::sqrt2;
    const double turn = rise > 0 ? std::asin(half / radius) * 180 / std::numbers::pi : 0;
    if (rise > 0)
      sides.arc({180 - away, 140 - away}, radius, -45 - turn, -45 + turn);
    else
      sides.line(100, 220, 260, 60, 4);
    const auto found = sides.joins();
    ASSERT_EQ(found.size(), row.count) << row.rise;
    if (row.count == 0) continue;
    EXPECT_EQ(found[0].arc, row.isArc) << row.rise;
    if (row.isArc) {
      EXPECT_NEAR(found[0].radius, radius, 0.04 * radius) << row.rise;
    }
  }
}

// A side goes on from an end forwards or to its side, not back beside its own stroke.
TEST(Joins, NoneRunsBackBesideItsStroke) {
  for (const bool past : {true, false}) {
    Sides sides;
    sides.line(20, 220, 200, 220, 4);
    sides.line(120, 20, 120, 140, 4);
    sides.line(120, 140, 200, 220, 4);
    sides.ends = {{{200, 220}, 0, past, false, 4}, {{120, 140}, 1, true, true, 4}};
    EXPECT_EQ(sides.joins().size(), !past) << past;
  }
}

// Of two from one end the longer is the side.
TEST(Joins, TheLongerComesFirst) {
  Sides sides;
  sides.corner(120, 120);
  sides.line(140, 220, 260, 100, 4);
  sides.line(200, 160, 200, 20, 4);  // a third stroke's end halfway
  sides.ends.insert(sides.ends.begin(), {{200, 160}, 2, true, true, 4});
  const auto found = sides.joins();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].one.stroke, 0U);
  EXPECT_EQ(found[0].other.stroke, 1U);
}

TEST(Joins, WhatHasMoreLooseEndsThanAPrintHasIsNone) {
  Sides sides;
  sides.corner(60, 60);
  sides.line(200, 220, 260, 160, 4);
  for (std::size_t n = 2; n < 400; ++n) sides.ends.push_back({{5, 5}, n, true, false, 4});
  EXPECT_EQ(sides.joins().size(), 1U);
  sides.ends.push_back({{5, 5}, 400, true, false, 4});
  EXPECT_TRUE(sides.joins().empty());
}

TEST(Joins, WhatLiesOnAnArc) {
  Join quarter;  // from (180, 100) down to (100, 180), round (100, 100)
  quarter.arc = true;
  quarter.centre = {100, 100};
  quarter.radius = 80;
  quarter.from = {180, 100};
  quarter.to = {100, 180};
  struct Row {
    PlanePoint at;
    bool isOn;
  };
  const Row rows[] = {{{156.6, 156.6}, true}, {{180, 100}, true},  {{160, 160}, false},
                      {{153.7, 153.7}, true}, {{152, 152}, false}, {{20, 100}, false},
                      {{100, 20}, false},     {{43, 43}, false},   {{140, 140}, false}};
  for (const Row& row : rows)
    EXPECT_EQ(isOnArc(quarter, row.at, 4.5), row.isOn) << row.at.x << " " << row.at.y;
  quarter.arc = false;
  EXPECT_FALSE(isOnArc(quarter, {156.6, 156.6}, 4.5));
}

}  // namespace
}  // namespace inchwright::seen
