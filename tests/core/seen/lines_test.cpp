#include <gtest/gtest.h>

#include "core/seen/circles.h"
#include "core/seen/inked.h"
#include "core/seen/lettering.h"
#include "core/seen/paper.h"
#include "core/seen/slanted.h"
#include "core/seen/strokes.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

TEST(Strokes, FindALineThatRises) {
  Pen pen(300, 60);
  pen.line(20, 30, 280, 34, 3);
  const auto strokes = levelStrokes(pen.cover, 100, 13);
  ASSERT_EQ(strokes.size(), 1U);
  EXPECT_NEAR(strokes[0].x0, 20, 3);
  EXPECT_NEAR(strokes[0].x1, 280, 3);
  EXPECT_NEAR(strokes[0].yAt(150), 32, 0.3);
  EXPECT_NEAR(strokes[0].thick, 3, 0.4);
}

TEST(Strokes, LeaveBlotsAndShortOnes) {
  Pen pen(200, 200);
  pen.line(100, 60, 100, 140, 60);  // a blot
  pen.line(10, 10, 17, 10, 2);
  EXPECT_TRUE(levelStrokes(pen.cover, 100, 13).empty());
  EXPECT_TRUE(levelStrokes(Grey(50, 50), 100, 13).empty());
}

TEST(Strokes, ChainOverGapsButNotOutOfLine) {
  const std::vector<Stroke> strokes{
      {0, 50, 10, 10, 2}, {60, 90, 10.5, 10.5, 2}, {95, 140, 20, 20, 2}, {300, 350, 10, 10, 2}};
  const auto chains = chained(strokes, 20, 3);
  ASSERT_EQ(chains.size(), 3U);
  EXPECT_EQ(chains[0].size(), 2U);
  const Stroke all = through(chains[0]);
  EXPECT_EQ(all.x0, 0);
  EXPECT_EQ(all.x1, 90);
  EXPECT_NEAR(all.yAt(45), 10.2, 0.3);
}

TEST(Circles, FindAHoleWithItsCross) {
  Pen pen(200, 160);
  pen.circle(90.3, 70.8, 30.4, 3);
  pen.line(50, 70.8, 130, 70.8, 1.5);
  pen.line(90.3, 30, 90.3, 112, 1.5);
  const auto circles = circlesOf(pen.cover, 200, Stop());
  ASSERT_EQ(circles.size(), 1U);
  EXPECT_NEAR(circles[0].x, 90.3, 0.3);
  EXPECT_NEAR(circles[0].y, 70.8, 0.3);
  EXPECT_NEAR(circles[0].radius, 30.4, 0.3);
  EXPECT_GT(circles[0].cross, 0.95);
}

TEST(Circles, OfEverySizeThatIsLookedFor) {
  for (const double radius : {9.0, 14.0, 21.0, 24.0, 27.0, 50.0, 75.0, 97.0}) {
    Pen pen(240, 240);
    pen.circle(119.6, 121.3, radius, 3);
    const auto circles = circlesOf(pen.cover, 200, Stop());
    ASSERT_EQ(circles.size(), 1U) << radius;
    EXPECT_NEAR(circles[0].x, 119.6, 0.3) << radius;
    EXPECT_NEAR(circles[0].y, 121.3, 0.3) << radius;
    EXPECT_NEAR(circles[0].radius, radius, 0.3);
  }
}

TEST(Circles, ABareCircleHasNoCrossAndABoxIsNone) {
  Pen pen(300, 160);
  pen.circle(60, 70, 25, 3);
  for (const double y : {40.0, 100.0}) pen.line(180, y, 240, y, 3);
  for (const double x : {180.0, 240.0}) pen.line(x, 40, x, 100, 3);
  const auto circles = circlesOf(pen.cover, 200, Stop());
  ASSERT_EQ(circles.size(), 1U);
  EXPECT_LT(circles[0].cross, 0.3);
}

TEST(Circles, EndWhenStopped) {
  Pen pen(200, 160);
  pen.circle(90, 70, 30, 3);
  const std::atomic<bool> stop{true};
  EXPECT_TRUE(circlesOf(pen.cover, 200, Stop(&stop)).empty());
}

TEST(Lettering, ALineThroughItIsTakenOutAndPutDown) {
  Pen pen(300, 80);
  pen.line(10, 40, 290, 40, 2);
  pen.line(150, 25, 150, 55, 4);  // a stroke of a figure across it
  const auto level = levelStrokes(pen.cover, 100, 13);
  Grey ruled;
  const Grey bare = withoutLines(pen.cover, level, {}, 100, ruled);
  EXPECT_EQ(bare.row(40)[60], 0);
  EXPECT_EQ(bare.row(40)[150], 255);
  EXPECT_EQ(bare.row(30)[150], 255);
  Lettering from;
  from.ruled = ruled;
  EXPECT_EQ(rulesIn(from, {100, 30, 80, 20}, false), std::vector<int>{10});
  EXPECT_TRUE(rulesIn(from, {100, 30, 80, 20}, true).empty());
}

