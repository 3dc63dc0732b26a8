// Half a slot and the offset of a ring's hole need not be whole ticks: ranges are rounded outwards
// and budgets inwards, once. What comes out is held against the same part four times as large, in
// which every such offset is a whole number of ticks.

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/tolerance/adjust.h"
#include "core/tolerance/budget.h"
#include "core/tolerance/grouped_network.h"
#include "core/tolerance/ranges.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::partFrom;

Lettered figureOf(std::int64_t ticks, std::int64_t plusMinus) {
  Lettered figure;
  figure.text = "1";
  figure.value = Length::ticks(ticks);
  figure.tolerance = Tolerance::symmetric(Length::ticks(plusMinus));
  return figure;
}

/// Two slots in a row, the halves of both 2.5 ticks.
Part slotsInARow() {
  Part part = partFrom(R"(
    edge L x left
    slot S x 1/4 1
    slot T x 1/4 1
    r1 x L S1 1 ±.001
    r2 x S T1 1 ±.001
  )");
  for (Feature& feature : part.features) {
    auto* slot = feature.as<kind::Slot>();
    if (slot) slot->length->value = Length::ticks(slot->width->value.ticks() + 5);
  }
  part.readings[0].figure = figureOf(100, 10);
  part.readings[1].figure = figureOf(100, 10);
  return part;
}

ToleranceNetwork networkAlong(const Part& part, Axis axis = Axis::x) {
  const auto network = toleranceNetworkOf(part, axis);
  EXPECT_TRUE(network.ok());
  return network ? *network : ToleranceNetwork{};
}

TEST(PartOfATick, IsRoundedToTicksOneWayOrTheOther) {
  struct Case {
    std::int64_t parts, scale, below, above, nearest;
  };
  for (const Case& one : {Case{7, 2, 3, 4, 4},
                          {-7, 2, -4, -3, -4},
                          {8, 2, 4, 4, 4},
                          {-8, 2, -4, -4, -4},
                          {5, 4, 1, 2, 1},
                          {-5, 4, -2, -1, -1},
                          {7, 4, 1, 2, 2},
                          {3, 1, 3, 3, 3},
                          {0, 4, 0, 0, 0}}) {
    SCOPED_TRACE(one.parts);
    EXPECT_EQ(ticksBelow(one.parts, one.scale), one.below);
    EXPECT_EQ(ticksAbove(one.parts, one.scale), one.above);
    EXPECT_EQ(nearestTick(one.parts, one.scale), one.nearest);
  }
}

TEST(PartOfATick, RangesRoundOutwardsOnce) {
  const Part part = slotsInARow();
  const auto ranges = rangesFrom(part, networkAlong(part), "L");
  ASSERT_TRUE(ranges.ok());
  const auto expect = [&](const Id& id, std::int64_t nominal, Span span) {
    const auto found = std::find_if(ranges->places.begin(), ranges->places.end(),
                                    [&](const PlaceRange& one) { return one.id == id; });
    ASSERT_NE(found, ranges->places.end());
    EXPECT_EQ(found->nominal, nominal) << id;
    EXPECT_EQ(found->span, span) << id;
  };
  expect("S1", 100, {90, 110});
  expect("S", 103, {92, 113});  // 102.5 ±10
  expect("S2", 105, {95, 115});
  expect("T1", 203, {182, 223});  // 202.5 ±20
  expect("T", 205, {185, 225});   // whole again, of two halves
  expect("T2", 208, {187, 228});
}

