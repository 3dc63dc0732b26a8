#include "core/seen/angles.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfAngle = 200;  // the sheet's inch, pixels

/// Two lines from a corner at (60, 400), one level and one that rises, and between them an arc of
/// 200 pixels with a gap for its figure.
struct Angled {
  double degrees = 40;
  double radius = 200;
  double level = 1, slanted = 1;  ///< how much of each line is drawn, from its end inwards
  double from = 0, past = 1;      ///< how much of the arc is, of its way up
  double gap = 40;                ///< the figure's width and half as much its height, pixels
  double figureAt = 0.5;          ///< of the way up
  double lineLong = 400;
  std::vector<Circle> holes = {};

  PlanePoint at(double far, double turn) const {
    const double t = turn * std::numbers::pi / 180;
    return {60 + far * std::cos(t), 400 - far * std::sin(t)};
  }

  std::vector<AngleArc> found() const {
    Pen pen(600, 800);
    const auto ray = [&](double turn, double share) {
      const PlanePoint a = at(lineLong * (1 - share), turn), b = at(lineLong, turn);
      if (share > 0) pen.line(a.x, a.y, b.x, b.y, 1.6);
    };
    ray(0, level);
    ray(degrees, slanted);
    const PlanePoint figure = at(radius, degrees * figureAt);
    const double clear = std::hypot(gap, gap / 2) / 2 + 4;
    for (double part = from; part < past; part += 0.004) {
      const PlanePoint p = at(radius, degrees * part);
      if (std::hypot(p.x - figure.x, p.y - figure.y) > clear) pen.line(p.x, p.y, p.x, p.y, 2);
    }
    Outlines outlines;
    outlines.views.push_back({60, 100, 500, 400});
    outlines.sides.push_back({{60, 500, 400, 400, 4}, false, 0, 1, true, true});
    outlines.sides.push_back({{100, 400, 60, 60, 4}, true, 0, 1, true, true});
    Lettering whole, bare;
    whole.blocks.push_back({{static_cast<int>(std::lround(figure.x - gap / 2)),
                             static_cast<int>(std::lround(figure.y - gap / 4)),
                             static_cast<int>(gap), static_cast<int>(gap / 2)},
                            {}});
    bare.blocks = whole.blocks;
    return angleArcsOf(outlines, holes, pen.cover, whole, bare, kOfAngle, Stop());
  }
};

// Ink is seen a pixel or two beyond its end, which on an arc of 200 is up to 1.1 degrees.
TEST(Angles, FromALevelLineToASlantingOne) {
  for (const double degrees : {36.0, 40.0, 62.0, -36.0, -55.0}) {
    const auto found = Angled{.degrees = degrees}.found();
    ASSERT_EQ(found.size(), 1U) << degrees;
    EXPECT_NEAR(found[0].degrees, degrees, 1.1);
    EXPECT_NEAR(found[0].radius, 200, 2);
    EXPECT_NEAR(found[0].corner.x, 60, 1e-9);
    EXPECT_NEAR(found[0].corner.y, 400, 1e-9);
    const PlanePoint to = Angled().at(200, degrees), middle = Angled().at(200, degrees / 2);
    EXPECT_NEAR(found[0].to.x, to.x, 4) << degrees;
    EXPECT_NEAR(found[0].to.y, to.y, 4) << degrees;
    EXPECT_NEAR(found[0].figure.x, middle.x, 1);
    EXPECT_NEAR(found[0].figure.y, middle.y, 1);
    EXPECT_GT(found[0].sure, 0.95);
  }
}

