#include "core/plan/drawn_part.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/plan/plates.h"

namespace inchwright {
namespace {

using namespace plates;

DrawnPart pictureOfPlate(const Plate& plate, const Setup& setup, const Job& job = jobWith()) {
  const Result<WorkAt> work = workAt(job, plate.part, plate.solution, setup);
  EXPECT_TRUE(work.ok()) << work.error().text;
  return work.ok() ? drawnPart(*work) : DrawnPart();
}

double areaOf(const std::vector<PlanePoint>& points) {
  double twice = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const PlanePoint &a = points[i], &b = points[(i + 1) % points.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

TEST(PictureOf, LiesAsOnTheTable) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4", Make::tap);
  const DrawnPart flat = pictureOfPlate(plate, lowerCorner());
  ASSERT_EQ(flat.outline.size(), 4u);
  EXPECT_EQ(flat.outline[0], (PlanePoint{0, 0}));
  EXPECT_NEAR(flat.outline[2].x, 50.8, 1e-9);
  EXPECT_NEAR(flat.outline[2].y, 38.1, 1e-9);
  EXPECT_TRUE(flat.stock.empty());
  EXPECT_TRUE(flat.missing.empty());
  ASSERT_EQ(flat.circles.size(), 1u);
  EXPECT_NEAR(flat.circles[0].centre.x, 9.525, 1e-9);
  EXPECT_NEAR(flat.circles[0].diameter, 6.35, 1e-9);
  EXPECT_TRUE(flat.circles[0].tapped);
  // A quarter turn anticlockwise takes X to away and Y to the left.
  const DrawnPart turned = pictureOfPlate(plate, lowerCorner(90));
  EXPECT_NEAR(turned.circles[0].centre.x, -19.05, 1e-9);
  EXPECT_NEAR(turned.circles[0].centre.y, 9.525, 1e-9);
  EXPECT_GT(areaOf(turned.outline), 0);
}

TEST(PictureOf, IsNotFlippedByTheReadout) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4");
  DrawnPart left = pictureOfPlate(plate, lowerCorner(), jobWith(CountsX::left, CountsY::towards));
  EXPECT_FALSE(left.xCountsRight);
  EXPECT_FALSE(left.yCountsAway);
  left.xCountsRight = left.yCountsAway = true;
  EXPECT_EQ(left, pictureOfPlate(plate, lowerCorner()));
}

TEST(PictureOf, ShowsStockJawAndStop) {
  auto setup = lowerCorner(90);
  leaveOn(setup, Side::left, "1/4");
  setup.jaw = Side::back;
  setup.stop = Side::left;
  const DrawnPart picture = pictureOfPlate(block(), setup);
  EXPECT_EQ(picture.jaw, TableSide::left);
  EXPECT_EQ(picture.stop, TableSide::near);
  ASSERT_EQ(picture.stock.size(), 4u);
  EXPECT_NEAR(picture.stock[0].y, -6.35, 1e-9);
  EXPECT_NEAR(areaOf(picture.stock) - areaOf(picture.outline), 6.35 * 38.1, 1e-6);
}

TEST(PictureOf, RoundsCornersOff) {
  Plate plate = block();
  Feature round;
  round.id = "N";
  round.shape = kind::Round{.radius = figure("1/4"), .corner = {"R", "K"}};
  plate.part.features.push_back(round);
  for (int turn = 0; turn < 360; turn += 90) {
    const DrawnPart picture = pictureOfPlate(plate, lowerCorner(turn));
    EXPECT_EQ(picture.outline.size(), 3u + 9u) << turn;
    EXPECT_TRUE(picture.rounds.empty());
    // A corner loses (1 − π/4) r²; eight chords keep within 1 % of a quarter disc of it.
    const double lost = 50.8 * 38.1 - areaOf(picture.outline);
    EXPECT_NEAR(lost, (1 - std::acos(-1.0) / 4) * 6.35 * 6.35, 0.01 * 6.35 * 6.35) << turn;
  }
}

TEST(PictureOf, DrawsSlotsRoundsMarksAndEdges) {
  Plate plate = block();
  plate.feature("S", FeatureKind::slot, 64, 16);
  plate.last().as<kind::Slot>()->width = figure("1/4");
  plate.put("S1", Axis::x, 48).put("S1", Axis::y, 16).put("S2", Axis::x, 80).put("S2", Axis::y, 16);
  plate.hole("A", 96, 32, "1/4");
  plate.feature("M", FeatureKind::round, 160, 32);
  plate.last().shape = kind::Round{.radius = figure("1"), .about = "A"};
  plate.feature("P", FeatureKind::point, 40, 0);
  plate.edge("W", Axis::y, 8);
  const DrawnPart picture = pictureOfPlate(plate, lowerCorner());
  ASSERT_EQ(picture.slots.size(), 1u);
  EXPECT_NEAR(picture.slots[0].to.x - picture.slots[0].from.x, 12.7, 1e-9);
  ASSERT_EQ(picture.rounds.size(), 1u);
  EXPECT_EQ(picture.rounds[0].centre, picture.circles.at(0).centre);
  ASSERT_EQ(picture.marks.size(), 1u);
  ASSERT_EQ(picture.edges.size(), 5u);
  EXPECT_EQ(picture.edges[0].side, TableSide::left);
  EXPECT_EQ(picture.edges[4].id, "W");
  EXPECT_FALSE(picture.edges[4].side);
  EXPECT_FALSE(picture.edges[4].axis == MachineAxis::x);
  EXPECT_NEAR(picture.edges[4].from.y, 9.525, 1e-9);
}

TEST(PictureOf, TellsDisputedHolesFromSoundOnes) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4").hole("B", 96, 32, "1/4").hole("C", 120, 32, "1/4");
  plate.at("A", Axis::x).disputed = true;
  plate.at("B", Axis::y).disputed = true;
  const DrawnPart picture = pictureOfPlate(plate, lowerCorner());
  ASSERT_EQ(picture.circles.size(), 3u);
  EXPECT_TRUE(picture.circles[0].disputed);
  EXPECT_TRUE(picture.circles[1].disputed);
  EXPECT_FALSE(picture.circles[2].disputed);
}

TEST(PictureOf, NamesTheSidesItHadToGuess) {
  Plate plate;
  plate.edge("L", Axis::x, 0, Side::left);
  plate.hole("A", 64, 64, "1/4").hole("B", 64, 64, "1/4", Make::drill, Face::front);
  const DrawnPart picture =
      pictureOfPlate(plate, setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "A")}));
  EXPECT_EQ(picture.missing,
            (std::vector<TableSide>{TableSide::right, TableSide::near, TableSide::far}));
  EXPECT_EQ(picture.circles.size(), 1u);  // the front's hole is not in this face
  const Plate nothing;
  EXPECT_EQ(pictureOfPlate(nothing, setupWith({})).missing.size(), 4u);
}

// A block with an end of 3/4 struck about A, 3/4 from its left side: a half circle there instead of
// two corners, and nothing of the bar left of it but the tip.
TEST(PictureOf, AnEndStruckAboutAHoleIsPartOfTheOutline) {
  Plate plate = block();
  plate.hole("A", 80, 32, "1/4");
  plate.feature("M", FeatureKind::round, 32, 32);
  plate.put("M0", Axis::x, 80).put("M0", Axis::y, 32);
  plate.last().shape = kind::Round{.side = Side::left, .radius = figure("3/4"), .about = "A"};
  const DrawnPart picture = pictureOfPlate(plate, lowerCorner());
  ASSERT_GT(picture.outline.size(), 12u);
  EXPECT_GT(areaOf(picture.outline), 0);
  for (const PlanePoint& at : picture.outline) {
    if (at.x > 19.05) continue;
    EXPECT_NEAR(std::hypot(at.x - 19.05, at.y - 19.05), 19.05, 1e-6);
  }
  EXPECT_TRUE(picture.missing.empty());
}

}  // namespace
}  // namespace inchwright
