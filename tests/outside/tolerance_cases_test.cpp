#include <gtest/gtest.h>

#include "core/graph/difference_graph.h"
#include "core/plan/gap.h"
#include "core/solution/solution.h"
#include "core/tolerance/ranges.h"
#include "core/tolerance/stack.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

using test::partFrom;

constexpr std::int64_t kMillimetre = Length::kTicksPerMillimetre;

// DOE-HDBK-1016/2-93, Engineering Symbology, Prints, and Drawings, Fig. 8: the steps can add to
// 3 3/10 where the overall allows 3 1/10, so the drawing is not correct, though its figures close.
TEST(ToleranceCases, ADrawingThatCantBeRight) {
  const Part part = partFrom(R"(
    edge L x left
    edge A x
    edge B x
    edge R x right
    r1 x L A 1 +.1 -0
    r2 x A B 1 +.1 -0
    r3 x B R 1 +.1 -0
    r4 x L R 3 +.1 -0
  )");
  EXPECT_TRUE(solve(part)->clashes.empty());
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  EXPECT_TRUE(rangesFrom(part, *network, "L")->contradiction.empty());
  const auto found = unassuredReadings(part, *network);
  ASSERT_EQ(found->found.size(), 1u);
  EXPECT_EQ(found->found[0].reading, "r4");
  EXPECT_EQ(found->found[0].others.high, Length::kTicksPerInch * 33 / 10);
  EXPECT_EQ(found->found[0].allowed.high, Length::kTicksPerInch * 31 / 10);
  const auto faults = toleranceFaults(part, {});
  ASSERT_EQ(faults->size(), 1u);
  EXPECT_EQ((*faults)[0].unassured, found->found[0]);
}

// Université de Liège, graphical communication, exam January 2012–13, question 1: edges placed
// ±0.05 mm from one origin leave ±0.1 to the length between two, so that a chain dimension of ±0.05
// can't be held; placed within ±0.025 they hold it.
TEST(ToleranceCases, AChainAgainstADatum) {
  const auto placedWithin = [](const std::string& within) {
    return partFrom(
        "edge O x left\nedge A x\nedge B x\n"
        "r1 x O A 20 mm ±" +
        within + " mm\nr2 x O B 35 mm ±" + within + " mm\n");
  };
  const auto between = [](const Part& part) -> std::optional<Span> {
    const auto ranges = rangesFrom(part, *toleranceNetworkOf(part, Axis::x), "A");
    for (const PlaceRange& one : ranges->places) {
      if (one.id == "B") return one.span;
    }
    return std::nullopt;
  };
  EXPECT_EQ(between(placedWithin("0.05")), (Span{149 * kMillimetre / 10, 151 * kMillimetre / 10}));
  // Halved, they leave just what a chain dimension of 15 ±0.05 asks for.
  EXPECT_EQ(between(placedWithin("0.025")),
            (Span{1495 * kMillimetre / 100, 1505 * kMillimetre / 100}));
}

// Teaching unit "Tolerance stack-up L2 PAI-150": gap 0.200, worst case ±0.35, RSS ±0.182483; asked
// for is 0.10 to 0.50, which neither keeps to.
TEST(ToleranceCases, ThreeBlocksInAPocket) {
  const Part part = partFrom(R"(
    edge P x left
    edge A x
    edge B x
    edge C x
    edge Q x right
    r1 x P A 6.000 mm ±0.10 mm
    r2 x A B 9.000 mm ±0.12 mm
    r3 x B C 5.000 mm ±0.08 mm
    r4 x P Q 20.200 mm ±0.05 mm
  )");
  const auto network = toleranceNetworkOf(part, Axis::x);
  const auto members = chainBetween(part, *network, "C", "Q");
  ASSERT_TRUE(members.ok());
  const auto stack = stackOf(*members);
  EXPECT_EQ(stack->nominal, Rational(kMillimetre / 5));
  EXPECT_EQ(stack->worst, (Span{-15 * kMillimetre / 100, 55 * kMillimetre / 100}));
  EXPECT_NEAR(static_cast<double>(stack->rss.high - kMillimetre / 5) / kMillimetre, 0.182483, 5e-7);

  Job job;
  job.parts = {part};
  job.parts[0].name = "Pocket";
  Gap gap;
  gap.name = "gap";
  gap.least = *readLength("0.10 mm");
  gap.greatest = *readLength("0.50 mm");
  GapMember member;
  member.part = "Pocket";
  member.axis = Axis::x;
  member.from = "C";
  member.to = "Q";
  gap.members = {member};
  const auto asked = gapStack(job, gap);
  ASSERT_TRUE(asked.ok()) << asked.error().text;
  EXPECT_EQ(asked->stack.worst, stack->worst);
  EXPECT_FALSE(asked->keeps(asked->stack.worst));
  EXPECT_FALSE(asked->keeps(asked->stack.rss));
  // By 0.25 below and 0.05 above.
  gap.least = *readLength("-0.15 mm");
  gap.greatest = *readLength("0.55 mm");
  EXPECT_TRUE(gapStack(job, gap)->keeps(asked->stack.worst));
}

// Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, §24.4: x(a) − x(b) ≤ most.
struct Most {
  std::uint32_t a, b;
  std::int64_t most;
};
constexpr std::int64_t kAnything = 1'000'000;

std::vector<DifferenceEdge> edgesOf(const std::vector<Most>& all) {
  std::vector<DifferenceEdge> edges;
  for (const Most& one : all) edges.push_back({one.b, one.a, -kAnything, one.most});
  return edges;
}

TEST(ToleranceCases, DifferenceConstraintsOfTheTextbook) {
  const auto edges = edgesOf(
      {{1, 2, 0}, {1, 5, -1}, {2, 5, 1}, {3, 1, 5}, {4, 1, 4}, {4, 3, -1}, {5, 3, -3}, {5, 4, -3}});
  const auto positions = DifferenceGraph(6, edges).feasible(std::vector<std::int64_t>(6, 0));
  ASSERT_TRUE(positions.has_value());
  EXPECT_EQ(*positions, (std::vector<std::int64_t>{0, -5, -3, 0, -1, -4}));
}

TEST(ToleranceCases, DifferenceConstraintsWithoutASolution) {
  const auto edges = edgesOf({{1, 2, 4},
                              {1, 5, 5},
                              {2, 4, -6},
                              {3, 2, 1},
                              {4, 1, 3},
                              {4, 3, 5},
                              {4, 5, 10},
                              {5, 3, -4},
                              {5, 4, -8}});
  const auto circle = DifferenceGraph(6, edges).contradiction();
  ASSERT_FALSE(circle.empty());
  std::int64_t weight = 0;
  for (const std::uint32_t edge : circle) weight += edges[edge].high;
  EXPECT_EQ(weight, -1);
}

}  // namespace
}  // namespace inchwright
