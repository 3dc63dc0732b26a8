// Stretches of a turned part by hand: tapers from any two of their figures, ends, faults.

#include "core/turned/turned_shape.h"

#include <gtest/gtest.h>

#include "core/part/edit.h"

namespace inchwright {
namespace {

Lettered asLettered(const char* text) {
  return readLength(text).value();
}

Length inchesOf(const char* text) {
  return asLettered(text).value;
}

/// An arbor 3 in long from L to R, with a shoulder S 1 1/2 in from L.
class ThreeInches {
 public:
  ThreeInches() {
    edge("L", Side::left);
    edge("S", std::nullopt);
    edge("R", Side::right);
    reads("L", "S", "1 1/2");
    reads("S", "R", "1 1/2");
  }

  ThreeInches& add(const char* id, Shape shape) {
    Feature feature;
    feature.id = id;
    feature.shape = std::move(shape);
    part.features.push_back(std::move(feature));
    return *this;
  }
  ThreeInches& edge(const char* id, std::optional<Side> side) {
    return add(id, kind::Edge{Axis::x, side});
  }
  ThreeInches& reads(const char* from, const char* to, const char* text) {
    Reading reading;
    reading.id = "r" + std::to_string(part.readings.size() + 1);
    reading.from = from;
    reading.to = to;
    reading.figure = asLettered(text);
    part.readings.push_back(std::move(reading));
    return *this;
  }
  TurnedShape shape() const {
    const auto solution = solve(part);
    EXPECT_TRUE(solution.ok());
    return turnedShape(part, *solution);
  }

  Part part;
};

kind::Taper taper(const char* large, const char* small, const char* perFoot, const char* angle) {
  kind::Taper one{{"L", "R"}, {}, {}, {}, {}, {}};
  if (*large) one.large = asLettered(large);
  if (*small) one.small = asLettered(small);
  if (*perFoot) one.perFoot = asLettered(perFoot);
  if (*angle) one.angle = *readAngle(angle);
  return one;
}

TEST(Taper, FollowsFromAnyTwoOfItsFigures) {
  // 1/2 in per foot over 3 in is 1/8.
  for (const auto& one : {taper("3/4", "5/8", "", ""), taper("3/4", "", "1/2", ""),
                          taper("", "5/8", "1/2", ""), taper("3/4", "5/8", "1/2", "")}) {
    const TurnedShape shape = ThreeInches().add("A", one).shape();
    ASSERT_EQ(shape.stretches.size(), 1u);
    const TurnedStretch& made = shape.stretches[0];
    EXPECT_EQ(made.atLeft, inchesOf("3/4"));
    EXPECT_EQ(made.atRight, inchesOf("5/8"));
    EXPECT_TRUE(made.exact);
    EXPECT_FALSE(made.disputed);
    EXPECT_TRUE(shape.faults.empty());
    // 2 · atan(1/48)
    EXPECT_NEAR(*made.includedDegrees, 2.386979, 1e-6);
  }
}

TEST(Taper, ByItsAngleIsRounded) {
  const TurnedStretch made = ThreeInches().add("A", taper("1", "", "", "6")).shape().stretches[0];
  // 1 − 2 · 3 · tan 3°
  EXPECT_NEAR(made.atRight->toInches(), 0.6855533, 1e-7);
  EXPECT_FALSE(made.exact);
  EXPECT_NEAR(*made.includedDegrees, 6, 1e-12);
}

TEST(Taper, ItsLargeEndIsWhereItIsSaidToBe) {
  auto one = taper("3/4", "5/8", "", "");
  one.largeAt = "R";
  EXPECT_EQ(ThreeInches().add("A", one).shape().stretches[0].atRight, inchesOf("3/4"));
  one.largeAt.clear();
  one.between = {"R", "L"};
  EXPECT_EQ(ThreeInches().add("A", one).shape().stretches[0].atRight, inchesOf("3/4"))
      << "unsaid, at the first of the two";
  one.largeAt = "L";
  EXPECT_EQ(ThreeInches().add("A", one).shape().stretches[0].atLeft, inchesOf("3/4"));
}

TEST(Taper, TooLittleSaidOrTooMuch) {
  const auto faultOf = [](const kind::Taper& one) {
    const TurnedShape shape = ThreeInches().add("A", one).shape();
    return shape.faults.size() == 1 ? std::optional(shape.faults[0]) : std::nullopt;
  };
  for (const auto& one : {taper("3/4", "", "", ""), taper("", "", "1/2", ""),
                          taper("", "", "", "6"), taper("", "", "1/2", "6")}) {
    const auto fault = faultOf(one);
    ASSERT_TRUE(fault.has_value());
    EXPECT_EQ(fault->kind, TurnedFaultKind::taperUnsaid);
  }
  const auto off = faultOf(taper("3/4", "1/2", "1/2", ""));
  ASSERT_TRUE(off.has_value());
  EXPECT_EQ(off->kind, TurnedFaultKind::taperContradicts);
  EXPECT_EQ(off->by, inchesOf("1/8"));
  EXPECT_EQ(faultOf(taper("1/16", "", "1/2", ""))->kind, TurnedFaultKind::taperToNothing);
}

TEST(TurnedShape, EndsCarryTheirDoubtsAndTheirOrder) {
  ThreeInches arbor;
  arbor.add("B", kind::Outside{{"S", "L"}, asLettered("1/2")});
  arbor.add("C", kind::Outside{{"S", "R"}, asLettered("3/8")});
  TurnedShape shape = arbor.shape();
  EXPECT_EQ(*shape.stretch("B")->left, Rational(0));
  EXPECT_EQ(*shape.stretch("B")->right, inchesOf("1 1/2").rational());
  EXPECT_EQ(shape.leftEdge, "L");
  EXPECT_EQ(*shape.rightEnd, inchesOf("3").rational());
  EXPECT_TRUE(shape.faults.empty()) << "side by side is not over one another";
  EXPECT_FALSE(shape.stretch("C")->disputed);
  arbor.reads("L", "R", "3 1/8");
  shape = arbor.shape();
  EXPECT_TRUE(shape.stretch("B")->disputed);
  EXPECT_TRUE(shape.stretch("C")->disputed);
}

TEST(TurnedShape, TwoSurfacesOverOneAnother) {
  ThreeInches arbor;
  arbor.edge("M", std::nullopt).reads("L", "M", "2");
  arbor.add("B", kind::Outside{{"L", "M"}, asLettered("1/2")});
  arbor.add("C", kind::Outside{{"S", "R"}, asLettered("3/8")});
  const TurnedShape shape = arbor.shape();
  ASSERT_EQ(shape.faults.size(), 1u);
  EXPECT_EQ(shape.faults[0].kind, TurnedFaultKind::twoSurfaces);
}

}  // namespace
}  // namespace inchwright
