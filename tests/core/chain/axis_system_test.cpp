#include "core/chain/axis_system.h"

#include <gtest/gtest.h>

#include <string>

#include "core/chain/axis_solver.h"
#include "tests/core/solution/small_print.h"
#include "tests/support/part_text.h"
#include "tests/support/system_along.h"

namespace inchwright {
namespace {

constexpr std::int64_t kSixteenth = Length::kTicksPerInch / 16;

std::string written(const Rational& value) {
  std::string text = std::to_string(static_cast<long long>(value.numerator()));
  if (!value.isWhole()) text += "/" + std::to_string(static_cast<long long>(value.denominator()));
  return text;
}

// `M: 1/2 v1 + 3` with constants in sixteenths of an inch; every place a line, in order.
std::string told(const AxisSystem& system) {
  std::string lines;
  for (std::uint32_t node = 0; node < system.nodeCount(); ++node) {
    lines += system.network().places[node] + ":";
    for (const auto& [variable, factor] : system.termsOf(node)) {
      lines += " " + written(factor) + " v" + std::to_string(variable);
    }
    lines += " + " + written(system.constantOf(node).over(Rational(kSixteenth)).value()) + "\n";
  }
  return lines;
}

AxisSystem along(const std::string& text) {
  return test::systemAlong(test::partFrom(text), Axis::x);
}

TEST(AxisSystem, ThePartComesFirstAndWhatHangsTogetherIsOneVariable) {
  const AxisSystem system = along(R"(
edge L x left
hole A 1/4
hole B 1/4
hole C 1/4
r1 x L A 3/8
r2 x B C 1
)");
  EXPECT_EQ(told(system), "A: + 6\nB: 1 v1 + 0\nC: 1 v1 + 16\nL: + 0\n");
  EXPECT_EQ(system.variableCount(), 2u);
  EXPECT_EQ(system.groupCount(), 2);
  EXPECT_EQ(system.originOf(0), *system.node("L"));
  EXPECT_EQ(system.originOf(1), *system.node("B"));
  EXPECT_EQ(system.node("D"), std::nullopt);
}

TEST(AxisSystem, HalvesOfATickAreSummedBeforeTheyAreRounded) {
  Part part = test::partFrom(R"(
edge L x left
slot S x 1/4 1
slot T x 1/4 1
hole A 1/4
r1 x L S 2
r2 x S2 A 1/2
r3 x A T1 1/2
)");
  for (Feature& feature : part.features) {
    auto* slot = feature.as<kind::Slot>();
    if (slot) slot->length->value = Length::ticks(slot->width->value.ticks() + 5);
  }
  const AxisSystem system = test::systemAlong(part, Axis::x);
  const auto at = [&](const char* place) { return system.constantOf(*system.node(place)); };
  const Rational inch(Length::kTicksPerInch);
  EXPECT_EQ(at("S1"), inch.plus(inch)->minus(*Rational::of(5, 2)));
  EXPECT_EQ(at("A"), inch.times(*Rational::of(5, 2))->plus(*Rational::of(5, 2)));
  EXPECT_EQ(at("T"), inch.times(3)->plus(5)) << "two halves make a whole one, rounded or not";
  EXPECT_EQ(at("T2"), inch.times(3)->plus(*Rational::of(15, 2)));
}

TEST(AxisSystem, ALoopOverHalvesOfATickCloses) {
  Part part = test::partFrom(R"(
slot S x 1/4 1
slot T x 1/4 1
in_line x S2 T1
r1 x S T 2
)");
  for (Feature& feature : part.features) {
    auto* slot = feature.as<kind::Slot>();
    slot->length->value = Length::ticks(slot->width->value.ticks() + Length::kTicksPerInch * 2 + 1);
  }
  part.readings[0].figure.value = Length::ticks(Length::kTicksPerInch * 2 + 1);
  const auto outcome = solveAxis(part, test::systemAlong(part, Axis::x));
  ASSERT_TRUE(outcome.ok());
  EXPECT_TRUE(outcome->clashes.empty());
  part.readings[0].figure.value = Length::ticks(Length::kTicksPerInch * 2 + 2);
  const auto missed = solveAxis(part, test::systemAlong(part, Axis::x));
  ASSERT_EQ(missed->clashes.size(), 1u) << "nothing here is rounded, so one tick is a miss";
  EXPECT_EQ(missed->clashes[0].missesBy.magnitude(), Rational(1));
}

TEST(AxisSystem, ARelationTiesAPlaceToTwoVariables) {
  const AxisSystem system = along(R"(
edge L x left
hole A 1/4
hole B 1/4
hole M 1/4
hole N 1/4
r1 x L A 3/8
r2 x M N 1/4
midway x M A B
)");
  EXPECT_EQ(told(system), "A: + 6\nB: 1 v1 + 0\nL: + 0\nM: 1/2 v1 + 3\nN: 1/2 v1 + 7\n");
  EXPECT_EQ(system.groupCount(), 3);
  EXPECT_EQ(system.positions()[*system.node("N")].ticks, Rational(4 * kSixteenth))
      << "a loose group counts from its own first place";
}

// Whatever the elimination made free, the part's own place is.
TEST(AxisSystem, ThePartIsNeverExpressedByOthers) {
  const AxisSystem system = along(R"(
edge L x left
edge R x right
hole A 1/4
hole Z 1/4
r1 x L R 1
midway x L A Z
)");
  EXPECT_EQ(system.termsOf(*system.node("L")).size(), 0u);
  EXPECT_EQ(system.termsOf(*system.node("R")).size(), 0u);
  EXPECT_EQ(system.variableCount(), 2u);
  const auto a = system.termsOf(*system.node("A"));
  const auto z = system.termsOf(*system.node("Z"));
  ASSERT_EQ(a.size(), 1u);
  ASSERT_EQ(z.size(), 1u);
  EXPECT_EQ(a[0].factor, z[0].factor.negated());
}

TEST(AxisSystem, PlacingAVariablePlacesWhatHangsOnItAlone) {
  const AxisSystem system = along(R"(
edge L x left
hole A 1/4
hole B 1/4
hole C 1/4
hole M 1/4
hole N 1/4
r1 x B C 1
midway x M L B
midway x N B A
)");
  std::vector<Position> positions = system.positions();
  const std::uint32_t b = *system.node("B");
  ASSERT_EQ(system.termsOf(b).size(), 1u);
  const std::uint32_t variable = system.termsOf(b)[0].variable;
  ASSERT_EQ(system.originOf(variable), b);
  const AxisSystem::Placed placed{variable, Rational(10 * kSixteenth), How::numeric, 0.25, false};
  ASSERT_TRUE(system.place(std::vector{placed}, positions));
  const auto at = [&](const char* place) { return positions[*system.node(place)]; };
  EXPECT_EQ(at("C").ticks, Rational(26 * kSixteenth));
  EXPECT_EQ(at("C").group, 0);
  EXPECT_EQ(at("C").how, How::numeric);
  EXPECT_EQ(at("C").residual, 0.25);
  EXPECT_EQ(at("M").ticks, Rational(5 * kSixteenth));
  EXPECT_EQ(at("L").how, How::exact);
  EXPECT_NE(at("N").group, 0) << "A is still loose";
  EXPECT_NE(at("A").group, 0);
}

TEST(AxisSystem, ASumBeyondTheRangeChangesNothing) {
  const AxisSystem system = along("edge L x left\nhole A 1/4\nhole B 1/4\nr1 x A B 1\n");
  std::vector<Position> positions = system.positions();
  const std::vector<Position> before = positions;
  const AxisSystem::Placed far{1, Rational(std::int64_t{1} << 62)};
  EXPECT_FALSE(system.place(std::vector{far}, positions));
  EXPECT_EQ(positions, before);
}

TEST(AxisSystem, RoundingIsPassedOn) {
  const AxisSystem system = along("edge L x left\nring E 3 2 10\nhole A 1/4\nr1 x E2 A 1\n");
  const auto positions = system.positions();
  EXPECT_EQ(positions[*system.node("E")].how, How::rounded) << "counted from A";
  EXPECT_EQ(positions[*system.node("A")].how, How::exact);
}

// With every variable where it truly is, everything is; and an expression is made of its members.
TEST(AxisSystem, TheTruthFollowsFromTheTrueVariables) {
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE(seed);
    const test::SmallPrint print =
        test::smallPrint(seed, {.edges = 3 + static_cast<int>(seed % 6),
                                .readings = static_cast<int>(seed % 5),
                                .understandings = static_cast<int>(seed % 4)});
    const AxisSystem system = test::systemAlong(print.part, Axis::x);
    const std::int64_t origin = print.truth[system.originOf(0)];
    std::vector<AxisSystem::Placed> placed;
    for (std::uint32_t i = 1; i < system.variableCount(); ++i) {
      placed.push_back({i, Rational(print.truth[system.originOf(i)] - origin)});
    }
    auto positions = system.positions();
    ASSERT_TRUE(system.place(placed, positions));
    for (std::uint32_t node = 0; node < system.nodeCount(); ++node) {
      EXPECT_EQ(positions[node].group, 0);
      EXPECT_EQ(positions[node].ticks, Rational(print.truth[node] - origin));
      const auto members = system.membersOf(node);
      ASSERT_TRUE(members.has_value());
      Rational sum;
      for (const auto& [link, factor] : members->links) {
        sum = *sum.plus(*factor.times(Rational(system.network().links[link].ticks)));
      }
      EXPECT_EQ(sum, system.constantOf(node));
    }
  }
}

}  // namespace
}  // namespace inchwright