TEST(PartOfATick, BudgetsRoundInwardsOnce) {
  const Part part = slotsInARow();
  const Rational half = *Rational::of(1, 2);
  const auto place = [&](std::int64_t halves) { return *Rational(halves).times(half); };
  const auto budget = budgetOf(part, networkAlong(part),
                               {{{"L", Rational(0), true},
                                 {"S", place(205)},
                                 {"S1", place(200)},
                                 {"S2", place(210)},
                                 {"T", place(410)},
                                 {"T1", place(405)},
                                 {"T2", place(415)}},
                                0,
                                0});
  ASSERT_TRUE(budget.ok());
  EXPECT_TRUE(budget->notGuaranteed.empty());
  const auto expect = [&](const Id& id, std::int64_t target, std::int64_t plusMinus) {
    const auto found = std::find_if(budget->places.begin(), budget->places.end(),
                                    [&](const PlaceBudget& one) { return one.id == id; });
    ASSERT_NE(found, budget->places.end());
    EXPECT_EQ(found->target, target) << id;
    EXPECT_EQ(found->printed, target) << id;
    EXPECT_EQ(found->plusMinus, plusMinus) << id;
  };
  // Half the second reading's ±10 for either slot; of a place between ticks half a tick goes by
  // dialling a whole one.
  expect("S1", 100, 5);
  expect("S", 103, 4);
  expect("S2", 105, 5);
  expect("T1", 203, 4);
  expect("T", 205, 5);
  expect("T2", 208, 4);
}

TEST(PartOfATick, AReadingThatHoldsOnlyBetweenTicksIsNoContradiction) {
  Part part = partFrom(R"(
    slot S x 1/4 1
    slot T x 1/4 1
    in_line x S2 T1
    r1 x S T 2 ±.001
  )");
  for (Feature& feature : part.features) {
    auto* slot = feature.as<kind::Slot>();
    slot->length->value = Length::ticks(slot->width->value.ticks() + 5);
  }
  part.readings[0].figure = figureOf(5, 0);
  EXPECT_TRUE(contradictingReadings(networkAlong(part))->empty());
  part.readings[0].figure = figureOf(6, 0);
  EXPECT_EQ(contradictingReadings(networkAlong(part))->size(), 1u);
}

TEST(PartOfATick, FarAwayRingsAreCountedMoreCoarsely) {
  const char* const ring = R"(
    point C
    point F
    ring E 8 2.5 45
    concentric C E
    r1 x C F 1 ±.001
  )";
  Part part = partFrom(ring);
  const std::int64_t fine = groupRigidly(networkAlong(part)).scale;
  part.readings[0].figure.value = Length::ticks(std::int64_t{1} << 45);
  const std::int64_t coarse = groupRigidly(networkAlong(part)).scale;
  EXPECT_EQ(coarse, std::int64_t{1} << 15);
  EXPECT_LT(coarse, fine);
  part = partFrom("hole A 1/4\nhole B 1/4\nr1 x A B 1\n");
  EXPECT_EQ(groupRigidly(networkAlong(part)).scale, 1);
}

