// The metal between two holes, beside what a cloud of points on one of them says.
#include "core/checks/hole_body.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace inchwright {
namespace {

using Spot = std::array<double, 3>;

/// A spot of a body by how far in it lies, how far off the axis, and at which angle round it.
Spot spotOf(const HoleBody& body, double along, double off, double angle) {
  const auto axis = static_cast<std::size_t>(body.axis);
  Spot spot = body.mouth;
  spot[axis] += body.inward * along;
  spot[(axis + 1) % 3] += off * std::cos(angle);
  spot[(axis + 2) % 3] += off * std::sin(angle);
  return spot;
}

double toSegment(double u, double v, double u1, double v1, double u2, double v2) {
  const double du = u2 - u1, dv = v2 - v1, square = du * du + dv * dv;
  const double t = square > 0 ? std::clamp(((u - u1) * du + (v - v1) * dv) / square, 0.0, 1.0) : 0;
  return std::hypot(u - u1 - t * du, v - v1 - t * dv);
}

/// From a spot to a body by its profile, a polygon turned about the axis; 0 within.
double distanceTo(const HoleBody& body, const Spot& spot) {
  const auto axis = static_cast<std::size_t>(body.axis);
  const double u = (spot[axis] - body.mouth[axis]) * body.inward;
  const double v = std::hypot(spot[(axis + 1) % 3] - body.mouth[(axis + 1) % 3],
                              spot[(axis + 2) % 3] - body.mouth[(axis + 2) % 3]);
  const double end = body.length + body.point;
  const double wide = u <= body.length ? body.radius
                      : body.point > 0 ? body.radius * (end - u) / body.point
                                       : -1;
  if (u >= 0 && u <= end && v <= wide) return 0;
  return std::min({toSegment(u, v, 0, 0, 0, body.radius),
                   toSegment(u, v, 0, body.radius, body.length, body.radius),
                   toSegment(u, v, body.length, body.radius, end, 0)});
}

template <class Take>
void forSpotsOn(const HoleBody& body, Take take) {
  constexpr int kAngles = 120, kSteps = 40;
  const double end = body.length + body.point;
  for (int k = 0; k < kAngles; ++k) {
    const double angle = k * 2 * 3.14159265358979 / kAngles;
    for (int i = 0; i <= kSteps; ++i) {
      const double share = double(i) / kSteps;
      take(spotOf(body, 0, share * body.radius, angle));
      take(spotOf(body, share * body.length, body.radius, angle));
      take(spotOf(body, body.length + share * body.point, (1 - share) * body.radius, angle));
      take(spotOf(body, share * end, 0, angle));
    }
  }
}

double sampledWall(const HoleBody& a, const HoleBody& b) {
  double least = std::numeric_limits<double>::infinity();
  forSpotsOn(a, [&](const Spot& spot) { least = std::min(least, distanceTo(b, spot)); });
  forSpotsOn(b, [&](const Spot& spot) { least = std::min(least, distanceTo(a, spot)); });
  return least;
}

class RandomBodies {
 public:
  explicit RandomBodies(unsigned seed) : random_(seed) {}
  HoleBody next(int axis) {
    HoleBody body;
    body.axis = axis;
    body.inward = random_() % 2 == 0 ? 1 : -1;
    for (double& at : body.mouth) at = between(0, 1.6);
    body.radius = between(0.05, 0.3);
    body.length = between(0.15, 0.9);
    body.point = random_() % 2 == 0 ? 0 : between(0.05, 0.3);
    return body;
  }
  double between(double low, double high) {
    return low + (high - low) * double(random_() % 10'000) / 10'000;
  }
  unsigned draw() { return static_cast<unsigned>(random_()); }

 private:
  std::mt19937 random_;
};

// A spot of the cloud lies at most a hundredth from the nearest.
TEST(HoleBody, TheWallIsAsThinAsACloudOfPointsSays) {
  RandomBodies bodies(20'261'129);
  int apart = 0, meeting = 0, crossing = 0;
  for (int i = 0; i < 300; ++i) {
    const HoleBody a = bodies.next(2);
    const HoleBody b =
        bodies.next(bodies.draw() % 2 == 0 ? 2 : static_cast<int>(bodies.draw() % 2));
    SCOPED_TRACE(i);
    const double sampled = sampledWall(a, b), wall = wallBetween(a, b);
    EXPECT_NEAR(wallBetween(b, a), wall, 1e-5) << "the other way round";
    if (sampled > 0) {
      EXPECT_NEAR(wall, sampled, 0.012);
      EXPECT_LE(wall, sampled + 1e-6);
      ++apart;
    } else {
      EXPECT_LE(wall, 1e-6);
      ++meeting;
    }
    if (a.axis != b.axis) ++crossing;
    if (HasFailure()) return;
  }
  EXPECT_GT(apart, 150);
  EXPECT_GT(meeting, 15);
  EXPECT_GT(crossing, 100);
}

TEST(HoleBody, TheNearestPointIsOnTheBodyAndNoneIsNearer) {
  RandomBodies bodies(7);
  for (int i = 0; i < 2000; ++i) {
    const HoleBody body = bodies.next(static_cast<int>(bodies.draw() % 3));
    const Spot p{bodies.between(-0.5, 2), bodies.between(-0.5, 2), bodies.between(-0.5, 2)};
    const Spot near = nearestIn(body, p);
    EXPECT_NEAR(distanceTo(body, near), 0, 1e-9);
    const double far = std::hypot(p[0] - near[0], p[1] - near[1], p[2] - near[2]);
    ASSERT_NEAR(far, distanceTo(body, p), 1e-9) << i;
  }
}

// By hand: 1/4 holes side by side, crossing, one above the other, tip to tip, and through.
TEST(HoleBody, WallsByHand) {
  HoleBody a;
  a.mouth = {0, 0, 1};
  a.radius = 0.125;
  a.length = 0.5;
  HoleBody b = a;
  b.mouth = {0.375, 0, 1};
  EXPECT_NEAR(wallBetween(a, b), 0.125, 1e-12);
  b.mouth = {0.15, 0.2, 1};
  EXPECT_NEAR(wallBetween(a, b), 0, 1e-12) << "3, 4, 5";
  b.mouth = {0.2, 0, 1};
  EXPECT_NEAR(wallBetween(a, b), -0.05, 1e-12) << "by how much the walls overlap";
  // From below: floors 1/8 apart, then their tips.
  b = a;
  b.mouth = {0, 0, 0};
  b.inward = 1;
  b.length = 0.375;
  EXPECT_NEAR(wallBetween(a, b), 0.125, 1e-6);
  a.point = 0.075;
  EXPECT_NEAR(wallBetween(a, b), 0.05, 1e-6);
  // A cross hole under it, and one that runs into it.
  HoleBody cross;
  cross.axis = 1;
  cross.inward = 1;
  cross.mouth = {0, -1, 0.25};
  cross.radius = 0.1;
  cross.length = 2;
  EXPECT_NEAR(wallBetween(a, cross), 0.075, 1e-6) << "1 - .5 - .075 - .35";
  cross.mouth = {0.2, -1, 0.7};
  EXPECT_NEAR(wallBetween(a, cross), -0.025, 1e-12);
  cross.mouth = {0.3, -1, 0.7};
  EXPECT_NEAR(wallBetween(a, cross), 0.075, 1e-12);
  // Where it is not known how they lie, nothing is said; through holes go on for ever.
  cross.adrift = true;
  EXPECT_TRUE(std::isinf(wallBetween(a, cross)));
  b.adrift = true;
  EXPECT_TRUE(std::isinf(wallBetween(a, b)));
  b.endless = true;
  EXPECT_NEAR(wallBetween(a, b), -0.25, 1e-12);
  b.mouth = {0.5, 0, 0};
  EXPECT_NEAR(wallBetween(a, b), 0.25, 1e-12);
  EXPECT_NEAR(wallBetween(b, a), 0.25, 1e-12);
}

// A hole whose face is nowhere given is compared with those of its own face, and with what goes
// on for ever beside it; it may be a hole in all but its place along its axis.
TEST(HoleBody, OneAdriftIsComparedWithItsOwnFaceAlone) {
  HoleBody a;
  a.mouth = {0, 0, 0};
  a.radius = 0.125;
  a.length = 0.5;
  a.adrift = true;
  HoleBody b = a;
  b.mouth = {0.375, 0, 0};
  EXPECT_NEAR(wallBetween(a, b), 0.125, 1e-12) << "both from one face";
  HoleBody below = b;
  below.inward = 1;
  EXPECT_TRUE(std::isinf(wallBetween(a, below)));
  EXPECT_TRUE(std::isinf(wallBetween(below, a)));
  below.adrift = false;
  EXPECT_TRUE(std::isinf(wallBetween(a, below))) << "one is enough";
  below.endless = true;
  EXPECT_NEAR(wallBetween(a, below), 0.125, 1e-12);
  EXPECT_NEAR(wallBetween(below, a), 0.125, 1e-12);
  // From the side, and right through wherever that is: a may yet end above it.
  HoleBody cross = below;
  cross.axis = 1;
  EXPECT_TRUE(std::isinf(wallBetween(a, cross)));
  EXPECT_TRUE(std::isinf(wallBetween(cross, a)));
}

}  // namespace
}  // namespace inchwright
