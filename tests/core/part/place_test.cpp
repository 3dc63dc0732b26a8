#include <gtest/gtest.h>

#include "core/part/feature.h"
#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

std::vector<Id> idsOf(const Feature& feature) {
  std::vector<Id> ids;
  for (const Place& place : placesOf(feature)) ids.push_back(place.id);
  return ids;
}

TEST(Places, EdgeHasItsOneAxis) {
  EXPECT_EQ(placesOf(edge("L", Axis::z)), (std::vector<Place>{{"L", {Axis::z}}}));
}

TEST(Places, OthersHaveTheAxesOfTheirFace) {
  const std::vector<std::pair<Face, AxisSet>> rows{
      {Face::top, {Axis::x, Axis::y}},   {Face::bottom, {Axis::x, Axis::y}},
      {Face::front, {Axis::x, Axis::z}}, {Face::back, {Axis::x, Axis::z}},
      {Face::left, {Axis::y, Axis::z}},  {Face::right, {Axis::y, Axis::z}}};
  for (FeatureKind kind : {FeatureKind::hole, FeatureKind::point, FeatureKind::arc}) {
    for (const auto& [face, axes] : rows) {
      Feature feature = onTop("A", kind);
      feature.face = face;
      EXPECT_EQ(placesOf(feature), (std::vector<Place>{{"A", axes}})) << nameOf(face);
    }
  }
}

TEST(Places, SlotHasItsTwoEnds) {
  EXPECT_EQ(idsOf(onTop("S", FeatureKind::slot)), (std::vector<Id>{"S", "S1", "S2"}));
}

TEST(Places, RingsAndRowsHaveTheirHoles) {
  Feature ring = onTop("G", FeatureKind::ring);
  EXPECT_EQ(idsOf(ring), (std::vector<Id>{"G", "G1"}));
  ring.as<kind::Ring>()->holes = 3;
  EXPECT_EQ(idsOf(ring), (std::vector<Id>{"G", "G1", "G2", "G3"}));
  Feature row = onTop("D", FeatureKind::row);
  row.shape = kind::Row{.axis = Axis::x, .holes = 2, .countedBySpaces = true};
  EXPECT_EQ(idsOf(row), (std::vector<Id>{"D", "D1", "D2"}));
  row.as<kind::Row>()->holes = -1;
  EXPECT_EQ(idsOf(row), (std::vector<Id>{"D"}));
  row.as<kind::Row>()->holes = 2'000'000'000;
  EXPECT_EQ(placesOf(row).size(), std::size_t{kMostHoles} + 1);
}

TEST(Places, LinesHaveNone) {
  EXPECT_TRUE(placesOf(onTop("P", FeatureKind::line)).empty());
}

TEST(Places, ARoundHasItsCentre) {
  const Feature round = onTop("E", FeatureKind::round);
  EXPECT_EQ(idsOf(round), (std::vector<Id>{"E", "E0"}));
  EXPECT_TRUE(isNamedBy(round, "E0"));
  for (const char* id : {"E1", "E00", "E-0", "F0"}) EXPECT_FALSE(isNamedBy(round, id)) << id;
}

TEST(Places, BelongToTheirFeature) {
  Feature ring = onTop("G", FeatureKind::ring);
  ring.as<kind::Ring>()->holes = 12;
  for (const char* id : {"G", "G1", "G12"}) EXPECT_TRUE(isNamedBy(ring, id)) << id;
  for (const char* id : {"G13", "G0", "G01", "GA", "A", "", "G1x", "G+1", "G-1", "G99999999999"}) {
    EXPECT_FALSE(isNamedBy(ring, id)) << id;
  }
}

TEST(Traced, IsFoundByTheAxesOfTheFace) {
  Feature hole = onTop("A", FeatureKind::hole);
  EXPECT_FALSE(tracedAlong(hole, Axis::x));
  hole.traced = {"0.41", "-0.77"};
  EXPECT_EQ(tracedAlong(hole, Axis::x), 0.41);
  EXPECT_EQ(tracedAlong(hole, Axis::y), -0.77);
  EXPECT_FALSE(tracedAlong(hole, Axis::z));
  hole.face = Face::left;
  EXPECT_EQ(tracedAlong(hole, Axis::y), 0.41);
  EXPECT_EQ(tracedAlong(hole, Axis::z), -0.77);
  EXPECT_FALSE(tracedAlong(hole, Axis::x));
}

TEST(Traced, OfAnEdgeIsAlongItsAxisOnly) {
  Feature side = edge("L", Axis::y);
  side.traced = {"1.5"};
  EXPECT_EQ(tracedAlong(side, Axis::y), 1.5);
  EXPECT_FALSE(tracedAlong(side, Axis::x));
}

