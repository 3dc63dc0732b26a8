#include "core/place/outline.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <tuple>

#include "core/place/part_outline.h"
#include "core/place/placing.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

constexpr double kPi = std::numbers::pi;

Feature featureOf(const Id& id, Shape shape) {
  Feature feature;
  feature.id = id;
  feature.shape = std::move(shape);
  return feature;
}

// A plate from (0, 0) to (w, h) with its four sides, and what is put on it by hand.
struct Plate {
  Part part;
  FacePlane plane;

  Plate(double w, double h) {
    plane.from = {"L", "F"};
    side("L", Axis::x, Side::left, {kPi / 2, 0});
    side("R", Axis::x, Side::right, {kPi / 2, -w});
    side("F", Axis::y, Side::front, {0, 0});
    side("K", Axis::y, Side::back, {0, h});
  }
  void side(const Id& id, Axis axis, Side which, PlaneLine line) {
    part.features.push_back(featureOf(id, kind::Edge{axis, which}));
    plane.lines[id] = line;
  }
  void round(const Id& id, PlaneCircle circle, kind::Round round) {
    part.features.push_back(featureOf(id, std::move(round)));
    plane.circles[id] = circle;
  }
  void hole(const Id& id, PlanePoint at, const char* diameter) {
    kind::Hole hole;
    hole.drilled.diameter = *readLength(diameter);
    part.features.push_back(featureOf(id, hole));
    plane.places[id] = at;
  }
  Outline byItself() const {
    const auto request = outlineByItself(part, plane);
    EXPECT_TRUE(request);
    return request ? joinOutline(part, plane, *request) : Outline{};
  }
};

std::vector<Id> idsOf(const Outline& outline) {
  std::vector<Id> ids;
  for (const OutlinePiece& piece : outline.pieces) ids.push_back(piece.id);
  return ids;
}

TEST(Outline, FourSidesMakeAPlate) {
  const Outline outline = Plate(4, 2).byItself();
  EXPECT_TRUE(outline.isClosed);
  EXPECT_EQ(idsOf(outline), (std::vector<Id>{"F", "R", "K", "L"}));
  EXPECT_NEAR(outline.area(), 8, 1e-14);
  EXPECT_NEAR(outline.pieces[0].path->end.x, 4, 1e-15);
  EXPECT_NEAR(outline.pieces[0].path->end.y, 0, 1e-15);
}

TEST(Outline, ARoundedCornerTakesItsTouchingPoints) {
  Plate plate(4, 2);
  plate.round("U", {{3.5, 1.5}, 0.5}, {.corner = {"K", "R"}});
  const Outline outline = plate.byItself();
  ASSERT_TRUE(outline.isClosed);
  EXPECT_EQ(idsOf(outline), (std::vector<Id>{"F", "R", "U", "K", "L"}));
  EXPECT_NEAR(outline.area(), 8 - (1 - kPi / 4) / 4, 1e-14);
  const PathPiece& arc = *outline.pieces[2].path;
  EXPECT_EQ(arc.sense, 1);
  EXPECT_NEAR(arc.start.x, 4, 1e-12);
  EXPECT_NEAR(arc.start.y, 1.5, 1e-12);
  EXPECT_NEAR(arc.end.x, 3.5, 1e-12);
  EXPECT_NEAR(arc.end.y, 2, 1e-12);
}

TEST(Outline, ARoundEndStandsForItsSide) {
  Plate plate(4, 2);
  plate.round("E", {{3, 1}, 1}, {.side = Side::right, .about = "A"});
  const Outline outline = plate.byItself();
  ASSERT_TRUE(outline.isClosed);
  EXPECT_EQ(idsOf(outline), (std::vector<Id>{"F", "E", "K", "L"}));
  EXPECT_NEAR(outline.area(), 6 + kPi / 2, 1e-12);
  EXPECT_NEAR(outline.extents().second.x, 4, 1e-15);
}

