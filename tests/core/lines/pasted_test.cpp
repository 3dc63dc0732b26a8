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

TEST(Pasted, NothingIsNothing) {
  const auto part = applyLines(named(), " \n\n", {});
  ASSERT_TRUE(part.ok());
  EXPECT_EQ(*part, named());
}

}  // namespace
}  // namespace inchwright
