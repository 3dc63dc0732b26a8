#include <gtest/gtest.h>

#include "core/seen/drawn_features.h"
#include "core/seen/looked_at.h"
#include "core/seen/shapes.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfPlate = 200;

/// A plate of 3 by 2 inches from (100, 100), with whatever is drawn on it.
struct Plate : Pen {
  Plate() : Pen(900, 650) {
    for (const double y : {100.0, 500.0}) line(100, y, 700, y, 4);
    for (const double x : {100.0, 700.0}) line(x, 100, x, 500, 4);
  }

  void hole(double x, double y, double radius) {
    circle(x, y, radius, 3);
    line(x - radius - 14, y, x + radius + 14, y, 1.6);
    line(x, y - radius - 14, x, y + radius + 14, 1.6);
  }

  std::vector<FeatureOffer> features() {
    const View level = viewOf(cover, kOfPlate), plumb = viewOf(transposed(cover), kOfPlate);
    const auto circles = circlesOf(cover, kOfPlate, Stop());
    const Frame frame{kOfPlate, 0, 0};
    const Outlines outlines = outlinesOf(level, plumb, circles, frame);
    std::vector<FeatureOffer> out = featuresOf(outlines, circles, frame, kOfPlate);
    for (const bool turned : {false, true}) {
      for (const FeatureOffer& f :
           slotsOf(turned ? plumb : level, turned, outlines, circles, frame))
        out.push_back(f);
    }
    return out;
  }

  /// How many of a kind are offered, and of those how many are ready.
  std::pair<int, int> count(OfferedFeature kind) {
    std::pair<int, int> out;
    for (const FeatureOffer& f : features()) {
      out.first += f.kind == kind;
      out.second += f.kind == kind && f.ready;
    }
    return out;
  }
};

TEST(Features, FourSidesAreReadyAndARimIsNoEdge) {
  Plate plate;
  for (const double radius : {12.0, 25.0, 50.0, 80.0}) plate.hole(120 + 6.4 * radius, 300, radius);
  EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 4));
  EXPECT_EQ(plate.count(OfferedFeature::hole), std::pair(4, 4));
  EXPECT_EQ(plate.count(OfferedFeature::slot), std::pair(0, 0));
}

// A hole near a side, whose rim runs level six pixels beside it.
TEST(Features, ARimBesideASideIsNoEdgeOfThePart) {
  for (const double radius : {40.0, 60.0, 90.0}) {
    Plate plate;
    plate.circle(400, 494 - radius, radius, 4);
    plate.line(400 - radius - 14, 494 - radius, 400 + radius + 14, 494 - radius, 1.6);
    plate.line(400, 494 - 2 * radius - 14, 400, 490, 1.6);
    EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 4)) << radius;
    EXPECT_EQ(plate.count(OfferedFeature::hole).first, 1) << radius;
  }
}

TEST(Features, ALineOfDashesIsNeverReady) {
  Plate plate;
  for (double y = 100; y < 495; y += 42) plate.line(400, y, 400, y + 30, 4);
  EXPECT_EQ(plate.count(OfferedFeature::edge).second, 4);
}

TEST(Features, AnEdgeThatBreaksOffIsOfferedAndNotReady) {
  Plate plate;
  plate.line(100, 300, 500, 300, 4);
  EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(5, 4));
}

TEST(Features, AnEdgeBrokenByAFigureIsOneAndNotReady) {
  Plate plate;
  for (int y = 250; y < 310; ++y) std::fill_n(plate.cover.row(y) + 690, 20, std::uint8_t{0});
  EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 3));
}

TEST(Features, ARoundedCornerIsARoundAndItsSidesAreReady) {
  Plate plate;
  const int r = 60;  // of the corner at (700, 500)
  for (int y = 500 - r; y < 505; ++y) std::fill_n(plate.cover.row(y) + 700 - r, r + 5, 0);
  for (int degrees = 0; degrees < 90; degrees += 10) {
    const double a = degrees * std::numbers::pi / 180, b = (degrees + 10) * std::numbers::pi / 180;
    plate.line(700 - r + r * std::cos(a), 500 - r + r * std::sin(a), 700 - r + r * std::cos(b),
               500 - r + r * std::sin(b), 4);
  }
  EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 4));
  EXPECT_EQ(plate.count(OfferedFeature::round), std::pair(1, 1));
}

