#include "core/place/curve.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace inchwright {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

TEST(Curve, ADiscOnTheTable) {
  // A 6 in disc with a 3/4 end mill: the spindle 3 3/8 from the centre (a machining course's
  // question, figure worked out here).
  const CurveAsItLies disc{{{0, 0}, 3}, 0, 360, false, false, false};
  EXPECT_DOUBLE_EQ(*spindleDistance(disc, 0.75), 3.375);
  const CurveAsItLies hollow{{{0, 0}, 3}, 0, 90, true, false, false};
  EXPECT_DOUBLE_EQ(*spindleDistance(hollow, 0.75), 2.625);
  EXPECT_FALSE(spindleDistance(hollow, 6.5));
  EXPECT_FALSE(spindleDistance(disc, 0));
}

TEST(Curve, ARoundEndByHand) {
  // The right end of a bar: from −90° to 90° about its hole. Cutter to the right, dial
  // anticlockwise: α = −90 is under it at 90, α = 90 at −90, which the dial shows as 270. The table
  // is turned clockwise: the dial goes down from 90 over 0 to 270.
  const CurveAsItLies end{{{0, 0}, 0.5}, -90, 180, false, false, false};
  const DialReadings dial = dialReadings(end, CutterAt::right, false, 0);
  EXPECT_DOUBLE_EQ(dial.start, 90);
  EXPECT_DOUBLE_EQ(dial.end, 270);
  EXPECT_TRUE(dial.isTurnedClockwise);
  const DialReadings away = dialReadings(end, CutterAt::away, false, 0);
  EXPECT_DOUBLE_EQ(away.start, 180);
  EXPECT_DOUBLE_EQ(away.end, 0);
  const DialReadings clockwise = dialReadings(end, CutterAt::right, true, 0);
  EXPECT_DOUBLE_EQ(clockwise.start, 270);
  EXPECT_DOUBLE_EQ(clockwise.end, 90);
}

// Turns the work on the table under a cutter that stands still, and says where on the work it is.
double workAngleUnderCutter(double dial, CutterAt at, bool countsClockwise) {
  const double turned = countsClockwise ? -dial : dial;  // anticlockwise
  const double cutter = 90.0 * static_cast<int>(at);
  // A mark at angle a on the work lies at a + turned on the machine.
  for (double a = 0; a < 360; a += 0.25) {
    const double x = std::cos((a + turned) * kDegree), y = std::sin((a + turned) * kDegree);
    if (std::hypot(x - std::cos(cutter * kDegree), y - std::sin(cutter * kDegree)) < 1e-9) return a;
  }
  return -1;
}

TEST(Curve, TheDialBringsTheTouchingPointsUnderTheCutter) {
  std::mt19937 random(11);
  for (int run = 0; run < 300; ++run) {
    CurveAsItLies curve;
    curve.circle.radius = 1;
    curve.start = 0.25 * static_cast<double>(random() % 1440);
    curve.sweep = 0.25 * static_cast<double>(1 + random() % 1300);
    curve.isInside = random() % 2 == 0;
    const auto at = static_cast<CutterAt>(random() % 4);
    const bool clockwise = random() % 2 == 0;
    const DialReadings dial = dialReadings(curve, at, clockwise, 0);
    const double low = std::fmod(curve.start, 360);
    const double high = std::fmod(curve.start + curve.sweep, 360);
    EXPECT_EQ(workAngleUnderCutter(dial.start, at, clockwise), curve.isInside ? high : low);
    EXPECT_EQ(workAngleUnderCutter(dial.end, at, clockwise), curve.isInside ? low : high);
    EXPECT_EQ(dial.isTurnedClockwise, !curve.isInside);
    // Turned that way from the first reading, half the sweep on, the middle is under the cutter.
    const double clockwiseBy = dial.isTurnedClockwise ? curve.sweep : -curve.sweep;
    const double half = dial.start + (clockwise ? 1 : -1) * clockwiseBy / 2;
    const double middle = std::fmod(curve.start + curve.sweep / 2, 360);
    const double under = std::fmod(
        (clockwise ? 1 : -1) * half + 90.0 * static_cast<int>(at) + (clockwise ? 0 : 720), 360);
    EXPECT_NEAR(std::remainder(under - middle, 360), 0, 1e-9);
  }
}

