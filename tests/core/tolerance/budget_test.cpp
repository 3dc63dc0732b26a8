#include "core/tolerance/budget.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "core/graph/filling.h"
#include "tests/core/tolerance/random_limits.h"
#include "tests/support/named.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;
using test::possibleEdges;
using test::readings;

Budget budget(const Part& part, const BudgetRequest& request) {
  const auto network = toleranceNetworkOf(part, Axis::x);
  EXPECT_TRUE(network.ok());
  const auto found = budgetOf(part, *network, request);
  EXPECT_TRUE(found.ok());
  return found ? *found : Budget{};
}

const PlaceBudget& of(const Budget& all, const Id& id) {
  for (const PlaceBudget& one : all.places) {
    if (one.id == id) return one;
  }
  ADD_FAILURE() << "no budget for " << id;
  return all.places.front();
}

const char* const kBudgetPlate = R"(
  edge L x left
  hole A 1/4
  hole B 1/4
  r1 x L A 1 ±.004
  r2 x A B 1 ±.006
)";
const BudgetRequest kFromL{
    {{"L", Rational(0), true}, {"A", Rational(kInch)}, {"B", Rational(2 * kInch)}}};

TEST(Budget, AChainFromZeroIsSharedFairly) {
  const Budget all = budget(partFrom(kBudgetPlate), kFromL);
  // A + B ≤ 6 thou and A ≤ 4: 3 and 3.
  EXPECT_EQ(of(all, "L").plusMinus, 0);
  EXPECT_TRUE(of(all, "L").isZero);
  EXPECT_EQ(of(all, "A").plusMinus, 3 * kThou);
  EXPECT_EQ(of(all, "B").plusMinus, 3 * kThou);
  EXPECT_EQ(of(all, "B").heldBy, readings({2}));
  EXPECT_EQ(of(all, "B").target, 2 * kInch);
  EXPECT_TRUE(all.notGuaranteed.empty());
}

TEST(Budget, TheNextGetsWhatTheTightestLeaves) {
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.001
    r2 x A B 1 ±.006
  )"),
                            kFromL);
  EXPECT_EQ(of(all, "A").plusMinus, kThou);
  EXPECT_EQ(of(all, "B").plusMinus, 5 * kThou);
}

TEST(Budget, UnequalTolerancesMoveTheTarget) {
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    r1 x L A 1 +.004 -.000
  )"),
                            {{{"L", Rational(0), true}, {"A", Rational(kInch)}}});
  EXPECT_EQ(of(all, "A").target, kInch + 2 * kThou);
  EXPECT_EQ(of(all, "A").printed, kInch);
  EXPECT_EQ(of(all, "A").plusMinus, 2 * kThou);
}

TEST(Budget, TheTargetStaysOnThePrintWhereItMay) {
  // A is held by r2 to ±1 thou; r1 alone would have asked for a shift of 2.
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 +.004 -.001
    r2 x A B 1 ±.002
    r3 x L B 2 ±.010
  )"),
                            kFromL);
  EXPECT_EQ(of(all, "A").plusMinus, kThou);
  EXPECT_EQ(of(all, "A").target, kInch);
  EXPECT_EQ(of(all, "B").target, 2 * kInch);
}

TEST(Budget, WhatNoReadingLimitsHasNone) {
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.004
    r2 x A B (1)
  )"),
                            kFromL);
  EXPECT_EQ(of(all, "B").plusMinus, std::nullopt);
  EXPECT_EQ(of(all, "A").plusMinus, 4 * kThou);
}

TEST(Budget, PlacesInLineShareOneAndZeroStandsByItself) {
  const Part part = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.004
    in_line x A B
  )");
  const Budget fromL =
      budget(part, {{{"L", Rational(0), true}, {"A", Rational(kInch)}, {"B", Rational(kInch)}}});
  EXPECT_EQ(of(fromL, "A").plusMinus, 4 * kThou);
  EXPECT_EQ(of(fromL, "B").plusMinus, 4 * kThou);
  const Budget fromA =
      budget(part, {{{"L", Rational(-kInch)}, {"A", Rational(0), true}, {"B", Rational(0)}}});
  EXPECT_EQ(of(fromA, "A").plusMinus, 0);
  EXPECT_EQ(of(fromA, "B").plusMinus, 2 * kThou);
  EXPECT_EQ(of(fromA, "L").plusMinus, 2 * kThou);
}