// Either line may be a centre line, of which three fifths are ink; 0.3 of the arc's radius at the
// corner are left open.
TEST(Angles, WhatIsNone) {
  struct Row {
    const char* what;
    Angled drawn;
    bool isOne;
  };
  const Row rows[] = {
      {"no level line", {.level = 0}, false},
      {"no slanting line", {.slanted = 0}, false},
      {"half of either", {.level = 0.8, .slanted = 0.8}, true},
      {"less of it than three fifths", {.slanted = 0.66}, false},
      {"an arc that ends short of the level line", {.from = 0.2}, false},
      {"none below the figure", {.from = 0.5}, false},
      {"none above it", {.past = 0.5}, false},
      {"a small one", {.radius = 50, .gap = 12}, false},
      {"a figure as wide as a note", {.degrees = 60, .radius = 330, .gap = 190}, false},
      {"a line that is nearly plumb", {.degrees = 89.6, .figureAt = 0.4}, false},
      {"a figure right at the level line", {.figureAt = 0.06}, false},
  };
  for (const Row& row : rows) EXPECT_EQ(row.drawn.found().size(), row.isOne) << row.what;
}

// The line leads to the first hole that lies on it beyond the arc, and that says where it runs.
TEST(Angles, LeadToTheFirstHoleOnTheLine) {
  Angled drawn;
  const auto hole = [&](double far, double turn) {
    const PlanePoint p = drawn.at(far, turn);
    return Circle{p.x, p.y, 15};
  };
  drawn.holes = {hole(370, 40), hole(280, 40.5), hole(150, 40), hole(300, 46)};
  const auto found = drawn.found();
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].to, (PlanePoint{drawn.holes[1].x, drawn.holes[1].y}));
  EXPECT_NEAR(found[0].degrees, 40.5, 1e-9);
  drawn.holes = {hole(300, 44)};
  EXPECT_NEAR(drawn.found().at(0).degrees, 40, 1.1) << "a hole 20 pixels off it";
}

// A hole's centre and a rounded corner are corners of angles as well; two sides that do not meet
// are none.
TEST(Angles, StartAtCornersAndHoles) {
  const Angled drawn;
  ASSERT_EQ(drawn.found().size(), 1U);
  const auto countFrom = [&](const Outlines& outlines, const std::vector<Circle>& holes) {
    Pen pen(600, 500);
    for (const double turn : {0.0, 40.0}) {
      const PlanePoint end = drawn.at(400, turn);
      pen.line(60, 400, end.x, end.y, 1.6);
    }
    for (double turn = 0; turn < 40; turn += 0.2) {
      const PlanePoint p = drawn.at(200, turn);
      if (std::abs(turn - 20) > 7.5) pen.line(p.x, p.y, p.x, p.y, 2);
    }
    const PlanePoint figure = drawn.at(200, 20);
    Lettering whole;
    whole.blocks.push_back(
        {{static_cast<int>(figure.x) - 20, static_cast<int>(figure.y) - 10, 40, 20}, {}});
    return angleArcsOf(outlines, holes, pen.cover, whole, {}, kOfAngle, Stop()).size();
  };
  EXPECT_EQ(countFrom({}, {}), 0U);
  EXPECT_EQ(countFrom({}, {{60, 400, 12}}), 1U);
  Outlines rounded;
  rounded.rounds.emplace_back();
  rounded.rounds.back().corner = {60, 400};
  EXPECT_EQ(countFrom(rounded, {}), 1U);
  EXPECT_EQ(countFrom(rounded, {{62, 401, 12}}), 1U) << "one corner, found twice";
  const auto sides = [](double levelFrom, double plumbPast, int view) {
    Outlines out;
    out.sides.push_back({{levelFrom, 500, 400, 400, 4}, false, 0, 1, true, true});
    out.sides.push_back({{100, plumbPast, 60, 60, 4}, true, view, 1, true, true});
    return out;
  };
  EXPECT_EQ(countFrom(sides(60, 400, 0), {}), 1U);
  EXPECT_EQ(countFrom(sides(68, 392, 0), {}), 1U) << "they stop a little short of it";
  EXPECT_EQ(countFrom(sides(90, 400, 0), {}), 0U);
  EXPECT_EQ(countFrom(sides(60, 370, 0), {}), 0U);
  EXPECT_EQ(countFrom(sides(60, 400, 1), {}), 0U) << "a side of another view";
}

}  // namespace
}  // namespace inchwright::seen