// As high as it is wide the round touches all four sides, and stands for its own alone: half a
// square and half a disc.
TEST(Outline, ARoundEndStandsForNoOtherSideThatItTouches) {
  for (const auto& [side, ids] : {std::pair(Side::right, std::vector<Id>{"F", "E", "K", "L"}),
                                  std::pair(Side::back, std::vector<Id>{"F", "R", "E", "L"}),
                                  std::pair(Side::left, std::vector<Id>{"F", "R", "K", "E"})}) {
    Plate plate(2, 2);
    plate.round("E", {{1, 1}, 1}, {.side = side, .about = "A"});
    const Outline outline = plate.byItself();
    ASSERT_TRUE(outline.isClosed) << static_cast<int>(side);
    EXPECT_EQ(idsOf(outline), ids);
    EXPECT_NEAR(outline.area(), 2 + kPi / 2, 1e-12);
  }
}

TEST(Outline, AWiderRoundEndIsCutOnItsOwnSide) {
  Plate plate(4, 2);
  plate.round("E", {{2, 1}, 2}, {.side = Side::right, .about = "A"});
  const Outline outline = plate.byItself();
  ASSERT_TRUE(outline.isClosed);
  EXPECT_NEAR(outline.pieces[1].path->start.x, 2 + std::sqrt(3.0), 1e-12);
  EXPECT_NEAR(outline.pieces[1].path->end.x, 2 + std::sqrt(3.0), 1e-12);
}

TEST(Outline, ATouchMissedByLittleIsJoinedAndSaid) {
  Plate plate(4, 2);
  plate.round("E", {{3, 1}, 1 - 1.0 / 64}, {.side = Side::right, .about = "A"});
  const Outline outline = joinOutline(plate.part, plate.plane, {{"F", "E", "K", "L"}, false});
  EXPECT_TRUE(outline.isClosed);
  EXPECT_NEAR(outline.pieces[0].missesNext, 1.0 / 64, 1e-12);
  plate.plane.circles["E"].radius = 1 - 1.0 / 16;
  const Outline open = joinOutline(plate.part, plate.plane, {{"F", "E", "K", "L"}, false});
  EXPECT_FALSE(open.isClosed);
  EXPECT_FALSE(open.pieces[1].path);
  EXPECT_TRUE(open.pieces[3].path);
}

// Two ends of radius 1 on a line, side by side: touching, a hundredth of an inch off each other,
// and too far.
TEST(Outline, RoundsThatMissEachOtherByLittleAreJoinedAndSaid) {
  for (const auto& [far, misses, isJoined] :
       {std::tuple(2.0, 0.0, true), {2.01, 0.01, true}, {2.04, 0.04, false}}) {
    Plate plate(1, 1);
    plate.part.features = {featureOf("E", kind::Round{.about = "A"}),
                           featureOf("D", kind::Round{.about = "B"}), featureOf("N", kind::Line{})};
    plate.plane.lines = {{"N", {0, -1}}};
    plate.plane.circles = {{"E", {{0, 0}, 1}}, {"D", {{far, 0}, 1}}};
    const Outline outline = joinOutline(plate.part, plate.plane, {{"N", "D", "E"}, false});
    ASSERT_EQ(outline.isClosed, isJoined) << far;
    if (!isJoined) continue;
    EXPECT_NEAR(outline.pieces[1].missesNext, misses, 1e-9) << far;
    EXPECT_NEAR(outline.pieces[1].path->end.x, far / 2, 0.02) << far;
    EXPECT_NEAR(outline.pieces[1].path->end.y, 0, 0.02) << far;
  }
}

