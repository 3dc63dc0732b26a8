#include "core/graph/exact_program.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/core/tolerance/random_limits.h"

namespace inchwright {
namespace {

TEST(ExactProgram, FindsACornerByHand) {
  // 2x + y ≤ 7, x + 3y ≤ 11, x ≥ 0, y ≥ 0: x + y is greatest at (2, 3).
  ExactProgram program(2);
  program.addAtMost({{0, 2}, {1, 1}}, 7);
  program.addAtMost({{0, 1}, {1, 3}}, 11);
  program.addAtMost({{0, -1}}, 0);
  program.addAtMost({{1, -1}}, 0);
  const auto best = program.maximise({{0, 1}, {1, 1}});
  ASSERT_TRUE(best.ok());
  EXPECT_TRUE(best->bounded);
  EXPECT_EQ(best->value, Rational(5));
  EXPECT_EQ(best->rows, (std::vector<std::uint32_t>{0, 1}));
  const auto least = program.maximise({{0, -3}, {1, -5}});
  EXPECT_EQ(least->value, Rational(0));
}

TEST(ExactProgram, TellsUnboundedFromImpossible) {
  ExactProgram open(1);
  open.addAtMost({{0, -1}}, -4);
  EXPECT_FALSE(open.maximise({{0, 1}})->bounded);
  EXPECT_EQ(open.maximise({{0, -2}})->value, Rational(-8));
  ExactProgram shut(2);
  shut.addAtMost({{1, 1}}, 100);
  shut.addAtMost({{0, 1}}, 1);
  shut.addAtMost({{0, -1}}, -2);
  EXPECT_EQ(shut.maximise({{0, 1}}).error().code, ErrorCode::unsolvable);
  EXPECT_EQ(shut.contradiction(), (std::vector<std::uint32_t>{1, 2}));
}

TEST(ExactProgram, AgreesWithShortestWaysOnDifferences) {
  std::mt19937_64 random(31);
  for (int round = 0; round < 40; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 31");
    const auto nodes = static_cast<std::uint32_t>(2 + random() % 8);
    const auto edges = test::possibleEdges(random, nodes, nodes, 500);
    const auto most = test::allPairs(nodes, edges);
    ExactProgram program(nodes);
    for (const DifferenceEdge& edge : edges) {
      program.addAtMost({{edge.b, 1}, {edge.a, -1}}, edge.high);
      program.addAtMost({{edge.b, -1}, {edge.a, 1}}, -edge.low);
    }
    for (std::uint32_t node = 1; node < nodes; ++node) {
      const auto best = program.maximise({{node, 1}, {0, -1}});
      ASSERT_TRUE(best.ok());
      ASSERT_EQ(best->value, Rational(most[0][node]));
    }
  }
}

}  // namespace
}  // namespace inchwright
