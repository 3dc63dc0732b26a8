#include "core/chain/network.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

#include "core/say/source_words.h"
#include "tests/support/part_text.h"
#include "tests/support/system_along.h"

namespace inchwright {
namespace {

// One line a link or relation, lengths in sixteenths of an inch.
std::string told(const Part& part, Axis axis) {
  const AxisNetwork network = test::networkAlong(part, axis);
  std::string lines;
  for (const AxisLink& link : network.links) {
    lines += network.places[link.from] + " " + network.places[link.to] + " " +
             std::to_string(link.ticks / (Length::kTicksPerInch / 16)) +
             (link.exact ? "" : " about") + " by " + labelOf(part, link.source) + "\n";
  }
  for (const AxisRelation& relation : network.relations) {
    for (const auto& [node, factor] : relation.terms) {
      lines += std::to_string(factor) + " " + network.places[node] + " ";
    }
    lines += "by " + labelOf(part, relation.source) + "\n";
  }
  return lines;
}

std::string told(const std::string& text, Axis axis) {
  return told(test::partFrom(text), axis);
}

TEST(NetworksOf, PlacesInTheOrderOfTheirIds) {
  const AxisNetwork network = test::networkAlong(
      test::partFrom("hole B 1/4\nedge K y back\nedge L x left\nrow D x 2 1/2\nhole H 1/8 left\n"),
      Axis::x);
  EXPECT_EQ(network.places, (std::vector<Id>{"B", "D", "D1", "D2", "L"}));
}

TEST(NetworksOf, ReadingsAlongTheAxisOnly) {
  const char* text = R"(
edge L x left
edge F y front
hole A 1/4
r1 x L A 3/16
r2 y F A 5/16
r3 centres A A 1
r4 diameter A 1/4
)";
  EXPECT_EQ(told(text, Axis::x), "L A 3 by r1\n");
  EXPECT_EQ(told(text, Axis::y), "F A 5 by r2\n");
  EXPECT_EQ(told(text, Axis::z), "");
}

TEST(NetworksOf, Understandings) {
  const char* text = R"(
edge L x left
edge R x right
hole A 1/4
hole B 1/4
hole C 1/4
in_line y A B C
midway x A L R
symmetric x A B about C
equal x L A B R
concentric A B
tangent A B
)";
  EXPECT_EQ(told(text, Axis::x),
            "A B 0 by A, B concentric\n"
            "-3 A 2 L 1 R by L, A, B, R equally spaced\n"
            "-2 A 1 L 1 R by A midway L–R\n"
            "1 A 1 B -2 C by A, B symmetric about C\n"
            "-3 B 1 L 2 R by L, A, B, R equally spaced\n");
  EXPECT_EQ(told(text, Axis::y),
            "A B 0 by A, B, C in line\nA B 0 by A, B concentric\nA C 0 by A, B, C in line\n");
}

TEST(NetworksOf, SymmetricOnesPairFromTheOutsideIn) {
  const char* text = "edge A x\nedge B x\nedge C x\nedge D x\nedge E x\nedge M x\n";
  EXPECT_EQ(told(std::string(text) + "symmetric x A B C D E about M\n", Axis::x),
            "M C 0 by A, B, C, D, E symmetric about M\n"
            "1 A 1 E -2 M by A, B, C, D, E symmetric about M\n"
            "1 B 1 D -2 M by A, B, C, D, E symmetric about M\n");
}

TEST(NetworksOf, ShapesOfFeatures) {
  EXPECT_EQ(told("row D x 3 1/4\n", Axis::x),
            "D D1 0 by row D\nD1 D2 4 by row D\nD2 D3 4 by row D\n");
  EXPECT_EQ(told("row D x 3 1/4\n", Axis::y),
            "D D1 0 by row D\nD1 D2 0 by row D\nD2 D3 0 by row D\n");
  EXPECT_EQ(told("row D x 3 -\n", Axis::x), "D D1 0 by row D\n1 D1 -2 D2 1 D3 by row D\n");
  EXPECT_EQ(told("slot S z 1/4 1 1/4 @ front\n", Axis::z), "S S1 -8 by slot S\nS S2 8 by slot S\n");
  EXPECT_EQ(told("slot S z 1/4 1 1/4 @ front\n", Axis::x), "S S1 0 by slot S\nS S2 0 by slot S\n");
  EXPECT_EQ(told("ring E 2 2 90 @ back\n", Axis::z), "E E1 16 by ring E\nE E2 -16 by ring E\n");
  EXPECT_EQ(told("ring E 2 2 0 @ back\n", Axis::x), "E E1 -16 by ring E\nE E2 16 by ring E\n");
  EXPECT_EQ(told("ring E 2 2 -\nring G 2 - 0\n", Axis::x), "");
  EXPECT_EQ(told("hole A 1/4\nround Q 3/8 about A left\n", Axis::x),
            "A Q -6 by round Q\nA Q0 0 by round Q\n");
  EXPECT_EQ(told("hole A 1/4\nround Q 3/8 about A left\n", Axis::y),
            "A Q 0 by round Q\nA Q0 0 by round Q\n");
  EXPECT_EQ(told("hole A 1/4\nround Q 3/8 about A\n", Axis::x),
            "A Q 0 by round Q\nA Q0 0 by round Q\n");
  EXPECT_EQ(told("edge R x right\nedge K y back\nround Q 1/8 corner R K\n", Axis::x),
            "Q0 Q 0 by round Q\nR Q -2 by round Q\n");
  EXPECT_EQ(told("edge L x left\nedge K y\nround Q 1/8 corner L K\n", Axis::y),
            "Q0 Q 0 by round Q\n");
}