TEST(Outline, ALeverIsTwoEndsAndTwoTangents) {
  // Ends of radius 1 and 1/2, 3 apart: the tangents lean by asin(1/6) to the middle line.
  Plate plate(1, 1);
  const double lean = std::asin(0.5 / 3);
  plate.part.features = {featureOf("E", kind::Round{.about = "A"}),
                         featureOf("D", kind::Round{.about = "B"}), featureOf("N", kind::Line{}),
                         featureOf("M", kind::Line{})};
  plate.plane.lines = {{"N", {lean, -1}}, {"M", {kPi - lean, -1}}};
  plate.plane.circles = {{"E", {{0, 0}, 1}}, {"D", {{3, 0}, 0.5}}};
  EXPECT_FALSE(outlineByItself(plate.part, plate.plane));
  const Outline outline = joinOutline(plate.part, plate.plane, {{"N", "D", "M", "E"}, false});
  ASSERT_TRUE(outline.isClosed);
  const double side = std::sqrt(9 - 0.25);
  EXPECT_NEAR(outline.area(), 1.5 * side + (kPi - 2 * lean) / 2 * 0.25 + (kPi + 2 * lean) / 2 * 1,
              1e-9);
  for (const OutlinePiece& piece : outline.pieces) EXPECT_EQ(piece.path->sense, 1);
  EXPECT_NEAR(outline.extents().first.x, -1, 1e-12);
  EXPECT_NEAR(outline.extents().second.x, 3.5, 1e-12);
}

TEST(Outline, AHollowIsFollowedClockwise) {
  Plate plate(4, 2);
  plate.part.features.push_back(featureOf("C", kind::Arc{}));
  plate.plane.circles["C"] = {{4, 1}, 0.5};
  const Outline outline = joinOutline(plate.part, plate.plane, {{"F", "R", "K", "L"}, false});
  EXPECT_NEAR(outline.area(), 8, 1e-14);
  Outline hollow = joinOutline(plate.part, plate.plane, {{"F", "C", "K", "L"}, false});
  EXPECT_FALSE(hollow.isClosed);
  // A hollow of radius 5 across the right side, its centre on the far right.
  plate.plane.circles["C"] = {{4 + std::sqrt(24.0), 1}, 5};
  hollow = joinOutline(plate.part, plate.plane, {{"F", "C", "K", "L"}, false});
  ASSERT_TRUE(hollow.isClosed);
  EXPECT_EQ(hollow.pieces[1].path->sense, -1);
  const double sweep = 2 * std::asin(0.2);
  EXPECT_NEAR(hollow.area(), 8 - 12.5 * (sweep - std::sin(sweep)), 1e-9);
}

TEST(Outline, ADiscIsWhole) {
  Plate plate(1, 1);
  plate.plane.lines.clear();
  plate.round("D", {{1, 1}, 3}, {.about = "A"});
  const Outline disc = joinOutline(plate.part, plate.plane, {{"D"}, false});
  ASSERT_TRUE(disc.isClosed);
  EXPECT_TRUE(disc.pieces[0].path->isWhole);
  EXPECT_NEAR(disc.area(), 9 * kPi, 1e-13);
}

TEST(Outline, WhatIsNotPlacedLeavesItOpen) {
  Plate plate(4, 2);
  plate.plane.lines.erase("R");
  const Outline outline = joinOutline(plate.part, plate.plane, {{"F", "R", "K", "L"}, false});
  EXPECT_FALSE(outline.isClosed);
  EXPECT_TRUE(outline.pieces[3].path);
  EXPECT_FALSE(outline.pieces[1].path);
  EXPECT_TRUE(wallsOf(plate.part, plate.plane, {outline}).empty());
}

TEST(Outline, WallsAreWhatIsLeftBesideAHole) {
  Plate plate(4, 2);
  plate.hole("A", {0.375, 1}, "1/2");
  plate.hole("B", {3.9, 1}, "1/4");
  plate.hole("C", {9, 9}, "1/4");
  const auto walls = wallsOf(plate.part, plate.plane, {plate.byItself()});
  ASSERT_EQ(walls.size(), 2U);
  EXPECT_EQ(walls[0].place, "A");
  EXPECT_EQ(walls[0].beside, "L");
  EXPECT_NEAR(walls[0].wall, 0.125, 1e-14);
  EXPECT_EQ(walls[1].beside, "R");
  EXPECT_NEAR(walls[1].wall, -0.025, 1e-14);
}

