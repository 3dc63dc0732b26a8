#include "core/lines/pasted.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

Part named() {
  Part part;
  part.name = "Plate";
  return part;
}

TEST(Pasted, ReadingsMakeTheirPlaces) {
  const auto part = applyLines(named(), "L A 3/8\r\n\n# second row\nA B 1 3/16\nF A 1/2\n", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  ASSERT_EQ(part->readings.size(), 3u);
  const Feature* left = part->feature("L");
  ASSERT_NE(left, nullptr);
  EXPECT_EQ(left->kind(), FeatureKind::edge);
  EXPECT_EQ(sideOf(*left), Side::left);
  ASSERT_NE(part->feature("F"), nullptr);
  EXPECT_EQ(sideOf(*part->feature("F")), Side::front);
  EXPECT_EQ(part->feature("A")->kind(), FeatureKind::point);
  EXPECT_EQ(part->readings[0].axis, Axis::x);
  EXPECT_EQ(part->readings[2].axis, Axis::y);
}

// As a table of readings is exported: with its number, its axis, blanks and returns at the end.
TEST(Pasted, ANumberAndAnAxisMayStandInFront) {
  const auto three = applyLines(named(), "r7 L A 3/8 \t\r\n  r8 y F A 1/2\t\nx A B 1 3/16  ", {});
  ASSERT_TRUE(three.ok()) << three.error().place << ": " << three.error().text;
  ASSERT_EQ(three->readings.size(), 3u);
  EXPECT_EQ(three->readings[0].id, "r7");
  EXPECT_EQ(three->readings[0].figure.text, "3/8");
  EXPECT_EQ(three->readings[1].id, "r8");
  EXPECT_EQ(three->readings[1].axis, Axis::y);
  EXPECT_EQ(three->readings[2].axis, Axis::x);
  EXPECT_EQ(sideOf(*three->feature("F")), Side::front);
  // An axis in third place is no axis.
  const auto third = applyLines(named(), "C D x 3/8", {});
  ASSERT_FALSE(third.ok());
  EXPECT_EQ(third.error().text, "a figure is missing here");
}

// What a reading makes lies on the face that is looked at.
TEST(Pasted, PlacesAreMadeOnTheFaceInSight) {
  LineContext context;
  context.face = Face::front;
  const auto part = applyLines(named(), "x A B 3/8\nz U A 1/2\n", context);
  ASSERT_TRUE(part.ok()) << part.error().text;
  EXPECT_EQ(part->feature("A")->face, Face::front);
  EXPECT_EQ(part->feature("B")->face, Face::front);
  EXPECT_EQ(sideOf(*part->feature("U")), Side::bottom);
}

TEST(Pasted, WordsWorkAsWell) {
  const auto part = applyLines(named(), "hole A 1/4 ream\nL A 3/8\ny F A 1/2", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  EXPECT_EQ(part->feature("A")->kind(), FeatureKind::hole);
  EXPECT_EQ(part->readings[1].axis, Axis::y);
}

TEST(Pasted, FaultNamesItsLineAndChangesNothing) {
  const auto part = applyLines(named(), "L A 3/8\n\nA B 1 3/", {});
  ASSERT_FALSE(part.ok());
  EXPECT_EQ(part.error().place, "line 3");
}

// A part that can't take a place is left as it was: this one has no name.
TEST(Pasted, APlaceThatCannotBeMadeIsTheFaultOfItsLine) {
  const auto part = applyLines(Part{}, "\nL A 3/8\n", {});
  ASSERT_FALSE(part.ok());
  EXPECT_EQ(part.error().place, "line 2");
}

TEST(Pasted, NothingIsNothing) {
  const auto part = applyLines(named(), " \n\n", {});
  ASSERT_TRUE(part.ok());
  EXPECT_EQ(*part, named());
}

TEST(Pasted, ALeadingNameAndAxisAreNoPlaces) {
  const auto part = applyLines(named(), "r7 y W A 3/8\nx A B 1/2\n", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  ASSERT_EQ(part->readings.size(), 2u);
  EXPECT_EQ(part->readings[0].axis, Axis::y);
  EXPECT_EQ(part->readings[0].from, "W");
  EXPECT_EQ(part->readings[1].axis, Axis::x);
  ASSERT_EQ(part->features.size(), 3u);
  EXPECT_EQ(part->features[0].id, "W");
  EXPECT_EQ(part->features[1].id, "A");
  EXPECT_EQ(part->features[2].id, "B");
}

// A heading or a word in capitals is no place that a slip brings into the part.
TEST(Pasted, APlaceHasAtMostThreeLetters) {
  const auto three = applyLines(named(), "ABC D12 3/8", {});
  ASSERT_TRUE(three.ok()) << three.error().text;
  EXPECT_NE(three->feature("ABC"), nullptr);
  for (const char* line : {"DATE A 3/8", "A DATE 3/8", "A a 3/8", "A 1B 3/8", "A B1C 3/8"}) {
    const auto refused = applyLines(named(), line, {});
    ASSERT_FALSE(refused.ok()) << line;
    EXPECT_EQ(refused.error().place, "line 1");
  }
}

TEST(Pasted, EverySidesLetterMakesThatSide) {
  const auto part = applyLines(named(), "x L R 2\ny F K 1 1/2\nz U T 1/4\nA1 A12 3/8\n", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  const auto sideNamed = [&](const char* id) { return sideOf(*part->feature(id)); };
  EXPECT_EQ(sideNamed("L"), Side::left);
  EXPECT_EQ(sideNamed("R"), Side::right);
  EXPECT_EQ(sideNamed("F"), Side::front);
  EXPECT_EQ(sideNamed("K"), Side::back);
  EXPECT_EQ(sideNamed("U"), Side::bottom);
  EXPECT_EQ(sideNamed("T"), Side::top);
  EXPECT_EQ(part->feature("A12")->kind(), FeatureKind::point);
}

TEST(Pasted, ASidesLetterAlongAnotherAxisIsAPointOnly) {
  const auto part = applyLines(named(), "y L A 1\n", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  EXPECT_EQ(part->feature("L")->kind(), FeatureKind::point);
}

TEST(Pasted, AnEndThatIsAPlaneSettlesTheAxisFirstOrSecond) {
  const auto part = applyLines(named(), "A F 1/2\nedge M y\nA M 1/4\nM A 1/8\n", {});
  ASSERT_TRUE(part.ok()) << part.error().text;
  EXPECT_EQ(part->readings[0].axis, Axis::y);
  EXPECT_EQ(part->readings[1].axis, Axis::y);
  EXPECT_EQ(part->readings[2].axis, Axis::y);
}

}  // namespace
}  // namespace inchwright