TEST(Budget, ABasicDistanceTakesNoneOfTheRoom) {
  // A is at a basic distance from zero: what r2 asks of B is nothing that A could spoil.
  const Part part = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 BSC
    r2 x L B 2 ±.004
  )");
  const Budget all = budget(part, kFromL);
  EXPECT_EQ(of(all, "B").plusMinus, 4 * kThou);
  EXPECT_EQ(of(all, "B").heldBy, readings({2}));
  EXPECT_EQ(of(all, "A").plusMinus, std::nullopt);
  EXPECT_EQ(of(all, "A").target, kInch);
}

TEST(Budget, APlaceAtABasicDistanceIsHeldByItsOwnReadingsOnly) {
  // From zero at L: A shares ±6 thou with B, and neither has to do with r1.
  Part part = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 BSC
    r2 x A B 1 ±.006
  )");
  const Budget all = budget(part, kFromL);
  EXPECT_EQ(of(all, "A").plusMinus, 3 * kThou);
  EXPECT_EQ(of(all, "B").plusMinus, 3 * kThou);
  // A tolerance without any room is asked for all the same: it leaves A nothing, and B the rest.
  part.readings[0] = partFrom("edge L x left\nhole A 1/4\nr1 x L A 1 ±.001").readings[0];
  part.readings[0].figure.tolerance = Tolerance{};
  const Budget exact = budget(part, kFromL);
  EXPECT_EQ(of(exact, "A").plusMinus, 0);
  EXPECT_EQ(of(exact, "B").plusMinus, 6 * kThou);
  BudgetRequest request = kFromL;
  request.accuracy = kThou;
  const Budget made = budget(part, request);
  EXPECT_EQ(made.notGuaranteed, readings({1}));
  EXPECT_EQ(of(made, "A").plusMinus, 3 * kThou);
}

TEST(Budget, TheMiddleOfTwoSidesLeavesBothOrdinary) {
  const Budget all = budget(partFrom("edge L x left\nedge R x right\nr1 x L R 2 ±.004"),
                            {{{"L", Rational(-kInch)}, {"R", Rational(kInch)}}});
  EXPECT_EQ(of(all, "L").plusMinus, 2 * kThou);
  EXPECT_EQ(of(all, "R").plusMinus, 2 * kThou);
  EXPECT_EQ(of(all, "L").target, -kInch);
}

TEST(Budget, AReadingWithinASharedPlaceCapsIt) {
  const Budget all = budget(
      partFrom(R"(
    edge L x left
    row D x 2 1/2
    r1 x L D1 1 ±.009
    r2 x D1 D2 1/2 ±.003
  )"),
      {{{"L", Rational(0), true}, {"D1", Rational(kInch)}, {"D2", Rational(kInch * 3 / 2)}}});
  EXPECT_EQ(of(all, "D2").plusMinus, 3 * kThou / 2);
  EXPECT_EQ(of(all, "D2").heldBy, readings({2}));
}

// Neither the row itself nor its first hole is wanted.
TEST(Budget, HolesFurtherAlongARowLieAPitchApart) {
  const Budget all = budget(
      partFrom(R"(
    edge L x left
    row D x 3 1/2
    r1 x L D2 1 ±.004
    r2 x L D3 1 1/2 ±.004
  )"),
      {{{"L", Rational(0), true}, {"D2", Rational(kInch)}, {"D3", Rational(kInch * 3 / 2)}}});
  for (const auto& [hole, target] : {std::pair("D2", kInch), std::pair("D3", kInch * 3 / 2)}) {
    EXPECT_EQ(of(all, hole).plusMinus, 4 * kThou);
    EXPECT_EQ(of(all, hole).target, target);
  }
}

TEST(Budget, WhatTheMachineCantKeepIsNamedAndLeftOut) {
  BudgetRequest request = kFromL;
  request.accuracy = kThou;
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.004
    r2 x A B 1 ±.0015
    r3 x L B 2 ±.004
  )"),
                            request);
  EXPECT_EQ(all.notGuaranteed, readings({2}));
  EXPECT_EQ(of(all, "A").plusMinus, 4 * kThou);
  EXPECT_EQ(of(all, "B").plusMinus, 4 * kThou);
}