TEST(Curve, OverrunOnlyInTheAir) {
  CurveAsItLies end{{{0, 0}, 0.375}, -90, 180, false, true, true};
  const DialReadings dial = dialReadings(end, CutterAt::right, false, 5);
  EXPECT_DOUBLE_EQ(dial.start, 95);
  EXPECT_DOUBLE_EQ(dial.end, 265);
  EXPECT_FALSE(dial.overrunRefused);
  end.endsInAir = false;
  const DialReadings refused = dialReadings(end, CutterAt::right, false, 5);
  EXPECT_TRUE(refused.overrunRefused);
  EXPECT_DOUBLE_EQ(refused.start, 90);
  EXPECT_DOUBLE_EQ(refused.end, 270);
}

// The ridge between two discs, by walking along the curve and looking how far out the metal that
// neither disc took stands: no formula of the header.
double ridgeByDiscs(const CurveAsItLies& curve, double diameter, double apart) {
  const double r = diameter / 2;
  const double way = curve.circle.radius + (curve.isInside ? -r : r);
  const double ax = way * std::cos(-apart / 2 * kDegree), ay = way * std::sin(-apart / 2 * kDegree);
  const auto isCut = [&](double x, double y) {
    return std::hypot(x - ax, y - ay) < r || std::hypot(x - ax, y + ay) < r;
  };
  double highest = 0;
  for (int i = -200; i <= 200; ++i) {
    const double angle = apart / 2 * kDegree * i / 200;
    double low = 0, high = r;
    // Metal from the curve outwards (inwards in a hollow) up to the first disc.
    const auto at = [&](double h) {
      const double radius = curve.circle.radius + (curve.isInside ? -h : h);
      return isCut(radius * std::cos(angle), radius * std::sin(angle));
    };
    for (int step = 0; step < 50; ++step) {
      const double middle = (low + high) / 2;
      (at(middle) ? high : low) = middle;
    }
    highest = std::max(highest, low);
  }
  return highest;
}

TEST(Curve, RidgesAgreeWithDiscs) {
  for (const bool inside : {false, true}) {
    for (const double radius : {0.375, 1.0, 4.0}) {
      for (const double diameter : {0.125, 0.25, 0.5}) {
        for (const double apart : {1.0, 2.5, 5.0}) {
          const CurveAsItLies curve{{{0, 0}, radius}, 0, 180, inside, false, false};
          const auto ridge = ridgeBetween(curve, diameter, apart);
          if (!ridge) continue;
          EXPECT_NEAR(*ridge, ridgeByDiscs(curve, diameter, apart), 1e-9)
              << radius << " " << diameter << " " << apart << " " << inside;
        }
      }
    }
  }
}

TEST(Curve, TooFarApartIsTold) {
  const CurveAsItLies curve{{{0, 0}, 2}, 0, 180, false, false, false};
  EXPECT_FALSE(ridgeBetween(curve, 0.25, 30));
  const CutterPoints points = pointsByCount(curve, 0.25, 4);
  EXPECT_EQ(points.points.size(), 4U);
  EXPECT_FALSE(points.ridge);
}

TEST(Curve, ByRidgeTheFewestThatKeepIt) {
  for (const bool inside : {false, true}) {
    const CurveAsItLies curve{{{1, 2}, 1}, 30, 120, inside, false, false};
    const auto points = pointsByRidge(curve, 0.25, 0.002);
    ASSERT_TRUE(points);
    EXPECT_LE(*points->ridge, 0.002);
    const int count = static_cast<int>(points->points.size());
    const CutterPoints fewer = pointsByCount(curve, 0.25, count - 1);
    EXPECT_TRUE(!fewer.ridge || *fewer.ridge > 0.002);
    const double way = inside ? 0.875 : 1.125;
    EXPECT_NEAR(points->points.front().x, 1 + way * std::cos(30 * kDegree), 1e-14);
    EXPECT_NEAR(points->points.back().y, 2 + way * std::sin(150 * kDegree), 1e-14);
  }
}

TEST(Curve, AboutTheRuleOfThumb) {
  // h is about R(R + r)φ²/8r.
  const CurveAsItLies curve{{{0, 0}, 2}, 0, 90, false, false, false};
  const double phi = 2 * kDegree;
  const double rule = 2 * 2.25 * phi * phi / 8 / 0.25;
  EXPECT_NEAR(*ridgeBetween(curve, 0.5, 2), rule, rule / 100);
}

}  // namespace
}  // namespace inchwright