TEST(Kinds, HaveTheirOwnShape) {
  for (int i = 0; i < 9; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    EXPECT_EQ(onTop("A", kind).kind(), kind);
    EXPECT_EQ(onTop("A", kind).drilled() != nullptr,
              kind == FeatureKind::hole || kind == FeatureKind::ring || kind == FeatureKind::row);
  }
}

TEST(Kinds, TellTheirMembers) {
  Feature round = onTop("M", FeatureKind::round);
  EXPECT_FALSE(radiusOf(round));
  round.shape = kind::Round{.side = Side::left, .radius = sixtyFourths(24, "3/8")};
  EXPECT_EQ(radiusOf(round)->text, "3/8");
  EXPECT_EQ(sideOf(round), Side::left);
  EXPECT_FALSE(axisOf(round));
  EXPECT_FALSE(diameterOf(round));
  EXPECT_EQ(axisOf(edge("L", Axis::z)), Axis::z);
  Feature row = onTop("D", FeatureKind::row);
  row.drilled()->diameter = sixtyFourths(8, "1/8");
  EXPECT_EQ(diameterOf(row)->text, "1/8");
  EXPECT_EQ(axesOf(onTop("P", FeatureKind::line)), AxisSet());
}

TEST(Names, GoThereAndBack) {
  for (int i = 0; i < 9; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    EXPECT_EQ(featureKindNamed(nameOf(kind)), kind);
  }
  for (int i = 0; i < 7; ++i) {
    const auto make = static_cast<Make>(i);
    EXPECT_EQ(makeNamed(nameOf(make)), make);
  }
  for (int i = 0; i < 5; ++i) {
    const auto locate = static_cast<Locate>(i);
    EXPECT_EQ(locateNamed(nameOf(locate)), locate);
  }
  for (int i = 0; i < 6; ++i) {
    EXPECT_EQ(readingKindNamed(nameOf(static_cast<ReadingKind>(i))), static_cast<ReadingKind>(i));
    EXPECT_EQ(faceNamed(nameOf(static_cast<Face>(i))), static_cast<Face>(i));
  }
  for (int i = 0; i < 8; ++i) {
    const auto kind = static_cast<UnderstandingKind>(i);
    EXPECT_EQ(understandingKindNamed(nameOf(kind)), kind);
  }
}

TEST(Names, AreTheDocuments) {
  EXPECT_EQ(nameOf(FeatureKind::edge), "edge");
  EXPECT_EQ(nameOf(FeatureKind::arc), "arc");
  EXPECT_EQ(nameOf(Make::spotface), "spotface");
  EXPECT_EQ(nameOf(Locate::suit), "suit");
  EXPECT_EQ(nameOf(Sense::clockwise), "clockwise");
  EXPECT_EQ(nameOf(UnderstandingKind::inLine), "in_line");
  EXPECT_EQ(nameOf(UnderstandingKind::square), "square");
  EXPECT_EQ(nameOf(ReadingKind::pcd), "pcd");
  EXPECT_EQ(nameOf(Unit::millimetre), "mm");
  EXPECT_EQ(nameOf(CountsY::towards), "towards");
  EXPECT_FALSE(featureKindNamed("Edge"));
  EXPECT_FALSE(makeNamed(""));
  EXPECT_FALSE(unitNamed("inch"));
  EXPECT_FALSE(countsXNamed("up"));
}

TEST(Lookups, FindByIdOrName) {
  const Part part = samplePart();
  EXPECT_EQ(part.feature("A"), &part.features[4]);
  EXPECT_EQ(part.feature("G1"), nullptr);
  EXPECT_EQ(part.reading("r2"), &part.readings[1]);
  EXPECT_EQ(part.reading(""), nullptr);
  EXPECT_EQ(part.setup("1"), &part.setups[0]);
  EXPECT_EQ(part.setup("2"), nullptr);
  Job job;
  job.parts = {part};
  EXPECT_EQ(job.part("Front plate"), &job.parts[0]);
  EXPECT_EQ(job.part("front plate"), nullptr);
}

TEST(Lookups, OfASetup) {
  const inchwright::Setup setup = samplePart().setups[0];
  ASSERT_NE(setup.zeroAlong(Axis::y), nullptr);
  EXPECT_EQ(setup.zeroAlong(Axis::y)->at, "D1");
  EXPECT_EQ(setup.zeroAlong(Axis::z), nullptr);
  EXPECT_EQ(setup.stockOn(Side::left), Length::ticks(Length::kTicksPerInch / 16));
  EXPECT_EQ(setup.stockOn(Side::right), Length());
}

}  // namespace
}  // namespace inchwright
