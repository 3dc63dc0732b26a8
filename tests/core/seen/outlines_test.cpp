// Which thick strokes are the outlines of views, and what is offered of them.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/seen/drawn_features.h"
#include "core/seen/looked_at.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfViews = 200;  // the sheet's inch, pixels
// 100 pixels to the face's inch, its zero at pixel (50, 300).
const Frame kFrame{100, -0.5, 3};

struct Sheet : Pen {
  Sheet() : Pen(1000, 700) {}

  void box(double x0, double y0, double x1, double y1, double thick = 4) {
    for (const double y : {y0, y1}) line(x0, y, x1, y, thick);
    for (const double x : {x0, x1}) line(x, y0, x, y1, thick);
  }
  void wipe(int x0, int y0, int x1, int y1) {
    for (int y = y0; y < y1; ++y) std::fill_n(cover.row(y) + x0, x1 - x0, std::uint8_t{0});
  }
  Outlines outlines(const std::vector<Circle>& circles = {}, Frame frame = kFrame) const {
    return outlinesOf(viewOf(cover, kOfViews), viewOf(transposed(cover), kOfViews), circles, frame);
  }
};

void expectView(const ViewBox& view, double x0, double y0, double x1, double y1) {
  EXPECT_NEAR(view.x0, x0, 4);
  EXPECT_NEAR(view.y0, y0, 4);
  EXPECT_NEAR(view.x1, x1, 4);
  EXPECT_NEAR(view.y1, y1, 4);
}

// Two views with a frame and a title block about them: the one by the zero first, wherever it lies.
TEST(Outlines, AreTheViewsAndNotWhatFramesThem) {
  for (const bool isRight : {false, true}) {
    Sheet sheet;
    sheet.box(10, 10, 990, 690);
    sheet.box(60, 100, 360, 300);
    sheet.box(500, 100, 900, 400);
    const Frame frame{100, isRight ? -5 : -0.5, isRight ? 4.0 : 3.0};
    const Outlines found = sheet.outlines({}, frame);
    ASSERT_EQ(found.views.size(), 2U) << isRight;
    expectView(found.views[isRight ? 1 : 0], 60, 100, 360, 300);
    expectView(found.views[isRight ? 0 : 1], 500, 100, 900, 400);
    ASSERT_EQ(found.sides.size(), 8U);
    for (const Outlines::Side& side : found.sides) {
      const bool isOfRight = (side.plumb ? side.stroke.y0 : side.stroke.x0) > 450;
      EXPECT_EQ(side.view, isOfRight == isRight ? 0 : 1);
      EXPECT_TRUE(side.cornerFrom && side.cornerPast);
      EXPECT_GT(side.whole, 0.97);
    }
    EXPECT_EQ(viewAt(found, 400, 200), isRight ? 1 : 0);
    EXPECT_EQ(viewAt(found, 460, 200), isRight ? 0 : 1);
    EXPECT_EQ(viewAt(found, 200, 600), isRight ? 1 : 0);
  }
}

// Half an inch on the sheet at its longer side; drawn thick; three sides, or of letters one.
TEST(Outlines, AreWhatIsLargeAndThickEnough) {
  struct Row {
    double wide, high, thick;
    bool isOne;
  };
  for (const Row& row : {Row{300, 200, 4, true}, Row{110, 60, 4, true}, Row{60, 110, 4, true},
                         Row{92, 60, 4, false}, Row{300, 200, 2, false}, Row{300, 200, 3, true}}) {
    Sheet sheet;
    sheet.box(60, 100, 60 + row.wide, 100 + row.high, row.thick);
    EXPECT_EQ(sheet.outlines().views.size(), row.isOne) << row.wide << " " << row.thick;
  }
  Sheet angle, open;
  angle.line(60, 300, 360, 300, 4);
  angle.line(60, 100, 60, 300, 4);
  EXPECT_TRUE(angle.outlines().views.empty()) << "two strokes";
  open.line(60, 300, 360, 300, 4);
  for (const double x : {60.0, 360.0}) open.line(x, 100, x, 300, 4);
  EXPECT_EQ(open.outlines().views.size(), 1U) << "three";
  // A row of short strokes on a long one is lettering, or a scale.
  Sheet comb;
  comb.line(60, 300, 660, 300, 4);
  for (double x = 60; x <= 660; x += 100) comb.line(x, 270, x, 300, 4);
  EXPECT_EQ(comb.outlines().views.size(), 1U);
  Sheet letters;
  for (double x = 60; x <= 660; x += 60) {
    letters.line(x, 270, x, 300, 4);
    letters.line(x, 285, x + 56, 285, 4);
  }
  EXPECT_TRUE(letters.outlines().views.empty());
}

// An opening is of the view that it lies in, and has sides of its own.
TEST(Outlines, AnOpeningIsOfItsView) {
  Sheet sheet;
  sheet.box(60, 100, 360, 300);
  sheet.box(500, 100, 900, 400);
  sheet.box(600, 180, 760, 320);
  const Outlines found = sheet.outlines();
  ASSERT_EQ(found.views.size(), 2U);
  const auto count = [&](int view) {
    return std::count_if(found.sides.begin(), found.sides.end(),
                         [&](const Outlines::Side& side) { return side.view == view; });
  };
  EXPECT_EQ(count(0), 4);
  EXPECT_EQ(count(1), 8);
}