TEST(NetworksOf, ARingMayTakeItsCircleFromAReading) {
  EXPECT_EQ(told("ring E 2 - 0\nr2 pcd E 1\nr1 pcd E 2\n", Axis::x),
            "E E1 16 by ring E\nE E2 -16 by ring E\n")
      << "of two, the first by id";
  EXPECT_EQ(told("ring E 2 - 0\nring G 2 - 0\nr1 pcd G 1\nr2 diameter E 4\nr3 pcd E 2\n", Axis::x),
            "E E1 16 by ring E\nE E2 -16 by ring E\nG G1 8 by ring G\nG G2 -8 by ring G\n");
}

TEST(NetworksOf, ARoundsRadiusIsAsExactAsItIsRead) {
  // A third of an inch is no whole number of ticks.
  EXPECT_EQ(told("hole A 1/4\nround Q 1/3 about A left\n", Axis::x),
            "A Q -5 about by round Q\nA Q0 0 by round Q\n");
  EXPECT_EQ(told("hole A 1/4\nround Q 1/3 about A left\n", Axis::y),
            "A Q 0 by round Q\nA Q0 0 by round Q\n")
      << "level with its centre, whatever the radius";
  EXPECT_EQ(told("edge R x right\nedge K y back\nround Q 1/3 corner R K\n", Axis::x),
            "Q0 Q 0 by round Q\nR Q -5 about by round Q\n");
}

TEST(NetworksOf, ARoundWithoutARadiusTellsOnlyItsCentre) {
  Part part = test::partFrom("edge R x right\nedge K y back\nround Q 1/8 corner R K\n");
  part.features[2].as<kind::Round>()->radius.reset();
  AxisNetwork network = test::networkAlong(part, Axis::x);
  ASSERT_EQ(network.links.size(), 1u);
  EXPECT_EQ(network.links[0].ticks, 0);
  // Its outermost point lies a radius off its centre, and nothing says how far.
  part = test::partFrom("hole A 1/4\nround Q 1/8 about A left\n");
  part.features[1].as<kind::Round>()->radius.reset();
  network = test::networkAlong(part, Axis::x);
  ASSERT_EQ(network.links.size(), 1u);
  EXPECT_EQ(network.places[network.links[0].to], "Q0");
}

TEST(NetworksOf, ASlotWithoutALengthOrAWidthTellsNothingOfItsEnds) {
  for (const auto member : {&kind::Slot::length, &kind::Slot::width}) {
    Part part = test::partFrom("slot S x 1/4 1\n");
    (part.features[0].as<kind::Slot>()->*member).reset();
    EXPECT_EQ(told(part, Axis::x), "");
    EXPECT_EQ(told(part, Axis::y), "S S1 0 by slot S\nS S2 0 by slot S\n");
  }
}

TEST(NetworksOf, ASlotBetweenTwoPlacesHasItsMiddleMidwayUnlessItIsCurved) {
  Part part = test::partFrom("hole A 1/4\nhole B 1/4\nhole C 1/4\nslot S x 1/4 1\n");
  kind::Slot& slot = *part.features[3].as<kind::Slot>();
  slot.ends = {"A", "B"};
  const std::string ends = "A S1 0 by slot S\nB S2 0 by slot S\n";
  EXPECT_EQ(told(part, Axis::x), ends + "-2 S 1 S1 1 S2 by slot S\n");
  EXPECT_EQ(told(part, Axis::y), ends + "-2 S 1 S1 1 S2 by slot S\n");
  slot.about = "C";
  EXPECT_EQ(told(part, Axis::x), ends);
}

TEST(NetworksOf, HalfATickIsKeptBesideTheWholeOnes) {
  Part part = test::partFrom("slot S x 1/4 1\n");
  kind::Slot& slot = *part.features[0].as<kind::Slot>();
  slot.length->value = Length::ticks(slot.width->value.ticks() + 5);
  const AxisNetwork network = test::networkAlong(part, Axis::x);
  EXPECT_EQ(network.links[0].ticks, -3);
  EXPECT_EQ(network.links[1].ticks, 3);
  EXPECT_EQ(network.links[0].length(), *Rational::of(-5, 2));
  EXPECT_EQ(network.links[1].length(), *Rational::of(5, 2));
  EXPECT_TRUE(network.links[1].exact);
}

TEST(NetworksOf, RefusesTheLowestInteger) {
  Part part = test::partFrom("edge L x left\nedge R x right\nr1 x L R 1\n");
  part.readings[0].figure.value = Length::ticks(std::numeric_limits<std::int64_t>::min());
  const auto networks = networksOf(part);
  ASSERT_FALSE(networks.ok());
  EXPECT_EQ(networks.error().code, ErrorCode::outOfRange);
}

TEST(NetworksOf, TrustsShapeThenWordsThenPlainReadings) {
  const Part part = test::partFrom(R"(
edge R x right
edge L x left
row D x 2 1/2
r1 x L R (2)
r2 x L R 2
r3 x L R 2/3
in_line x L D assumed
in_line x R D2
)");
  const AxisNetwork ordered = test::networkAlong(part, Axis::x);
  EXPECT_EQ(ordered.places, (std::vector<Id>{"D", "D1", "D2", "L", "R"}));
  std::vector<std::string> labels;
  for (const AxisLink& link : ordered.links) labels.push_back(labelOf(part, link.source));
  EXPECT_EQ(labels, (std::vector<std::string>{"row D", "row D", "R, D2 in line", "r2", "r3",
                                              "L, D in line", "r1"}));
}

}  // namespace
}  // namespace inchwright