TEST(Budget, TheFindersErrorIsTakenOffWhereZeroCounts) {
  BudgetRequest request = kFromL;
  request.finderError = kThou;
  const Budget all = budget(partFrom(kBudgetPlate), request);
  EXPECT_EQ(of(all, "A").plusMinus, 3 * kThou);
  EXPECT_EQ(of(all, "B").plusMinus, 3 * kThou);
}

TEST(Budget, ContradictingReadingsAreTheSmallestSetAndTheTightest) {
  const Budget all = budget(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.001
    r2 x A B 1 ±.0005
    r3 x L B 2.010 ±.001
  )"),
                            kFromL);
  EXPECT_EQ(all.notGuaranteed, readings({2}));
}

// Of five thousand places in a row, each dimensioned from the one before and every tenth from the
// first as well, five hundred overall figures a sixteenth too long and held closer: each is named,
// and nothing else. Looking for a smallest contradiction each time took minutes.
TEST(Budget, HundredsOfContradictionsAreNamedAtOnce) {
  constexpr int kPlaces = 5'000;
  Part part = partFrom("edge L x left\n");
  BudgetRequest request{{{"L", Rational(0), true}}};
  std::vector<Id> wrong;
  const auto name = [](int i) { return i == 0 ? Id("L") : "H" + std::to_string(i); };
  const auto read = [&](int from, int to, std::int64_t more, std::int64_t thous) {
    Reading reading;
    reading.id = "r" + std::to_string(part.readings.size());
    reading.from = name(from);
    reading.to = name(to);
    reading.figure.value = Length::ticks((to - from) * kInch / 8 + more);
    reading.figure.tolerance = Tolerance::symmetric(Length::ticks(thous * kThou));
    part.readings.push_back(reading);
  };
  for (int i = 1; i <= kPlaces; ++i) {
    Feature hole;
    hole.id = name(i);
    hole.shape = kind::Hole{};
    part.features.push_back(hole);
    request.places.push_back({hole.id, Rational(i * kInch / 8)});
    read(i - 1, i, 0, 2);
    if (i % 10 != 0) continue;
    read(i - 10, i, kInch / 16, 1);
    wrong.push_back(part.readings.back().id);
  }
  std::sort(wrong.begin(), wrong.end());
  EXPECT_EQ(test::idsOf(part, budget(part, request).notGuaranteed), wrong);
}

TEST(Budget, RoundingTheTargetIsCountedIn) {
  EXPECT_EQ(leftAfterRounding(10, 100, 97), 7);
  EXPECT_EQ(leftAfterRounding(10, 100, 103), 7);
  EXPECT_EQ(leftAfterRounding(2, 100, 103), 0);
}

/// Every simple circle of arcs: its slack and how often each node's room counts on it.
struct Circle {
  std::int64_t slack = 0;
  std::vector<int> ends;
};

std::vector<Circle> allCircles(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges) {
  std::vector<Circle> circles;
  std::vector<bool> used(nodes, false);
  Circle now{0, std::vector<int>(nodes, 0)};
  const std::function<void(std::uint32_t, std::uint32_t, std::size_t)> walk =
      [&](std::uint32_t start, std::uint32_t node, std::size_t length) {
        for (const DifferenceEdge& edge : edges) {
          for (const bool forward : {true, false}) {
            if ((forward ? edge.a : edge.b) != node) continue;
            const std::uint32_t to = forward ? edge.b : edge.a;
            if (to < start || (to != start && used[to])) continue;
            const std::int64_t slack = forward ? edge.high : -edge.low;
            now.slack += slack;
            ++now.ends[node];
            ++now.ends[to];
            if (to == start && length > 0) circles.push_back(now);
            if (to != start) {
              used[to] = true;
              walk(start, to, length + 1);
              used[to] = false;
            }
            now.slack -= slack;
            --now.ends[node];
            --now.ends[to];
          }
        }
      };
  for (std::uint32_t start = 0; start < nodes; ++start) {
    used[start] = true;
    walk(start, start, 0);
    used[start] = false;
  }
  return circles;
}

