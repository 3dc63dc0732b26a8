#include "core/geometry/path.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace inchwright {
namespace {

constexpr double kPi = std::numbers::pi;

TEST(Path, LinesMeetWhereBothPass) {
  // Up at x = 2, level at y = 3.
  const auto met = meetings(PlaneLine{kPi / 2, -2}, PlaneLine{0, 3});
  ASSERT_EQ(met.size(), 1U);
  EXPECT_NEAR(met[0].x, 2, 1e-15);
  EXPECT_NEAR(met[0].y, 3, 1e-15);
  EXPECT_TRUE(meetings(PlaneLine{0, 1}, PlaneLine{kPi, 1}).empty());
}

TEST(Path, ACircleIsCutTouchedOrMissed) {
  const PlaneCircle circle{{1, 1}, 5};
  EXPECT_EQ(meetings(PlaneLine{0, 4}, circle, 1e-6).size(), 2U);
  const auto touch = meetings(PlaneLine{0, 6}, circle, 1e-6);
  ASSERT_EQ(touch.size(), 1U);
  EXPECT_NEAR(touch[0].x, 1, 1e-15);
  EXPECT_EQ(meetings(PlaneLine{0, 6.01}, circle, 1.0 / 32).size(), 1U);
  EXPECT_TRUE(meetings(PlaneLine{0, 6.01}, circle, 1e-6).empty());
  for (const PlanePoint& p : meetings(PlaneLine{0, 4}, circle, 1e-6)) {
    EXPECT_NEAR(distanceBetween(p, circle.centre), 5, 1e-14);
    EXPECT_NEAR(p.y, 4, 1e-14);
  }
}

TEST(Path, CirclesTouchFromOutsideAndInside) {
  const auto outside = meetings(PlaneCircle{{0, 0}, 2}, PlaneCircle{{5, 0}, 3}, 1e-9);
  ASSERT_EQ(outside.size(), 1U);
  EXPECT_NEAR(outside[0].x, 2, 1e-15);
  const auto inside = meetings(PlaneCircle{{0, 0}, 2}, PlaneCircle{{3, 0}, 5}, 1e-9);
  ASSERT_EQ(inside.size(), 1U);
  EXPECT_NEAR(inside[0].x, -2, 1e-15);
  // Exactly so they touch even where nothing is allowed.
  EXPECT_EQ(meetings(PlaneCircle{{0, 0}, 2}, PlaneCircle{{5, 0}, 3}, 0).size(), 1U);
  EXPECT_EQ(meetings(PlaneCircle{{0, 0}, 2}, PlaneCircle{{3, 0}, 5}, 0).size(), 1U);
  EXPECT_EQ(meetings(PlaneLine{0, 2}, PlaneCircle{{0, 0}, 2}, 0).size(), 1U);
  EXPECT_EQ(meetings(PlaneCircle{{0, 0}, 5}, PlaneCircle{{6, 0}, 5}, 1e-9).size(), 2U);
  EXPECT_TRUE(meetings(PlaneCircle{{0, 0}, 5}, PlaneCircle{{0, 0}, 5}, 1e-9).empty());
}

// A 4 by 2 plate with a round end of radius 1 at the right.
std::vector<PathPiece> roundEnded() {
  return {{{0, 0}, {4, 0}, {}, 1, false},
          {{4, 0}, {4, 2}, PlaneCircle{{4, 1}, 1}, 1, false},
          {{4, 2}, {0, 2}, {}, 1, false},
          {{0, 2}, {0, 0}, {}, 1, false}};
}

TEST(Path, AreaAndExtentsOfARoundEndedPlate) {
  const auto path = roundEnded();
  EXPECT_NEAR(areaOf(path), 8 + kPi / 2, 1e-14);
  const auto [low, high] = extentsOf(path);
  EXPECT_EQ(low, (PlanePoint{0, 0}));
  EXPECT_EQ(high, (PlanePoint{5, 2}));
}

TEST(Path, AHollowTakesFromTheArea) {
  auto path = roundEnded();
  path[1].sense = -1;
  EXPECT_NEAR(areaOf(path), 8 - kPi / 2, 1e-14);
  EXPECT_EQ(extentsOf(path).second, (PlanePoint{4, 2}));
}

TEST(Path, AWholeCircle) {
  const std::vector<PathPiece> path{{{}, {}, PlaneCircle{{2, 3}, 1}, 1, true}};
  EXPECT_NEAR(areaOf(path), kPi, 1e-15);
  EXPECT_EQ(extentsOf(path).first, (PlanePoint{1, 2}));
  EXPECT_TRUE(isInside(path, {2.5, 3}));
  EXPECT_FALSE(isInside(path, {3.5, 3}));
  EXPECT_NEAR(distanceTo(path[0], {2, 3}), 1, 1e-15);
}

TEST(Path, InsideAgreesWithTheShape) {
  const auto path = roundEnded();
  std::mt19937_64 random(5);
  std::uniform_real_distribution<double> spread(-1, 6);
  for (int run = 0; run < 2000; ++run) {
    const PlanePoint p{spread(random), spread(random)};
    const bool inBox = p.x > 0 && p.x < 4 && p.y > 0 && p.y < 2;
    const bool inEnd = p.x >= 4 && distanceBetween(p, {4, 1}) < 1;
    EXPECT_EQ(isInside(path, p), inBox || inEnd) << p.x << " " << p.y;
  }
}

TEST(Path, WhatLiesOnAChordIsInside) {
  // The centre of a round end lies on its chord, at either end of a bar.
  const std::vector<PathPiece> bar{{{0, 0}, {4, 0}, {}, 1, false},
                                   {{4, 0}, {4, 2}, PlaneCircle{{4, 1}, 1}, 1, false},
                                   {{4, 2}, {0, 2}, {}, 1, false},
                                   {{0, 2}, {0, 0}, PlaneCircle{{0, 1}, 1}, 1, false}};
  EXPECT_TRUE(isInside(bar, {4, 1}));
  EXPECT_TRUE(isInside(bar, {0, 1}));
  EXPECT_TRUE(isInside(bar, {0, 0.25}));
  EXPECT_FALSE(isInside(bar, {-1.5, 1}));
}

TEST(Path, TheNearestPointIsNearest) {
  const auto path = roundEnded();
  std::mt19937_64 random(6);
  std::uniform_real_distribution<double> spread(-1, 6);
  for (int run = 0; run < 200; ++run) {
    const PlanePoint p{spread(random), spread(random)};
    // Along the arc: never nearer than the foot, and as near up to the step.
    double least = 1e9;
    for (int i = 0; i <= 1000; ++i) {
      const double angle = -kPi / 2 + kPi * i / 1000;
      least = std::min(least, distanceBetween(p, {4 + std::cos(angle), 1 + std::sin(angle)}));
    }
    EXPECT_LE(distanceTo(path[1], p), least + 1e-12);
    EXPECT_NEAR(distanceTo(path[1], p), least, 0.004);
  }
}

TEST(Path, WaysAndSweeps) {
  const auto path = roundEnded();
  EXPECT_NEAR(sweepOf(path[1]), kPi, 1e-14);
  EXPECT_NEAR(wayAtStart(path[1]).x, 1, 1e-14);
  EXPECT_NEAR(wayAtEnd(path[1]).x, -1, 1e-14);
  EXPECT_EQ(wayAtStart(path[0]), (PlanePoint{1, 0}));
}

TEST(Path, LeftOfALineFarFromTheOrigin) {
  // Through (3, 2) upwards to the left at 3 : 4.
  const PlaneLine line{std::atan2(4, -3), 3 * -0.8 + 2 * -0.6};
  EXPECT_NEAR(leftOf(line, {3, 2}), 0, 1e-14);
  EXPECT_NEAR(leftOf(line, {0, 6}), 0, 1e-14);
  EXPECT_NEAR(leftOf(line, {3 - 4, 2 - 3}), 5, 1e-14);
  EXPECT_NEAR(leftOf(line, {3 + 8, 2 + 6}), -10, 1e-14);
}

TEST(Path, ExtentsOfARoundPieceOffTheOrigin) {
  // A quarter of radius 2 about (5, 7), from its right to its top, and a whole circle.
  const PathPiece quarter{{7, 7}, {5, 9}, PlaneCircle{{5, 7}, 2}};
  auto box = extentsOf(std::vector<PathPiece>{quarter});
  EXPECT_NEAR(box.first.x, 5, 1e-15);
  EXPECT_NEAR(box.first.y, 7, 1e-15);
  EXPECT_NEAR(box.second.x, 7, 1e-15);
  EXPECT_NEAR(box.second.y, 9, 1e-15);
  // Clockwise from the same start to the same end it takes the other three.
  const PathPiece rest{{7, 7}, {5, 9}, PlaneCircle{{5, 7}, 2}, -1};
  box = extentsOf(std::vector<PathPiece>{rest});
  EXPECT_NEAR(box.first.x, 3, 1e-15);
  EXPECT_NEAR(box.first.y, 5, 1e-15);
  EXPECT_NEAR(sweepOf(rest), 1.5 * kPi, 1e-14);
  const PathPiece whole{{}, {}, PlaneCircle{{5, 7}, 2}, 1, true};
  box = extentsOf(std::vector<PathPiece>{whole});
  EXPECT_NEAR(box.first.x, 3, 1e-15);
  EXPECT_NEAR(box.second.y, 9, 1e-15);
  EXPECT_NEAR(sweepOf(whole), 2 * kPi, 1e-15);
}

TEST(Path, TheNearestPointByHand) {
  const PathPiece straight{{1, 1}, {5, 4}, {}};
  EXPECT_EQ(sweepOf(straight), 0);
  // Square off (3, 2.5), the middle.
  const PlanePoint beside = nearestOn(straight, {3 - 0.6, 2.5 + 0.8});
  EXPECT_NEAR(beside.x, 3, 1e-15);
  EXPECT_NEAR(beside.y, 2.5, 1e-15);
  EXPECT_NEAR(distanceTo(straight, {3 - 0.6, 2.5 + 0.8}), 1, 1e-15);
  EXPECT_EQ(nearestOn(straight, {0, 0}), (PlanePoint{1, 1}));
  EXPECT_EQ(nearestOn(straight, {9, 9}), (PlanePoint{5, 4}));
  const PathPiece point{{2, 3}, {2, 3}, {}};
  EXPECT_EQ(nearestOn(point, {7, 3}), (PlanePoint{2, 3}));
  // A half circle of radius 3 about (2, 1), over the top.
  const PathPiece half{{5, 1}, {-1, 1}, PlaneCircle{{2, 1}, 3}};
  EXPECT_NEAR(distanceTo(half, {2, 9}), 5, 1e-15);
  EXPECT_NEAR(distanceTo(half, {2, 2}), 2, 1e-15);
  EXPECT_NEAR(distanceTo(half, {6, -2}), std::hypot(1, 3), 1e-15) << "beyond its end";
  EXPECT_NEAR(distanceTo(half, {2, 1}), 3, 1e-15) << "its centre";
  const PathPiece whole{{}, {}, PlaneCircle{{2, 1}, 3}, 1, true};
  EXPECT_NEAR(distanceTo(whole, {2, 1}), 3, 1e-15);
  EXPECT_NEAR(distanceTo(whole, {2, 8}), 4, 1e-15);
  EXPECT_NEAR(nearestOn(whole, {2, 1}).x, 5, 1e-15);
}

// Triangles of 5, 12, 13 and 3, 4, 5, turned out of the axes.
TEST(Path, CirclesThatLieSlantwiseMeetWhereByHand) {
  struct Case {
    PlaneCircle a, b;
    double within;
    std::vector<PlanePoint> met;
  };
  const Case cases[] = {
      {{{1, 2}, 13}, {{9.4, 13.2}, 15}, 1e-9, {{-5.6, 13.2}, {13.6, -1.2}}},
      {{{9.4, 13.2}, 15}, {{1, 2}, 13}, 1e-9, {{13.6, -1.2}, {-5.6, 13.2}}},
      {{{0, 0}, 5}, {{6, 8}, 5}, 1e-9, {{3, 4}}},
      {{{0, 0}, 5}, {{1.8, 2.4}, 2}, 1e-9, {{3, 4}}},
      {{{1.8, 2.4}, 2}, {{0, 0}, 5}, 1e-9, {{3, 4}}},
      {{{0, 0}, 5}, {{6, 8}, 4.9}, 0.2, {{3, 4}}},  // .1 short of touching
      {{{0, 0}, 5}, {{6, 8}, 4.9}, 0.05, {}},
      {{{0, 0}, 5}, {{1.8, 2.4}, 1.9}, 0.05, {}},  // inside, .1 short
      {{{0, 0}, 5}, {{1.8, 2.4}, 1.9}, 0.2, {{3, 4}}},
      {{{0, 0}, 5}, {{30, 40}, 5}, 1e-9, {}},
      {{{0, 0}, 50}, {{3, 4}, 5}, 1e-9, {}},
      {{{3, 4}, 5}, {{0, 0}, 50}, 1e-9, {}},
  };
  for (const Case& one : cases) {
    const auto met = meetings(one.a, one.b, one.within);
    ASSERT_EQ(met.size(), one.met.size()) << one.b.centre.x << ' ' << one.b.radius;
    for (std::size_t i = 0; i < met.size(); ++i) {
      EXPECT_NEAR(met[i].x, one.met[i].x, 1e-12);
      EXPECT_NEAR(met[i].y, one.met[i].y, 1e-12);
    }
  }
}

TEST(Path, ASlantedLineCutsACircleWhereByHand) {
  // Along (.8, .6), 5 to the left of the origin: its nearest point is (−3, 4), 12 either way of it.
  const PlaneLine line{std::atan2(0.6, 0.8), 5};
  const auto met = meetings(line, PlaneCircle{{0, 0}, 13}, 1e-9);
  ASSERT_EQ(met.size(), 2u);
  const bool firstUp = met[0].y > met[1].y;
  const PlanePoint up = met[firstUp ? 0 : 1], down = met[firstUp ? 1 : 0];
  EXPECT_NEAR(up.x, 6.6, 1e-12);
  EXPECT_NEAR(up.y, 11.2, 1e-12);
  EXPECT_NEAR(down.x, -12.6, 1e-12);
  EXPECT_NEAR(down.y, -3.2, 1e-12);
  const auto touch = meetings(line, PlaneCircle{{3, 4}, 4}, 0.01);  // 3.6 from its centre
  ASSERT_EQ(touch.size(), 2u);
  EXPECT_EQ(meetings(line, PlaneCircle{{-6, 8}, 5.005}, 0.01).size(), 1u);
  EXPECT_NEAR(meetings(line, PlaneCircle{{-6, 8}, 5}, 0.01)[0].x, -3, 1e-12);
  EXPECT_TRUE(meetings(line, PlaneCircle{{-6, 8}, 4.98}, 0.01).empty());
}

TEST(Path, APieceThatEndsWhereItStartsGoesAllTheWayRound) {
  const PlaneCircle circle{{1, 1}, 2};
  EXPECT_NEAR(sweepOf({{3, 1}, {3, 1}, circle, 1, false}), 2 * kPi, 1e-15);
  EXPECT_NEAR(sweepOf({{3, 1}, {3, 1}, circle, -1, false}), 2 * kPi, 1e-15);
  EXPECT_NEAR(sweepOf({{3, 1}, {1, 3}, circle, 1, false}), kPi / 2, 1e-14);
  EXPECT_NEAR(sweepOf({{3, 1}, {1, 3}, circle, -1, false}), 3 * kPi / 2, 1e-14);
  EXPECT_EQ(sweepOf({{3, 1}, {1, 3}, {}, 1, false}), 0);
}

// Three quarters of a disc and its two straight sides, followed either way, held against what a
// point's own figures say.
TEST(Path, InsideThreeQuartersOfADiscWhicheverWayItIsFollowed) {
  const PlaneCircle circle{{1, -2}, 3};
  const std::vector<PathPiece> onward{{{4, -2}, {1, -5}, circle, 1, false},
                                      {{1, -5}, {1, -2}, {}, 1, false},
                                      {{1, -2}, {4, -2}, {}, 1, false}};
  const std::vector<PathPiece> back{{{4, -2}, {1, -2}, {}, 1, false},
                                    {{1, -2}, {1, -5}, {}, 1, false},
                                    {{1, -5}, {4, -2}, circle, -1, false}};
  EXPECT_NEAR(areaOf(onward), 9 * kPi * 3 / 4, 1e-12);
  EXPECT_NEAR(areaOf(back), -9 * kPi * 3 / 4, 1e-12);
  int within = 0;
  for (double x = -2.45; x < 5; x += 0.31) {
    for (double y = -5.45; y < 2; y += 0.31) {
      const bool cutOut = x > 1 && y < -2;
      const bool expected = distanceBetween({x, y}, circle.centre) < 3 && !cutOut;
      EXPECT_EQ(isInside(onward, {x, y}), expected) << x << ' ' << y;
      EXPECT_EQ(isInside(back, {x, y}), expected) << x << ' ' << y;
      within += expected ? 1 : 0;
    }
  }
  EXPECT_GT(within, 150);
}

}  // namespace
}  // namespace inchwright