TEST(Features, ACutCornerIsALineOrAnArcAndItsSidesAreReady) {
  const int cut = 100;  // of the corner at (700, 500)
  for (const bool hollow : {false, true}) {
    Plate plate;
    for (int y = 500 - cut; y < 505; ++y) std::fill_n(plate.cover.row(y) + 700 - cut, cut + 5, 0);
    if (!hollow) plate.line(700 - cut, 500, 700, 500 - cut, 4);
    for (int degrees = 0; degrees < 90 && hollow; degrees += 10) {
      const double a = degrees * std::numbers::pi / 180,
                   b = (degrees + 10) * std::numbers::pi / 180;
      plate.line(700 - cut * std::cos(a), 500 - cut * std::sin(a), 700 - cut * std::cos(b),
                 500 - cut * std::sin(b), 4);
    }
    EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 4));
    EXPECT_EQ(plate.count(OfferedFeature::line), hollow ? std::pair(0, 0) : std::pair(1, 1));
    EXPECT_EQ(plate.count(OfferedFeature::arc), hollow ? std::pair(1, 1) : std::pair(0, 0));
  }
}

TEST(Features, LettersAndTheirBowlsAreNothing) {
  Plate plate;
  for (int i = 0; i < 8; ++i) {
    const double x = 150 + 40 * i;
    plate.circle(x, 300, 9, 3);  // as an o
    plate.circle(x, 400, 9, 3);  // as a 6 with its stem, a bar above
    plate.line(x - 9, 400, x - 4, 378, 3);
    plate.line(x - 14, 372, x + 14, 372, 2);
    plate.line(x + 18, 380, x + 18, 412, 4);  // as an E
    for (const double y : {380.0, 396.0, 412.0}) plate.line(x + 18, y, x + 26, y, 4);
  }
  EXPECT_EQ(plate.count(OfferedFeature::hole), std::pair(0, 0));
  EXPECT_EQ(plate.count(OfferedFeature::edge), std::pair(4, 4));
  EXPECT_EQ(plate.count(OfferedFeature::slot), std::pair(0, 0));
}

TEST(Features, ACircleWithoutItsCrossIsNotOffered) {
  Plate plate;
  plate.circle(300, 300, 40, 3);
  EXPECT_EQ(plate.count(OfferedFeature::hole), std::pair(0, 0));
}

TEST(Features, ACrossThatEndsWithinTheRimIsNotReady) {
  Plate plate;
  plate.circle(300, 300, 40, 3);
  plate.line(265, 300, 335, 300, 1.6);
  plate.line(300, 265, 300, 335, 1.6);
  EXPECT_EQ(plate.count(OfferedFeature::hole), std::pair(1, 0));
}

TEST(Features, ASlotEitherWay) {
  for (const bool plumb : {false, true}) {
    Plate plate;
    const double half = 40, r = 18;
    const auto at = [&](double u, double v) {
      return plumb ? std::pair(400 + v, 300 + u) : std::pair(400 + u, 300 + v);
    };
    for (double t = -90; t < 90; t += 2) {
      for (const int side : {-1, 1}) {
        const double a = t * std::numbers::pi / 180, b = (t + 2) * std::numbers::pi / 180;
        const auto [x0, y0] = at(side * (half + r * std::cos(a)), r * std::sin(a));
        const auto [x1, y1] = at(side * (half + r * std::cos(b)), r * std::sin(b));
        plate.line(x0, y0, x1, y1, 3);
      }
    }
    for (const double v : {-r, r}) {
      const auto [x0, y0] = at(-half, v);
      const auto [x1, y1] = at(half, v);
      plate.line(x0, y0, x1, y1, 3);
    }
    const auto [x0, y0] = at(-half - r - 12, 0);
    const auto [x1, y1] = at(half + r + 12, 0);
    plate.line(x0, y0, x1, y1, 1.6);
    const auto features = plate.features();
    const auto slot = std::find_if(features.begin(), features.end(), [](const FeatureOffer& f) {
      return f.kind == OfferedFeature::slot;
    });
    ASSERT_NE(slot, features.end()) << plumb;
    EXPECT_TRUE(slot->ready);
    EXPECT_NEAR(slot->at.x, 400 / kOfPlate, 1.0 / 64);
    EXPECT_NEAR(slot->at.y, -300 / kOfPlate, 1.0 / 64);
    EXPECT_NEAR(std::hypot(slot->to.x - slot->from.x, slot->to.y - slot->from.y),
                2 * half / kOfPlate, 1.0 / 32);
    EXPECT_NEAR(slot->drawnRadius, r / kOfPlate, 1.0 / 64);
    EXPECT_EQ(plate.count(OfferedFeature::slot).first, 1);
  }
}

}  // namespace
}  // namespace inchwright::seen