TEST(Outline, AHoleOverTheEdgeBreaksOutFromOutsideToo) {
  Plate plate(4, 2);
  plate.hole("A", {4.05, 1}, "1/4");
  const auto walls = wallsOf(plate.part, plate.plane, {plate.byItself()});
  ASSERT_EQ(walls.size(), 1U);
  EXPECT_NEAR(walls[0].wall, -0.175, 1e-14);
}

TEST(Outline, InnerOutlinesThinTheWallToo) {
  Plate plate(4, 2);
  plate.hole("A", {1, 1}, "1/2");
  plate.round("D", {{2, 1}, 0.5}, {.about = "P"});
  Outline opening = joinOutline(plate.part, plate.plane, {{"D"}, true});
  const auto walls = wallsOf(plate.part, plate.plane, {plate.byItself(), opening});
  ASSERT_EQ(walls.size(), 1U);
  EXPECT_EQ(walls[0].beside, "D");
  EXPECT_NEAR(walls[0].wall, 0.25, 1e-14);
}

TEST(Outline, TheTracingTellsWhichCrossingIsMeant) {
  // A round that reaches past both ends of the side it crosses: traced to end at one of them.
  for (const bool low : {true, false}) {
    Plate plate(4, 4);
    plate.part.features.push_back(featureOf("N", kind::Line{}));
    plate.part.features.push_back(featureOf("D", kind::Round{.about = "A"}));
    plate.plane.lines["N"] = {0, 0};
    plate.plane.circles["D"] = {{2, 0.5}, 1};
    const double half = std::sqrt(0.75);
    plate.plane.traced["N"] = {{0, 0}, {low ? 2 - half : 2 + half, 0}};
    const Outline outline = joinOutline(plate.part, plate.plane, {{"N", "D"}, false});
    ASSERT_TRUE(outline.isClosed);
    EXPECT_NEAR(outline.pieces[0].path->end.x, low ? 2 - half : 2 + half, 1e-12);
  }
}

FacePlane planeOf(const Part& part, Face face) {
  const auto placed = placeWhole(part);
  EXPECT_TRUE(placed.ok());
  return facePlaneOf(part, placed->positions, placed->beyond, face);
}

// M rises at 30° through A. Seen from below the part is turned over about its own X.
TEST(FacePlane, IsSeenFromItsOwnSide) {
  Part part = test::partFrom(
      "edge L x left\nedge F y front\nedge K y back\nhole A 1/4\nround Q 3/8 about A left\n"
      "ring E 2 - 0\nline M\nb1 x L A 1\nb2 y F A 3/4\nb3 y F K 2\nb4 x L E 2\nb5 y F E 1\n"
      "r1 pcd E 2\nr2 angle M - 30\ntraced M 0.134 0.25 1.866 1.25\n");
  part.readings.back().to.clear();
  part.features.back().as<kind::Line>()->through = {"A"};
  for (const auto& [face, low] : {std::pair(Face::top, "F"), std::pair(Face::bottom, "K")}) {
    SCOPED_TRACE(low);
    const FacePlane plane = planeOf(part, face);
    const auto y = [&](double fromFront) { return face == Face::top ? fromFront : 2 - fromFront; };
    EXPECT_EQ(plane.from, (std::array<std::string, 2>{"L", low}));
    EXPECT_NEAR(plane.places.at("A").x, 1, 1e-9);
    EXPECT_NEAR(plane.places.at("A").y, y(0.75), 1e-9);
    EXPECT_NEAR(plane.places.at("E1").x, 3, 1e-9);
    EXPECT_NEAR(leftOf(plane.lines.at("L"), {0, 5}), 0, 1e-9);
    for (const auto& [id, fromFront] : {std::pair("F", 0.0), std::pair("K", 2.0)}) {
      EXPECT_NEAR(leftOf(plane.lines.at(id), {5, y(fromFront)}), 0, 1e-9) << id;
      EXPECT_NEAR(plane.lines.at(id).direction, 0, 1e-9);
    }
    EXPECT_NEAR(leftOf(plane.lines.at("M"), {1, y(0.75)}), 0, 1e-9);
    EXPECT_NEAR(leftOf(plane.lines.at("M"), {1 + std::sqrt(3.0), y(1.75)}), 0, 1e-9);
    EXPECT_NEAR(plane.circles.at("A").radius, 0.125, 1e-9);
    EXPECT_NEAR(plane.circles.at("Q").radius, 0.375, 1e-9);
    EXPECT_NEAR(plane.circles.at("Q").centre.y, y(0.75), 1e-9);
    EXPECT_NEAR(plane.circles.at("E").radius, 1, 1e-9) << "by its reading";
    EXPECT_NEAR(plane.traced.at("M")[0].x, 0.134, 1e-9);
    EXPECT_NEAR(plane.traced.at("M")[0].y, y(0.25), 1e-9);
    EXPECT_NEAR(plane.traced.at("M")[1].y, y(1.25), 1e-9);
  }
}