// Max–min fair by its definition, over all circles.
std::vector<std::optional<Rational>> fairByBruteForce(const std::vector<Circle>& circles,
                                                      std::vector<std::optional<Rational>> room) {
  for (;;) {
    std::optional<Rational> least;
    std::vector<std::pair<Rational, const Circle*>> levels;
    for (const Circle& circle : circles) {
      Rational slack = circle.slack;
      int growing = 0;
      for (std::size_t i = 0; i < room.size(); ++i) {
        if (!room[i]) growing += circle.ends[i];
        if (room[i]) slack = *slack.minus(*room[i]->times(Rational(circle.ends[i])));
      }
      if (growing == 0) continue;
      levels.push_back({*slack.over(Rational(growing)), &circle});
      if (!least || levels.back().first < *least) least = levels.back().first;
    }
    if (!least) return room;
    for (const auto& [level, circle] : levels) {
      if (level != *least) continue;
      for (std::size_t i = 0; i < room.size(); ++i) {
        if (circle->ends[i] > 0 && !room[i]) room[i] = least;
      }
    }
  }
}

TEST(Filling, AgreesWithTheDefinitionOverAllCircles) {
  std::mt19937_64 random(4'004);
  for (int round = 0; round < 300; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 4004");
    const auto nodes = static_cast<std::uint32_t>(2 + random() % 5);
    const auto edges = possibleEdges(random, nodes, static_cast<std::uint32_t>(random() % 6), 999);
    std::vector<std::optional<Rational>> given(nodes);
    if (round % 2 == 0) given[0] = Rational(0);
    const auto filling =
        fillEvenly(nodes, edges, given, std::vector<std::optional<Rational>>(nodes));
    ASSERT_TRUE(filling.ok());
    const auto expected = fairByBruteForce(allCircles(nodes, edges), given);
    ASSERT_EQ(filling->room, expected);
  }
}

// A part of holes along X with the limits of the edges, in ticks as millimetres.
struct RandomPrint {
  Part part;
  std::vector<DifferenceEdge> edges;
  BudgetRequest request;
};

RandomPrint randomPrint(std::mt19937_64& random, std::uint32_t holes) {
  RandomPrint print;
  print.edges = possibleEdges(random, holes, holes / 2, 5'000);
  for (std::uint32_t i = 0; i < holes; ++i) {
    Feature hole;
    hole.id = "H" + std::to_string(100 + i);
    print.part.features.push_back(hole);
  }
  std::uint32_t number = 0;
  for (const DifferenceEdge& edge : print.edges) {
    Reading reading;
    reading.id = "r" + std::to_string(++number);
    reading.from = print.part.features[edge.a].id;
    reading.to = print.part.features[edge.b].id;
    const std::int64_t middle = edge.low + (edge.high - edge.low) / 3;
    reading.figure.value = Length::ticks(middle);
    reading.figure.tolerance =
        Tolerance{Length::ticks(edge.high - middle), Length::ticks(edge.low - middle)};
    print.part.readings.push_back(reading);
  }
  for (std::uint32_t i = 0; i < holes; ++i) {
    // Roughly where the print has it; budgets must hold whatever this is.
    print.request.places.push_back({print.part.features[i].id,
                                    Rational(static_cast<std::int64_t>(random() % 1'000'000)),
                                    i == 0});
  }
  return print;
}

TEST(Budget, AnyPartWithinItHoldsEveryReading) {
  std::mt19937_64 random(1'912);
  std::uint64_t parts = 0;
  for (int round = 0; round < 60; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1912");
    const auto holes = static_cast<std::uint32_t>(2 + random() % 30);
    const RandomPrint print = randomPrint(random, holes);
    const Budget all = budget(print.part, print.request);
    ASSERT_TRUE(all.notGuaranteed.empty());
    for (int trial = 0; trial < 200; ++trial) {
      std::vector<std::int64_t> made;
      for (const PlaceBudget& one : all.places) {
        const std::int64_t room = one.plusMinus.value_or(0);
        const auto width = static_cast<std::uint64_t>(2 * room + 1);
        const std::int64_t stray = trial % 2 == 0
                                       ? (random() % 2 == 0 ? room : -room)
                                       : static_cast<std::int64_t>(random() % width) - room;
        made.push_back(one.target + stray);
      }
      ++parts;
      for (const DifferenceEdge& edge : print.edges) {
        const std::int64_t length = made[edge.b] - made[edge.a];
        ASSERT_TRUE(edge.low <= length && length <= edge.high);
      }
    }
  }
  EXPECT_EQ(parts, 12'000u);
}

}  // namespace
}  // namespace inchwright
