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

}  // namespace
}  // namespace inchwright