/// Slots, a ring and points, lettered at random about places that could be theirs; all lengths are
/// multiplied by `times`.
Part randomPart(std::uint64_t seed, std::int64_t times) {
  std::mt19937_64 random(seed);
  const auto from = [&](std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(high - low + 1));
  };
  Part part = partFrom("point P\nring E 6 2.5 30\n");
  std::vector<std::pair<Id, std::int64_t>> places{{"P", 0}};  // quarters of a tick
  auto* ring = part.features[1].as<kind::Ring>();
  const std::int64_t diameter = from(1'000, 1'100);
  ring->pitchDiameter->value = Length::ticks(diameter * times);
  const std::int64_t centre = from(-4'000, 4'000);
  places.push_back({"E", centre});
  // Along y the holes of a ring from 30° on stand at a half, the whole and a half of the radius.
  for (const auto& [id, quarters] :
       {std::pair("E1", 1), {"E2", 2}, {"E3", 1}, {"E4", -1}, {"E5", -2}, {"E6", -1}}) {
    places.push_back({id, centre + quarters * diameter});
  }
  const auto slots = from(1, 3);
  for (int i = 0; i < slots; ++i) {
    const Id id = "S" + std::string(1, static_cast<char>('a' + i));
    Part one = partFrom("slot " + id + " y 1/4 1\n");
    auto* slot = one.features[0].as<kind::Slot>();
    const std::int64_t apart = from(3, 99);
    slot->width->value = Length::ticks(1'000 * times);
    slot->length->value = Length::ticks((1'000 + apart) * times);
    part.features.push_back(one.features[0]);
    const std::int64_t middle = from(-4'000, 4'000);
    places.push_back({id, middle});
    places.push_back({id + "1", middle - 2 * apart});
    places.push_back({id + "2", middle + 2 * apart});
  }
  const auto readings = from(3, 9);
  for (int i = 0; i < readings; ++i) {
    const auto& a = places[random() % places.size()];
    const auto& b = places[random() % places.size()];
    if (a.first[0] == b.first[0] && a.first[0] != 'S') continue;
    if (a.first.substr(0, 2) == b.first.substr(0, 2)) continue;
    Reading reading;
    reading.id = "r" + std::to_string(i);
    reading.axis = Axis::y;
    reading.from = a.first;
    reading.to = b.first;
    const std::int64_t quarters = b.second - a.second;
    const std::int64_t nominal = (quarters - (quarters < 0 ? 3 : 0)) / 4;
    reading.figure = figureOf(nominal * times, from(1, 9) * times);
    part.readings.push_back(reading);
  }
  return part;
}

std::int64_t quartersDown(std::int64_t quarters) {
  return (quarters - (quarters < 0 ? 3 : 0)) / 4;
}

TEST(PartOfATick, RangesAreThoseOfAPartFourTimesAsLargeRoundedOutwards) {
  std::size_t fractions = 0;
  for (std::uint64_t seed = 91'100; seed < 91'400; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Part small = randomPart(seed, 1), large = randomPart(seed, 4);
    const auto ranges = rangesFrom(small, networkAlong(small, Axis::y), "E");
    const auto exact = rangesFrom(large, networkAlong(large, Axis::y), "E");
    ASSERT_TRUE(ranges.ok() && exact.ok());
    ASSERT_EQ(ranges->contradiction, exact->contradiction);
    ASSERT_EQ(ranges->places.size(), exact->places.size());
    for (std::size_t i = 0; i < ranges->places.size(); ++i) {
      const PlaceRange& one = ranges->places[i];
      const PlaceRange& other = exact->places[i];
      EXPECT_EQ(one.span.low, quartersDown(other.span.low)) << one.id;
      EXPECT_EQ(one.span.high, -quartersDown(-other.span.high)) << one.id;
      EXPECT_LE(std::abs(4 * one.nominal - other.nominal), 2) << one.id;
      if (other.span.high % 4 != 0) ++fractions;
    }
  }
  EXPECT_GT(fractions, 500u);
}

TEST(PartOfATick, BudgetsAreThoseOfAPartFourTimesAsLargeRoundedInwards) {
  std::size_t fractions = 0;
  for (std::uint64_t seed = 92'100; seed < 92'400; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Part small = randomPart(seed, 1), large = randomPart(seed, 4);
    const auto ranges = rangesFrom(large, networkAlong(large, Axis::y), "E");
    ASSERT_TRUE(ranges.ok());
    BudgetRequest request, wide;
    for (const PlaceRange& one : ranges->places) {
      request.places.push_back({one.id, *Rational::of(one.nominal, 4), one.id == "E"});
      wide.places.push_back({one.id, Rational(one.nominal), one.id == "E"});
    }
    const auto budget = budgetOf(small, networkAlong(small, Axis::y), request);
    const auto exact = budgetOf(large, networkAlong(large, Axis::y), wide);
    ASSERT_TRUE(budget.ok() && exact.ok());
    ASSERT_EQ(budget->notGuaranteed, exact->notGuaranteed);
    ASSERT_EQ(budget->places.size(), exact->places.size());
    for (std::size_t i = 0; i < budget->places.size(); ++i) {
      const PlaceBudget& one = budget->places[i];
      const PlaceBudget& other = exact->places[i];
      ASSERT_EQ(one.plusMinus.has_value(), other.plusMinus.has_value()) << one.id;
      if (!one.plusMinus) continue;
      if (one.isZero) continue;
      // From the target of the larger part, which half a part of a tick may separate.
      const std::int64_t off = std::abs(4 * one.target - other.target);
      EXPECT_LE(4 * *one.plusMinus, std::max<std::int64_t>(0, *other.plusMinus - off) + 2)
          << one.id;
      EXPECT_GE(4 * *one.plusMinus, *other.plusMinus - off - 6) << one.id;
      if (off != 0) ++fractions;
    }
  }
  EXPECT_GT(fractions, 300u);
}

}  // namespace
}  // namespace inchwright
