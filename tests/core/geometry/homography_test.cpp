#include "core/geometry/homography.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

namespace inchwright {
namespace {

KnownPoint known(double px, double py, double x, double y) {
  return {{px, py}, {x, y}};
}

void expectMaps(const Homography& h, PlanePoint from, PlanePoint to, double bound) {
  const PlanePoint got = h.map(from);
  EXPECT_NEAR(got.x, to.x, bound);
  EXPECT_NEAR(got.y, to.y, bound);
}

// A photo taken at a slant: the trapezium's four corners become a 2 × 1 1/2 in rectangle, and so
// the crossing of its diagonals becomes the rectangle's middle (a projective map keeps lines).
TEST(SquareUp, FourCornersSendTheCrossingOfDiagonalsToTheMiddle) {
  const std::vector<KnownPoint> corners{known(100, 900, 0, 0), known(1100, 860, 2, 0),
                                        known(950, 120, 2, 1.5), known(210, 140, 0, 1.5)};
  const auto squared = squareUp(corners);
  ASSERT_TRUE(squared.ok()) << squared.error().text;
  for (const KnownPoint& c : corners) expectMaps(squared->pixelToInches, c.pixel, c.inches, 1e-9);
  // Crossing of (100,900)-(950,120) with (1100,860)-(210,140).
  const double d = (100.0 - 950) * (860 - 140) - (900.0 - 120) * (1100 - 210);
  const double a = 100.0 * 120 - 900.0 * 950, b = 1100.0 * 140 - 860.0 * 210;
  const PlanePoint crossing{(a * (1100 - 210) - (100.0 - 950) * b) / d,
                            (a * (860 - 140) - (900.0 - 120) * b) / d};
  expectMaps(squared->pixelToInches, crossing, {1, 0.75}, 1e-9);
  EXPECT_EQ(squared->largestResidual, 0);
}

TEST(SquareUp, TwoPointsApartAlongBothAxesGiveAScalePerAxis) {
  const auto squared = squareUp(std::vector{known(100, 500, 0, 0), known(500, 100, 4, 2)});
  ASSERT_TRUE(squared.ok());
  expectMaps(squared->pixelToInches, {300, 300}, {2, 1}, 1e-12);
  expectMaps(squared->pixelToInches, {500, 500}, {4, 0}, 1e-12);
}

TEST(SquareUp, TwoPointsInALineGiveOneScaleAndTheTurn) {
  // Along the picture's x, lettered 2 in: 100 pixels an inch both ways.
  const auto level = squareUp(std::vector{known(100, 500, 0, 0), known(300, 500, 2, 0)});
  ASSERT_TRUE(level.ok());
  expectMaps(level->pixelToInches, {100, 300}, {0, 2}, 1e-12);
  // The scan lies on its side: up the picture is along the print's x.
  const auto turned = squareUp(std::vector{known(100, 500, 0, 0), known(100, 300, 2, 0)});
  ASSERT_TRUE(turned.ok());
  expectMaps(turned->pixelToInches, {0, 500}, {0, 1}, 1e-12);
}

TEST(SquareUp, ThreePointsGiveAnAffineMap) {
  const auto squared =
      squareUp(std::vector{known(0, 0, 1, 1), known(10, 0, 3, 1.5), known(0, 10, 1, -1)});
  ASSERT_TRUE(squared.ok());
  expectMaps(squared->pixelToInches, {10, 10}, {3, -0.5}, 1e-12);
}

// Property: for any sane camera, points taken from a known map give that map back, and with noise
// the fifth point brings the residual of the least-squares fit below that of the exact four.
TEST(SquareUp, RecoversRandomMaps) {
  const unsigned seed = 20261125;
  SCOPED_TRACE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int round = 0; round < 300; ++round) {
    const Homography inchesToPixel({300 + 20 * unit(random), 20 * unit(random), 500,
                                    20 * unit(random), -300 + 20 * unit(random), 900,
                                    0.02 * unit(random), 0.02 * unit(random), 1});
    std::vector<KnownPoint> points;
    for (const PlanePoint at : {PlanePoint{0, 0}, {4, 0}, {4, 3}, {0, 3}, {2, 1}}) {
      points.push_back({inchesToPixel.map(at), at});
    }
    for (const std::size_t count : {4u, 5u}) {
      const auto squared = squareUp(std::span(points).first(count));
      ASSERT_TRUE(squared.ok());
      const PlanePoint probe{3 * unit(random), 2 * unit(random)};
      expectMaps(squared->pixelToInches, inchesToPixel.map(probe), probe, 1e-8);
      expectMaps(squared->pixelToInches.inverse(), probe, inchesToPixel.map(probe), 1e-6);
    }
  }
}

TEST(SquareUp, FivePointsShareTheErrorOfOne) {
  std::vector<KnownPoint> points{known(0, 300, 0, 0), known(400, 300, 4, 0), known(400, 0, 4, 3),
                                 known(0, 0, 0, 3), known(203, 200, 2, 1)};
  const auto squared = squareUp(points);
  ASSERT_TRUE(squared.ok());
  double sum = 0;
  for (const double r : squared->residual) sum += r * r;
  EXPECT_GT(squared->largestResidual, 0);
  EXPECT_LT(sum, 0.03 * 0.03) << "no worse than leaving all of the error at the fifth point";
}

TEST(SquareUp, RefusesWhatDoesNotDetermineAMap) {
  EXPECT_EQ(squareUp(std::vector{known(0, 0, 0, 0)}).error().code, ErrorCode::badRequest);
  EXPECT_EQ(squareUp(std::vector{known(5, 5, 0, 0), known(5, 5, 1, 0)}).error().code,
            ErrorCode::unsolvable);
  EXPECT_EQ(
      squareUp(std::vector{known(0, 0, 0, 0), known(1, 1, 1, 1), known(2, 2, 2, 2)}).error().code,
      ErrorCode::unsolvable);
  EXPECT_EQ(squareUp(std::vector{known(0, 0, 0, 0), known(1, 0, 1, 0), known(2, 0, 2, 0),
                                 known(0, 1, 0, 1)})
                .error()
                .code,
            ErrorCode::unsolvable);
  EXPECT_EQ(squareUp(std::vector{known(0, NAN, 0, 0), known(1, 0, 1, 0)}).error().code,
            ErrorCode::badRequest);
  // Corners named crosswise would turn the picture inside out.
  EXPECT_EQ(squareUp(std::vector{known(0, 0, 0, 0), known(10, 0, 1, 0), known(0, 10, 1, 1),
                                 known(10, 10, 0, 1)})
                .error()
                .code,
            ErrorCode::unsolvable);
}

TEST(Homography, AfterComposes) {
  const Homography shift({1, 0, 2, 0, 1, 3, 0, 0, 1});
  const Homography twice({2, 0, 0, 0, 2, 0, 0, 0, 1});
  expectMaps(twice.after(shift), {1, 1}, {6, 8}, 1e-12);
  expectMaps(shift.after(twice), {1, 1}, {4, 5}, 1e-12);
}

// Two points that both axes tell: the offsets between them count, not where they lie, and the
// picture's y runs down.
TEST(SquareUp, TwoPointsFarFromTheOrigin) {
  const auto squared = squareUp(std::vector{known(1100, 900, 3, 2), known(1500, 600, 5, 5)});
  ASSERT_TRUE(squared.ok());
  expectMaps(squared->pixelToInches, {1300, 750}, {4, 3.5}, 1e-12);
  expectMaps(squared->pixelToInches, {1500, 900}, {5, 2}, 1e-12);
}

// Right on the picture is left on the print: no scale does that, so it is turned half round.
TEST(SquareUp, TwoPointsTheOtherWayUpAreATurnByOneScale) {
  const auto squared = squareUp(std::vector{known(100, 100, 4, 0), known(500, 400, 0, 3)});
  ASSERT_TRUE(squared.ok());
  expectMaps(squared->pixelToInches, {500, 100}, {0, 0}, 1e-12);
  expectMaps(squared->pixelToInches, {100, 400}, {4, 3}, 1e-12);
}

// Two scales only where both axes are a tenth of the distance or more: 3 of 100 pixels up would
// make a scale of its own out of the error of pointing.
TEST(SquareUp, TwoPointsNearlyInALineGiveOneScale) {
  struct Case {
    PlanePoint pixel, inches;  ///< of the second point less the first
    bool twoScales;
  };
  for (const Case& one : {Case{{400, -400}, {4, 2}, true},
                          {{100, -3}, {1, 0.06}, false},
                          {{3, -100}, {0.06, 1}, false},
                          {{-400, 400}, {-4, -2}, true},
                          {{400, 400}, {4, 2}, false},    // up for down: the picture is turned
                          {{-400, -400}, {4, 2}, false},  // right for left
                          {{-400, 400}, {4, 2}, false}}) {
    SCOPED_TRACE(one.pixel.x);
    const auto squared =
        squareUp(std::vector{known(50, 70, 3, 5), known(50 + one.pixel.x, 70 + one.pixel.y,
                                                        3 + one.inches.x, 5 + one.inches.y)});
    ASSERT_TRUE(squared.ok());
    const Homography& map = squared->pixelToInches;
    expectMaps(map, {50, 70}, {3, 5}, 1e-12);
    expectMaps(map, {50 + one.pixel.x, 70 + one.pixel.y}, {3 + one.inches.x, 5 + one.inches.y},
               1e-12);
    const PlanePoint right = map.map({150, 70}), up = map.map({50, -30});
    const double across = std::hypot(right.x - 3, right.y - 5);
    const double upward = std::hypot(up.x - 3, up.y - 5);
    if (one.twoScales) {
      EXPECT_NEAR(right.y, 5, 1e-12);
      EXPECT_NEAR(across, 100 * one.inches.x / one.pixel.x, 1e-12);
      EXPECT_NEAR(upward, -100 * one.inches.y / one.pixel.y, 1e-12);
    } else {
      EXPECT_NEAR(across, upward, 1e-12);
      // A turn, not a mirror image: the picture's right lies clockwise of its up.
      EXPECT_GT((right.x - 3) * (up.y - 5) - (right.y - 5) * (up.x - 3), 0);
    }
  }
}

TEST(SquareUp, RefusesFivePointsInALineOrBeyondTheHorizon) {
  std::vector<KnownPoint> inLine;
  for (int i = 0; i < 5; ++i) inLine.push_back(known(10 * i, 20 * i, i, 2 * i));
  EXPECT_EQ(squareUp(inLine).error().code, ErrorCode::unsolvable);
}

// No small change of the map makes the sum of squares less.
TEST(SquareUp, ManyPointsHaveTheLeastSquaresOfMisses) {
  std::mt19937 random(91'701);
  std::normal_distribution<double> miss(0, 0.01);
  std::vector<KnownPoint> points;
  for (int i = 0; i < 9; ++i) {
    const double x = 1 + i % 3, y = 2 + i / 3;
    const double far = 1 + 0.02 * x + 0.03 * y;
    points.push_back(known((40 + 100 * x) / far + 100 * miss(random),
                           (900 - 110 * y) / far + 100 * miss(random), x, y));
  }
  const auto squared = squareUp(points);
  ASSERT_TRUE(squared.ok());
  const auto squaresOf = [&](const std::array<double, 9>& m) {
    const Homography map(m);
    double sum = 0;
    for (const KnownPoint& p : points) {
      const PlanePoint at = map.map(p.pixel);
      sum += (at.x - p.inches.x) * (at.x - p.inches.x) + (at.y - p.inches.y) * (at.y - p.inches.y);
    }
    return sum;
  };
  const std::array<double, 9>& best = squared->pixelToInches.matrix();
  const double least = squaresOf(best);
  EXPECT_LT(least, 9 * 0.03 * 0.03);
  double sum = 0;
  for (const double r : squared->residual) sum += r * r;
  EXPECT_NEAR(sum, least, 1e-12);
  EXPECT_EQ(squared->largestResidual,
            *std::max_element(squared->residual.begin(), squared->residual.end()));
  for (std::size_t k = 0; k < 9; ++k) {
    for (const double by : {1e-5, -1e-5}) {
      std::array<double, 9> other = best;
      other[k] *= 1 + by;
      EXPECT_GE(squaresOf(other), least - 1e-12) << k;
    }
  }
}

}  // namespace
}  // namespace inchwright
