#include "core/seen/shapes.h"

#include <gtest/gtest.h>

#include <numbers>

#include "core/seen/looked_at.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfShape = 200;  // the sheet's inch, pixels; so is the face's

/// Holes of 12 pixels on a circle of 100 round (300, 300), which is drawn.
struct Ringed {
  std::vector<double> turns;  ///< of the holes, degrees anticlockwise as seen
  double radius = 100;
  double drawn = 1;         ///< how much of the circle is
  std::size_t larger = 99;  ///< which hole is larger by a half
  double hole = 12;

  std::vector<FeatureOffer> rings() const {
    Pen pen(1400, 1400);
    const double cx = radius > 300 ? 700 : 300;
    const auto at = [&](double degrees) {
      const double t = degrees * std::numbers::pi / 180;
      return PlanePoint{cx + radius * std::cos(t), cx - radius * std::sin(t)};
    };
    for (double t = 0; t < 360; t += 20 / radius) {
      const PlanePoint p = at(t);
      if (std::fmod(t, 10) < 10 * drawn) pen.line(p.x, p.y, p.x, p.y, 1.6);
    }
    std::vector<Circle> holes;
    for (std::size_t i = 0; i < turns.size(); ++i) {
      const PlanePoint p = at(turns[i]);
      holes.push_back({p.x, p.y, i == larger ? 1.5 * hole : hole});
    }
    return ringsOf(holes, pen.cover, {}, {kOfShape, 1, 9}, kOfShape, Stop());
  }
};

std::vector<double> evenly(int count, double first) {
  std::vector<double> turns;
  for (int i = 0; i < count; ++i) turns.push_back(first + 360.0 * i / count);
  return turns;
}

TEST(Rings, HolesEvenlyOnACircleThatIsDrawn) {
  const std::pair<double, std::optional<int>> firsts[] = {
      {90, 90}, {0, 0}, {180, 180}, {270, 270}, {30, 270}, {15, std::nullopt}, {50, std::nullopt}};
  for (const auto& [first, square] : firsts) {
    const auto rings = Ringed{evenly(3, first)}.rings();
    ASSERT_EQ(rings.size(), 1U) << first;
    EXPECT_EQ(rings[0].firstAngle, square) << first;
  }
  for (const int count : {3, 4, 5, 6, 8}) {
    const auto rings = Ringed{evenly(count, 90)}.rings();
    ASSERT_EQ(rings.size(), 1U) << count;
    EXPECT_EQ(rings[0].kind, OfferedFeature::ring);
    EXPECT_EQ(rings[0].count, count);
    EXPECT_NEAR(rings[0].at.x, 1 + 1.5, 1e-9);
    EXPECT_NEAR(rings[0].at.y, 9 - 1.5, 1e-9);
    EXPECT_NEAR(rings[0].drawnRadius, 0.5, 1e-9);
    EXPECT_EQ(rings[0].sure, 1);
    EXPECT_TRUE(rings[0].ready);
    EXPECT_EQ(rings[0].firstAngle, 90);
  }
}

// Five pixels are what a hole may be off: a fiftieth of the sheet's inch and one.
TEST(Rings, WhatIsNone) {
  EXPECT_TRUE((Ringed{{90, 210}}.rings().empty())) << "two";
  EXPECT_EQ((Ringed{{90, 212, 330}}.rings().size()), 1U) << "3.5 pixels off";
  EXPECT_TRUE((Ringed{{90, 218, 330}}.rings().empty())) << "14 off";
  EXPECT_TRUE((Ringed{{90, 180, 270}}.rings().empty())) << "a gap where a fourth would be";
  EXPECT_TRUE((Ringed{evenly(4, 90), 100, 1, 2}.rings().empty())) << "one of another size";
  EXPECT_TRUE((Ringed{evenly(4, 90), 100, 0.12}.rings().empty())) << "no circle";
  const auto dashed = Ringed{evenly(4, 90), 100, 0.25}.rings();
  ASSERT_EQ(dashed.size(), 1U) << "a circle of short dashes";
  EXPECT_FALSE(dashed[0].ready);
  EXPECT_TRUE((Ringed{evenly(3, 90), 26, 1, 99, 6}.rings().empty())) << "as small as lettering";
  EXPECT_EQ((Ringed{evenly(3, 90), 34, 1, 99, 6}.rings().size()), 1U);
  EXPECT_TRUE((Ringed{evenly(3, 90), 610}.rings().empty())) << "more than six inches wide";
  EXPECT_EQ((Ringed{evenly(3, 90), 590}.rings().size()), 1U);
}