// A figure that stands in a side breaks it: up to four fifths of an inch of the sheet, on one line.
TEST(Outlines, ASideBrokenByAFigureIsOne) {
  struct Row {
    int gap;
    std::size_t sides;
  };
  for (const Row& row : {Row{60, 4}, Row{150, 4}, Row{170, 5}}) {
    Sheet sheet;
    sheet.box(100, 100, 700, 500);
    sheet.wipe(300, 490, 300 + row.gap, 510);
    const Outlines found = sheet.outlines();
    ASSERT_EQ(found.sides.size(), row.sides) << row.gap;
    const auto low = std::find_if(
        found.sides.begin(), found.sides.end(),
        [](const Outlines::Side& side) { return !side.plumb && side.stroke.y0 > 400; });
    ASSERT_NE(low, found.sides.end());
    EXPECT_TRUE(low->cornerFrom);
    EXPECT_EQ(low->cornerPast, row.sides == 4) << row.gap;
    if (row.sides > 4) continue;
    EXPECT_NEAR(low->stroke.length(), 600, 4);
    EXPECT_NEAR(low->whole, 1 - row.gap / 600.0, 0.02) << row.gap;
  }
  // A step is none: the second piece lies a twentieth of an inch lower.
  Sheet step;
  for (const double x : {100.0, 700.0}) step.line(x, 100, x, 500, 4);
  step.line(100, 100, 700, 100, 4);
  step.line(100, 500, 300, 500, 4);
  step.line(360, 490, 700, 490, 4);
  EXPECT_EQ(step.outlines().sides.size(), 5U);
}

// Of each side, round, slanted side, arc and hole: where it is, and whether one Enter may take it.
TEST(Outlines, WhatIsOfferedOfThem) {
  Outlines of;
  of.views = {{50, 100, 450, 300}, {600, 100, 900, 300}};
  of.sides = {{{50, 450, 300, 300, 4}, false, 0, 0.98, true, true},
              {{100, 300, 450, 450, 4}, true, 0, 0.96, true, true},
              {{100, 300, 600, 602, 4}, true, 1, 1, true, false},
              {{600, 900, 100, 100, 4}, false, 1, 1, false, true}};
  Rounding round;
  round.corner = {450, 100};
  round.centre = {410, 140};
  round.radius = 40;
  round.drawn = 0.97;
  of.rounds = {round, round};
  of.rounds[1].corner = {900, 300};
  of.rounds[1].drawn = 0.96;
  Join slanted;
  slanted.from = {850, 100};
  slanted.to = {800, 200};
  slanted.drawn = 0.97;
  Join arc = slanted;
  std::swap(arc.from, arc.to);
  arc.arc = true;
  arc.centre = {850, 200};
  arc.radius = 50;
  arc.drawn = 0.96;
  of.joins = {slanted, arc};
  const std::vector<Circle> circles{
      {150, 200, 20, 0.95, 0.8, 0.75}, {250, 200, 20, 0.89, 1.2, 0.75},
      {350, 200, 20, 0.95, 0.8, 0.65}, {750, 200, 8, 0.95, 0.8, 0.25},
      {700, 200, 8, 0.95, 0.8, 0.35},  {500, 200, 20, 1, 1, 1},
      {150, 250, 20, 1, 0.45, 1},      {455, 200, 20, 1, 1, 1}};
  struct Row {
    OfferedFeature kind;
    PlanePoint at, from, to;
    double radius;
    int view;
    double sure;
    bool ready;
  };
  using O = OfferedFeature;
  const Row rows[] = {
      {O::edge, {2, 0}, {0, 0}, {4, 0}, 0, 0, 0.98, true},
      {O::edge, {4, 1}, {4, 0}, {4, 2}, 0, 0, 0.96, false},
      {O::edge, {5.51, 1}, {5.52, 0}, {5.5, 2}, 0, 1, 1, false},
      {O::edge, {7, 2}, {5.5, 2}, {8.5, 2}, 0, 1, 1, false},
      {O::round, {3.6, 1.6}, {3.6, 2}, {4, 1.6}, 0.4, 0, 0.97, true},
      {O::round, {3.6, 1.6}, {3.6, 0}, {8.5, 1.6}, 0.4, 1, 0.96, false},
      {O::line, {7.75, 1.5}, {7.5, 1}, {8, 2}, 0, 1, 0.97, true},
      {O::arc, {8, 1}, {7.5, 1}, {8, 2}, 0.5, 1, 0.96, false},
      {O::hole, {1, 1}, {}, {}, 0.2, 0, 0.76, true},
      {O::hole, {2, 1}, {}, {}, 0.2, 0, 0.89, false},
      {O::hole, {3, 1}, {}, {}, 0.2, 0, 0.76, false},
      // As small as a letter's bowl it needs centre lines; off every view or without a cross it is
      // none.
      {O::hole, {6.5, 1}, {}, {}, 0.08, 1, 0.76, false},
  };
  const std::vector<FeatureOffer> found = featuresOf(of, circles, kFrame, kOfViews);
  std::vector<Row> wanted(std::begin(rows), std::end(rows));
  ASSERT_EQ(found.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const Row& row = wanted[i];
    const FeatureOffer& one = found[i];
    EXPECT_EQ(one.kind, row.kind) << i;
    EXPECT_NEAR(std::hypot(one.at.x - row.at.x, one.at.y - row.at.y), 0, 1e-9) << i;
    EXPECT_NEAR(std::hypot(one.from.x - row.from.x, one.from.y - row.from.y), 0, 1e-9) << i;
    EXPECT_NEAR(std::hypot(one.to.x - row.to.x, one.to.y - row.to.y), 0, 1e-9) << i;
    EXPECT_NEAR(one.drawnRadius, row.radius, 1e-9) << i;
    EXPECT_EQ(one.view, row.view) << i;
    EXPECT_NEAR(one.sure, row.sure, 1e-9) << i;
    EXPECT_EQ(one.ready, row.ready) << i;
    EXPECT_EQ(one.alongX, i == 1 || i == 2) << i;
  }
}

}  // namespace
}  // namespace inchwright::seen