TEST(Paper, TellsInkWhateverTheLight) {
  for (const bool blue : {false, true}) {
    Grey g(400, 300);
    for (int y = 0; y < g.height; ++y) {
      for (int x = 0; x < g.width; ++x) {
        const bool ink = y >= 140 && y < 144 && x > 40 && x < 360;
        const int paper = 120 + x / 4;
        const int tone = ink ? paper / 4 : paper;
        g.row(y)[x] = static_cast<std::uint8_t>(blue ? 255 - tone : tone);
      }
    }
    const Ink ink = inkOf(g, 100);
    EXPECT_EQ(ink.lightOnDark, blue);
    for (const int x : {60, 200, 340}) {
      EXPECT_GT(ink.cover.row(142)[x], 200) << x << blue;
      EXPECT_LT(ink.cover.row(100)[x], 40) << x << blue;
    }
  }
}

TEST(InkAlong, SaysWhereItIsBare) {
  Pen pen(220, 40);
  pen.line(10, 20, 80, 20, 3);
  pen.line(140, 20, 210, 20, 3);
  const InkAlong ink = inkAlong(pen.cover, {10, 20}, {210, 20}, 1);
  EXPECT_NEAR(ink.share, 0.7, 0.03);
  EXPECT_NEAR(ink.bareFrom, 0.36, 0.03);
  EXPECT_NEAR(ink.barePast, 0.64, 0.03);
  Pen ring(100, 100);
  ring.circle(50, 50, 30, 3);
  EXPECT_EQ(inkOnArc(ring.cover, {50, 50}, 30, 0, 360, 1), 1);
  EXPECT_EQ(inkOnArc(ring.cover, {50, 50}, 20, 0, 360, 1), 0);
}

// Between two holes 300 pixels apart, three inches, with its figure in the middle.
struct SlantedLine {
  double gapFrom = 0.4, gapPast = 0.6;  ///< of its length
  double breakAt = 0, breakLong = 0;    ///< a further gap, of its length and in pixels
  int figureX = 170, figureY = 160;
  double inch = 100;
  double top = 70;  ///< of the right hole

  std::vector<CentreLine> found() const {
    Pen pen(340, 300);
    const auto draw = [&](double from, double past) {
      pen.line(50 + 240 * from, 250 + (top - 250) * from, 50 + 240 * past, 250 + (top - 250) * past,
               2);
    };
    draw(0, breakAt);
    draw(breakAt + breakLong / 300, gapFrom);
    draw(gapPast, 1);
    Lettering lettering;
    lettering.blocks.push_back({{figureX - 30, figureY - 10, 60, 20}, {}});
    return centreLinesOf({{290, top, 20}, {50, 250, 20}}, pen.cover, lettering, inch, Stop());
  }
};

TEST(CentreLines, RunFromTheLeftOneWithAFigureInTheirGap) {
  const auto found = SlantedLine().found();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].from, 1);
  EXPECT_EQ(found[0].to, 0);
  EXPECT_NEAR(found[0].figure.x, 170, 2);
  EXPECT_NEAR(found[0].figure.y, 160, 2);
  EXPECT_NEAR(found[0].sure, 0.8, 0.03);
}

// A figure stands within 15 pixels and a quarter of its own width of the middle, and within 12
// above or below; a gap is 15 to 140 pixels long; a break of a few pixels is none.
TEST(CentreLines, OfWhatIsDrawnOtherwiseAreNone) {
  struct Row {
    SlantedLine line;
    bool isOne;
  };
  const Row rows[] = {
      {{.figureX = 197}, true},
      {{.figureX = 203}, false},
      {{.figureX = 143}, true},
      {{.figureX = 137}, false},
      {{.figureY = 170}, true},
      {{.figureY = 174}, false},
      {{.figureY = 146}, false},
      {{.gapFrom = 0.46, .gapPast = 0.54}, true},
      {{.gapFrom = 0.49, .gapPast = 0.51}, false},
      {{.gapFrom = 0.3, .gapPast = 0.7}, true},
      {{.gapFrom = 0.22, .gapPast = 0.78}, false},
      {{.breakAt = 0.25, .breakLong = 4}, true},
      {{.breakAt = 0.25, .breakLong = 15}, false},
      {{.inch = 450}, false},                 // shorter than seven tenths of an inch
      {{.figureY = 250, .top = 250}, false},  // level
  };
  for (const Row& row : rows) EXPECT_EQ(row.line.found().size(), row.isOne) << &row - rows;
}

}  // namespace
}  // namespace inchwright::seen