/// A slot of 18 pixels to its rounds round (300, 200), whose ends lie 40 to either side.
struct Slotted {
  double half = 40;
  double radius = 18;
  double thick = 3;
  double centre = 1;  ///< how much of its centre line is drawn
  bool ends = true;
  double shifted = 0;  ///< its lower side, to the right
  std::vector<Circle> circles = {};
  double viewPast = 500;  ///< where the part ends

  std::vector<FeatureOffer> slots(bool plumb = false) const {
    Pen pen(1600, 400);
    const double x = half > 250 ? 800 : 300;
    for (const int side : {-1, 1}) {
      const double off = side > 0 ? shifted : 0;
      pen.line(x - half + off, 200 + side * radius, x + half + off, 200 + side * radius, thick);
      for (double t = -90; t < 90 && ends; t += 2) {
        const double a = t * std::numbers::pi / 180, b = (t + 2) * std::numbers::pi / 180;
        pen.line(x + side * (half + radius * std::cos(a)), 200 + radius * std::sin(a),
                 x + side * (half + radius * std::cos(b)), 200 + radius * std::sin(b), thick);
      }
    }
    for (double part = -1; part < 1; part += 0.25) {
      if (centre > 0) pen.line(x + half * part, 200, x + half * (part + 0.25 * centre), 200, 1);
    }
    Outlines outlines;
    outlines.views.push_back(plumb ? ViewBox{20, 20, 380, viewPast * (half > 250 ? 9 : 1)}
                                   : ViewBox{20, 20, viewPast * (half > 250 ? 9 : 1), 380});
    std::vector<Circle> own = circles;
    if (plumb) {
      for (Circle& c : own) std::swap(c.x, c.y);
    }
    return slotsOf(viewOf(pen.cover, kOfShape), plumb, outlines, own, {kOfShape, 0, 8}, Stop());
  }
};

TEST(Slots, HalfARoundAtEitherEndOfTwoSides) {
  for (const bool plumb : {false, true}) {
    const auto slots = Slotted().slots(plumb);
    ASSERT_EQ(slots.size(), 1U) << plumb;
    EXPECT_EQ(slots[0].kind, OfferedFeature::slot);
    EXPECT_TRUE(slots[0].ready);
    EXPECT_GT(slots[0].sure, 0.97);
    EXPECT_NEAR(slots[0].drawnRadius, 18 / kOfShape, 0.5 / kOfShape);
    // The ends are seen to some pixels, since the rounds run into the sides.
    const PlanePoint low{(300 - 40) / kOfShape, 8 - 200 / kOfShape},
        high{(300 + 40) / kOfShape, 8 - 200 / kOfShape};
    const PlanePoint from = plumb ? PlanePoint{1, 8 - high.x} : low,
                     to = plumb ? PlanePoint{1, 8 - low.x} : high;
    EXPECT_LT(std::hypot(slots[0].from.x - from.x, slots[0].from.y - from.y), 6 / kOfShape);
    EXPECT_LT(std::hypot(slots[0].to.x - to.x, slots[0].to.y - to.y), 6 / kOfShape);
    const PlanePoint at = plumb ? PlanePoint{1, 8 - 1.5} : PlanePoint{1.5, 7};
    EXPECT_LT(std::hypot(slots[0].at.x - at.x, slots[0].at.y - at.y), 1 / kOfShape);
  }
}

TEST(Slots, WhatIsNone) {
  struct Case {
    const char* what;
    Slotted drawn;
    int count;  ///< and 2 where it is ready
  };
  const Case cases[] = {
      {"a long one", {.half = 200}, 2},
      {"longer than three inches", {.half = 310}, 0},
      {"a wide one", {.half = 150, .radius = 90}, 2},
      {"wider than an inch", {.half = 150, .radius = 104}, 0},
      {"a narrow one", {.radius = 9}, 2},
      {"no wider than a stem of lettering", {.radius = 5, .thick = 2}, 0},
      {"without its centre line", {.centre = 0}, 0},
      {"with half of it", {.centre = 0.2}, 1},
      {"drawn by a thin pen", {.thick = 1.4}, 0},
      {"without its rounds", {.ends = false}, 0},
      {"whose sides are shifted", {.shifted = 26}, 0},
      {"hardly longer than wide", {.half = 15}, 1},
      {"a circle in its middle", {.circles = {{300, 200, 18}}}, 0},
      {"a circle at its end", {.circles = {{340, 200, 18}}}, 2},
      {"beside the part", {.viewPast = 290}, 0},
  };
  for (const bool plumb : {false, true}) {
    for (const Case& one : cases) {
      const auto slots = one.drawn.slots(plumb);
      ASSERT_EQ(slots.size(), one.count > 0) << one.what << plumb;
      if (one.count == 0) continue;
      EXPECT_EQ(slots[0].ready, one.count == 2) << one.what << plumb;
    }
  }
}

}  // namespace
}  // namespace inchwright::seen
