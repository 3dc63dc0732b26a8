#include "core/geometry/inset.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace inchwright::test {
namespace {

PathPiece straight(PlanePoint a, PlanePoint b) {
  return {a, b, std::nullopt, 1, false};
}
PathPiece round(PlanePoint a, PlanePoint b, PlanePoint centre, int sense = 1) {
  return {a, b, PlaneCircle{centre, distanceBetween(a, centre)}, sense, false};
}

std::vector<PathPiece> rectangle(double width, double height, double corner) {
  const double w = width, h = height, r = corner;
  if (r == 0) {
    return {straight({0, 0}, {w, 0}), straight({w, 0}, {w, h}), straight({w, h}, {0, h}),
            straight({0, h}, {0, 0})};
  }
  return {straight({r, 0}, {w - r, 0}), round({w - r, 0}, {w, r}, {w - r, r}),
          straight({w, r}, {w, h - r}), round({w, h - r}, {w - r, h}, {w - r, h - r}),
          straight({w - r, h}, {r, h}), round({r, h}, {0, h - r}, {r, h - r}),
          straight({0, h - r}, {0, r}), round({0, r}, {r, 0}, {r, r})};
}

TEST(Inset, GoesIntoSquareCorners) {
  const auto way = insetOf(rectangle(2, 1, 0), 0.125);
  ASSERT_TRUE(way);
  ASSERT_EQ(way->size(), 4u);
  const auto [low, high] = extentsOf(*way);
  EXPECT_DOUBLE_EQ(low.x, 0.125);
  EXPECT_DOUBLE_EQ(low.y, 0.125);
  EXPECT_DOUBLE_EQ(high.x, 1.875);
  EXPECT_DOUBLE_EQ(high.y, 0.875);
  EXPECT_FALSE(insetOf(rectangle(2, 1, 0), 0.51)) << "it does not go in";
}

TEST(Inset, FillsARoundCornerOrGoesRoundIt) {
  const auto filled = insetOf(rectangle(2, 1, 0.125), 0.125);
  ASSERT_TRUE(filled);
  EXPECT_EQ(filled->size(), 4u) << "corners of the disc's own radius are points";
  const auto smaller = insetOf(rectangle(2, 1, 0.125), 0.0625);
  ASSERT_TRUE(smaller);
  EXPECT_EQ(smaller->size(), 8u);
  EXPECT_FALSE(insetOf(rectangle(2, 1, 0.125), 0.2)) << "the corners are tighter";
}

// An L: its inner corner stays sharp, the neck is held.
TEST(Inset, KeepsACornerThatStandsInSharp) {
  const std::vector<PathPiece> ell{straight({0, 0}, {3, 0}), straight({3, 0}, {3, 1}),
                                   straight({3, 1}, {1, 1}), straight({1, 1}, {1, 3}),
                                   straight({1, 3}, {0, 3}), straight({0, 3}, {0, 0})};
  const auto way = insetOf(ell, 0.25);
  ASSERT_TRUE(way);
  EXPECT_NEAR((*way)[3].start.x, 0.75, 1e-12);
  EXPECT_NEAR((*way)[3].start.y, 0.75, 1e-12);
  EXPECT_FALSE(insetOf(ell, 0.55));
}

TEST(Inset, FollowsAnIslandAndAWholeCircle) {
  const PathPiece whole{{}, {}, PlaneCircle{{1, 1}, 0.5}, 1, true};
  const auto way = insetOf(std::vector{whole}, 0.125);
  ASSERT_TRUE(way);
  EXPECT_DOUBLE_EQ((*way)[0].circle->radius, 0.375);
  EXPECT_FALSE(insetOf(std::vector{whole}, 0.6));
}

TEST(Inset, RunsLevelInside) {
  const auto box = rectangle(2, 1, 0.25);
  const auto middle = levelRunsInside(box, 0.5);
  ASSERT_EQ(middle.size(), 1u);
  EXPECT_DOUBLE_EQ(middle[0].first, 0);
  EXPECT_DOUBLE_EQ(middle[0].second, 2);
  // Through both lower corners' rounds, an eighth up: 1/4 − √(1/16 − 1/64) in.
  const auto low = levelRunsInside(box, 0.125);
  ASSERT_EQ(low.size(), 1u);
  EXPECT_NEAR(low[0].first, 0.25 - std::sqrt(0.0625 - 0.015625), 1e-12);
  EXPECT_TRUE(levelRunsInside(box, 1.5).empty());
  const std::vector<PathPiece> comb{straight({0, 0}, {3, 0}), straight({3, 0}, {3, 2}),
                                    straight({3, 2}, {2, 2}), straight({2, 2}, {2, 1}),
                                    straight({2, 1}, {1, 1}), straight({1, 1}, {1, 2}),
                                    straight({1, 2}, {0, 2}), straight({0, 2}, {0, 0})};
  EXPECT_EQ(levelRunsInside(comb, 1.5).size(), 2u);
  EXPECT_EQ(levelRunsInside(comb, 0.5).size(), 1u);
  // Through two corners there is one, at a corner none.
  const std::vector<PathPiece> square{straight({-1, 0}, {0, -1}), straight({0, -1}, {1, 0}),
                                      straight({1, 0}, {0, 1}), straight({0, 1}, {-1, 0})};
  for (const auto& path : {square, turnedRound(square)}) {
    const auto across = levelRunsInside(path, 0);
    ASSERT_EQ(across.size(), 1u);
    EXPECT_DOUBLE_EQ(across[0].first, -1);
    EXPECT_DOUBLE_EQ(across[0].second, 1);
    EXPECT_TRUE(levelRunsInside(path, 1).empty());
    EXPECT_TRUE(levelRunsInside(path, -1).empty());
  }
}

// Whatever the rectangle, its corners and the disc: wherever the disc goes it stays inside, and it
// comes to every wall.
TEST(Inset, NeverCutsIntoTheWall) {
  std::mt19937 random(20261);
  std::uniform_real_distribution<double> size(0.5, 4), share(0, 1);
  int made = 0;
  for (int trial = 0; trial < 300; ++trial) {
    const double w = size(random), h = size(random);
    const double corner = trial % 3 == 0 ? 0 : share(random) * std::min(w, h) * 0.49;
    const double by = share(random) * std::min(w, h) * 0.6;
    const auto path = rectangle(w, h, corner);
    const auto way = insetOf(path, by);
    const bool fits = by < std::min(w, h) / 2 && (corner == 0 || by <= corner);
    EXPECT_EQ(fits, way.has_value()) << w << " " << h << " " << corner << " " << by;
    if (!way) continue;
    ++made;
    const auto [low, high] = extentsOf(*way);
    EXPECT_NEAR(low.x, by, 1e-9);
    EXPECT_NEAR(high.y, h - by, 1e-9);
    EXPECT_LT(areaOf(turnedRound(*way)), 1e-9);
  }
  EXPECT_GT(made, 60);
}

}  // namespace
}  // namespace inchwright::test
