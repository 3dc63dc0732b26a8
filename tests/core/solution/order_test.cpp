// The order in which a part lists things never changes what follows from it.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "core/solution/solution.h"
#include "tests/core/solution/small_print.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

Part shuffled(Part part, std::mt19937_64& random) {
  std::shuffle(part.features.begin(), part.features.end(), random);
  std::shuffle(part.readings.begin(), part.readings.end(), random);
  std::shuffle(part.understood.begin(), part.understood.end(), random);
  return part;
}

// All but the indices into the part's lists, which follow those lists.
Solution withoutIndices(Solution solution) {
  for (Clash& clash : solution.clashes) {
    for (LoopMember& member : clash.loop) member.source.index = 0;
  }
  for (Rounding& one : solution.roundings) {
    for (LoopMember& member : one.loop.loop) member.source.index = 0;
  }
  for (Doubt& doubt : solution.doubts) {
    if (doubt.source) doubt.source->index = 0;
  }
  std::sort(solution.placed.begin(), solution.placed.end());
  return solution;
}

std::map<Id, ReadingStatus> statusById(const Part& part, const Solution& solution) {
  std::map<Id, ReadingStatus> all;
  for (std::size_t i = 0; i < part.readings.size(); ++i) {
    all.emplace(part.readings[i].id, solution.status.at(i));
  }
  return all;
}

void expectSame(const Part& part, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  const auto first = solve(part);
  ASSERT_TRUE(first.ok());
  const Solution one = withoutIndices(*first);
  for (int i = 0; i < 3; ++i) {
    const Part turned = shuffled(part, random);
    const auto again = solve(turned);
    ASSERT_TRUE(again.ok());
    const Solution other = withoutIndices(*again);
    for (const Axis axis : kAxes) {
      EXPECT_EQ(one.positions.along(axis).places, other.positions.along(axis).places);
      EXPECT_EQ(one.positions.along(axis).positions, other.positions.along(axis).positions);
    }
    EXPECT_EQ(one.suspects, other.suspects);
    EXPECT_EQ(one.roundings, other.roundings);
    EXPECT_EQ(one.placed, other.placed);
    EXPECT_EQ(one.loose, other.loose);
    EXPECT_EQ(one.clashes, other.clashes);
    EXPECT_EQ(statusById(part, one), statusById(turned, other));
    EXPECT_TRUE(one.doubts == other.doubts);
  }
}

TEST(Order, SmallPrintsWithClashes) {
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE(seed);
    const test::SmallPrint print =
        test::smallPrint(seed, {.edges = 3 + static_cast<int>(seed % 8),
                                .readings = static_cast<int>(seed % 16),
                                .understandings = static_cast<int>(seed % 4),
                                .misread = static_cast<int>(seed % 3)});
    expectSame(print.part, seed);
    if (testing::Test::HasFailure()) return;
  }
}

TEST(Order, AllKindsOfFeatures) {
  expectSame(test::partFrom(R"(
edge L x left
edge R x right
edge F y front
edge K y back
hole A 1/4
hole B 3/16
slot S x 1/4 1 1/2
row D x 4 -
ring E 6 1 1/2 30
round Q 3/8 about A right
round P 1/8 corner R F
line M
r1 x L A 3/8
r2 x A B 1 3/16
r3 x B R 7/16
r4 x L R (2 1/16)
r5 y F K 1 1/2
r6 centres A S 5/8
r7 x D1 D4 1
r8 x D2 D3 3/8
r9 x L D1 1/8
again r1 5/8
midway y A F K
in_line y A B D E assumed
symmetric y A S about E
concentric E B assumed
)"),
             1);
}

TEST(Order, ZeroMovedAndMovedBackIsWhereItWas) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    const test::SmallPrint print =
        test::smallPrint(seed, {.edges = 7, .readings = 9, .understandings = 2, .misread = 1});
    const auto solution = solve(print.part);
    ASSERT_TRUE(solution.ok());
    for (const Feature& a : print.part.features) {
      for (const Feature& b : print.part.features) {
        const auto there = solution->between(a.id, b.id, Axis::x);
        const auto back = solution->between(b.id, a.id, Axis::x);
        ASSERT_EQ(there.has_value(), back.has_value());
        if (!there) continue;
        EXPECT_EQ(there->negated(), *back);
        for (const Feature& c : print.part.features) {
          const auto on = solution->between(b.id, c.id, Axis::x);
          if (!on) continue;
          EXPECT_EQ(there->plus(*on), solution->between(a.id, c.id, Axis::x));
        }
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