// A plate of 3 by 2 with a window of 1 by 1 in it. Its outer outline is the same whether it is
// asked for with the window or alone, given or following by itself.
TEST(OuterOutline, IsTheFirstOfItsFace) {
  Part part = test::partFrom(
      "edge L x left\nedge R x right\nedge F y front\nedge K y back\nedge P x\nedge Q x\n"
      "edge M y\nedge N y\nb1 x L R 3\nb2 y F K 2\nb3 x L P 1\nb4 x P Q 1\nb5 y F M 1/2\n"
      "b6 y M N 1\n");
  GivenOutline window, given;
  window.follows = {"M", "Q", "N", "P"};
  window.isInner = true;
  given.follows = {"F", "R", "K", "L"};
  GivenOutline below = given;
  below.face = Face::bottom;
  for (const bool isGiven : {false, true}) {
    part.outlines = {window};
    if (isGiven) part.outlines.insert(part.outlines.end(), {below, given});
    const auto whole = placeWhole(part);
    ASSERT_TRUE(whole.ok());
    const FaceOutlines all = outlinesOf(part, whole->positions, whole->beyond, Face::top);
    ASSERT_EQ(all.outlines.size(), 2U);
    EXPECT_FALSE(all.outlines[0].isInner);
    EXPECT_TRUE(all.outlines[1].isInner);
    EXPECT_EQ(all.outlines[0].byItself, !isGiven);
    EXPECT_NEAR(all.outlines[0].area(), 6, 1e-12);
    EXPECT_NEAR(all.outlines[1].area(), 1, 1e-12);
    const Outline outer = outerOutlineOf(part, whole->positions, whole->beyond, Face::top);
    EXPECT_FALSE(outer.isInner);
    EXPECT_TRUE(outer.isClosed);
    EXPECT_EQ(idsOf(outer), idsOf(all.outlines[0]));
    EXPECT_NEAR(outer.area(), 6, 1e-12);
  }
  EXPECT_EQ(outlinedFaces(part), (std::vector<Face>{Face::top, Face::bottom}));
}

TEST(FacePlane, WithoutSidesCountsFromWhatReadingsGoOutFrom) {
  const std::string holes = "hole A 1/4\nhole B 1/4\nhole C 1/4\n";
  const std::string fromB = holes + "r1 x B A 1\nr2 y B A 1/2\n";
  const FacePlane out = planeOf(test::partFrom(fromB), Face::top);
  EXPECT_EQ(out.from, (std::array<std::string, 2>{"B", "B"}));
  EXPECT_NEAR(out.places.at("A").x, 1, 1e-9);
  EXPECT_NEAR(out.places.at("A").y, 0.5, 1e-9);
  EXPECT_FALSE(out.places.contains("C")) << "it is loose";
  const FacePlane several = planeOf(test::partFrom(fromB + "r3 x A C 1\nr4 y A C 1\n"), Face::top);
  EXPECT_EQ(several.from, (std::array<std::string, 2>{"A", "A"})) << "the lower id";
  EXPECT_NEAR(several.places.at("C").x, 1, 1e-9);
  const FacePlane none = planeOf(test::partFrom(holes), Face::top);
  EXPECT_EQ(none.from, (std::array<std::string, 2>{"A", "A"}));
}

}  // namespace
}  // namespace inchwright
