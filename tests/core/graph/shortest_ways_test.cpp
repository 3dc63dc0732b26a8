#include "core/graph/shortest_ways.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "core/graph/difference_graph.h"
#include "core/graph/ways_to.h"
#include "tests/core/tolerance/random_limits.h"

namespace inchwright {
namespace {

using Edges = std::vector<DifferenceEdge>;

Reach searched(std::uint32_t nodes, const Edges& edges, std::uint32_t source,
               const std::vector<std::int64_t>& positions) {
  return DifferenceGraph(nodes, edges).from(source, positions);
}

// The ways have to lead back to the source, each edge on from the one before.
void expectWaysLeadHome(const Reach& reach, const Edges& edges, std::uint32_t source) {
  WaysTo toLow(reach, edges, false), toHigh(reach, edges, true);
  for (std::uint32_t node = 0; node < reach.size(); ++node) {
    if (!reach[node].reached()) continue;
    for (const bool high : {false, true}) {
      const auto& way = high ? toHigh(node) : toLow(node);
      std::uint32_t at = source;
      std::int64_t sum = 0;
      for (const std::uint32_t number : way) {
        const DifferenceEdge& edge = edges[number];
        ASSERT_TRUE(edge.a == at || edge.b == at);
        const bool forward = edge.a == at;
        if (forward) sum += high ? edge.high : edge.low;
        if (!forward) sum -= high ? edge.low : edge.high;
        at = forward ? edge.b : edge.a;
      }
      ASSERT_EQ(at, node);
      ASSERT_EQ(sum, high ? reach[node].high : reach[node].low);
    }
  }
}

// A hub with a spoke to each node of a ring.
TEST(ShortestWays, AWheelOfManySpokes) {
  std::mt19937_64 random(300);
  constexpr std::uint32_t kNodes = 241;
  Edges edges;
  for (std::uint32_t i = 1; i < kNodes; ++i) {
    edges.push_back({0, i, -static_cast<std::int64_t>(random() % 900),
                     static_cast<std::int64_t>(random() % 900)});
    edges.push_back({i, i + 1 == kNodes ? 1 : i + 1, -static_cast<std::int64_t>(random() % 40),
                     static_cast<std::int64_t>(random() % 40)});
  }
  const std::vector<std::int64_t> none(kNodes, 0);
  const auto most = test::allPairs(kNodes, edges);
  for (const std::uint32_t source : {0u, 1u, 100u, 240u}) {
    const Reach reach = searched(kNodes, edges, source, none);
    for (std::uint32_t node = 0; node < kNodes; ++node) {
      ASSERT_EQ(reach[node].high, most[source][node]);
      ASSERT_EQ(reach[node].low, -most[node][source]);
    }
    expectWaysLeadHome(reach, edges, source);
  }
}

// Rings that hang on a node, on each other and on a tree, and one that stands alone.
TEST(ShortestWays, RingsWhereverTheyHang) {
  const Edges edges{{0, 1, 0, 4},  {1, 2, 1, 2},  {2, 0, -5, -1}, {0, 3, 2, 3},  {3, 4, 0, 1},
                    {4, 3, -1, 1}, {3, 5, 0, 9},  {5, 6, 0, 2},   {6, 7, 0, 2},  {7, 5, -3, 0},
                    {7, 8, 1, 1},  {9, 10, 0, 1}, {10, 11, 0, 1}, {11, 9, -2, 0}};
  const auto positions = DifferenceGraph(12, edges).feasible(std::vector<std::int64_t>(12, 0));
  ASSERT_TRUE(positions.has_value());
  const auto most = test::allPairs(12, edges);
  for (std::uint32_t source = 0; source < 12; ++source) {
    const Reach reach = searched(12, edges, source, *positions);
    for (std::uint32_t node = 0; node < 12; ++node) {
      ASSERT_EQ(reach[node].reached(), most[source][node] != test::kFar);
      if (!reach[node].reached()) continue;
      ASSERT_EQ(reach[node].high, most[source][node]) << source << ' ' << node;
      ASSERT_EQ(reach[node].low, -most[node][source]) << source << ' ' << node;
    }
    expectWaysLeadHome(reach, edges, source);
  }
}

// Where everything is exact every way round is as long, and ties must not lead round in circles.
TEST(ShortestWays, ExactEdgesTieEverywhere) {
  std::mt19937_64 random(55);
  for (int round = 0; round < 200; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 55");
    const auto nodes = static_cast<std::uint32_t>(2 + random() % 30);
    const auto edges =
        test::possibleEdges(random, nodes, static_cast<std::uint32_t>(random() % 30), 0);
    const auto positions = DifferenceGraph(nodes, edges).feasible({});
    ASSERT_TRUE(positions.has_value());
    const auto source = static_cast<std::uint32_t>(random() % nodes);
    const Reach reach = searched(nodes, edges, source, *positions);
    for (std::uint32_t node = 0; node < nodes; ++node) {
      ASSERT_EQ(reach[node].high, (*positions)[node] - (*positions)[source]);
      ASSERT_EQ(reach[node].low, reach[node].high);
    }
    expectWaysLeadHome(reach, edges, source);
  }
}

// One run of a hundred thousand, closed to a ring: no depth of calls, and both ways round count.
TEST(ShortestWays, AVeryLongRun) {
  constexpr std::uint32_t kNodes = 100'000;
  Edges edges;
  for (std::uint32_t i = 0; i + 1 < kNodes; ++i) edges.push_back({i, i + 1, -1, 1});
  edges.push_back({kNodes - 1, 0, -10, 10});
  const Reach reach = searched(kNodes, edges, 0, std::vector<std::int64_t>(kNodes, 0));
  for (std::uint32_t node = 0; node < kNodes; ++node) {
    const std::int64_t expected = std::min<std::int64_t>(node, 10 + kNodes - 1 - node);
    ASSERT_EQ(reach[node].high, expected);
    ASSERT_EQ(reach[node].low, -expected);
  }
}

TEST(ShortestWays, ASinglePlace) {
  const Reach reach = searched(1, {}, 0, {0});
  ASSERT_EQ(reach.size(), 1u);
  EXPECT_EQ(reach[0].high, 0);
  EXPECT_EQ(reach[0].low, 0);
  const Edges none;
  EXPECT_TRUE(WaysTo(reach, none, true)(0).empty());
}

// Between two nodes without one edge, against all pairs of what is left.
TEST(ShortestWays, BetweenTwoLeavesOneEdgeOut) {
  std::mt19937_64 random(91);
  int apart = 0;
  for (int round = 0; round < 150; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 91");
    const auto nodes = static_cast<std::uint32_t>(2 + random() % 12);
    const auto edges =
        test::possibleEdges(random, nodes, static_cast<std::uint32_t>(random() % 12), 500);
    const auto positions = DifferenceGraph(nodes, edges).feasible({});
    ASSERT_TRUE(positions.has_value());
    ShortestWays ways(nodes, edges, *positions);
    for (std::uint32_t without = 0; without < edges.size(); ++without) {
      Edges others = edges;
      others.erase(others.begin() + without);
      const auto most = test::allPairs(nodes, others);
      const auto& [a, b, low, high] = edges[without];
      const auto up = ways.between(a, b, ShortestWays::End::high, without);
      const auto down = ways.between(a, b, ShortestWays::End::low, without);
      ASSERT_EQ(up.has_value(), most[a][b] != test::kFar);
      ASSERT_EQ(down.has_value(), up.has_value());
      if (!up) {
        ++apart;
        continue;
      }
      ASSERT_EQ(up->length, most[a][b]);
      ASSERT_EQ(down->length, -most[b][a]);
      std::int64_t sum = 0;
      std::uint32_t at = a;
      for (const std::uint32_t number : up->edges) {
        ASSERT_NE(number, without);
        const DifferenceEdge& edge = edges[number];
        sum += edge.a == at ? edge.high : -edge.low;
        at = edge.a == at ? edge.b : edge.a;
      }
      ASSERT_EQ(at, b);
      ASSERT_EQ(sum, up->length);
    }
  }
  EXPECT_GT(apart, 100);
}

// A ladder: what lies between two neighbours is near them, however long it is.
TEST(ShortestWays, LookNoFurtherThanTheyHaveTo) {
  constexpr std::uint32_t kNodes = 20'000;
  Edges edges;
  for (std::uint32_t i = 0; i + 1 < kNodes; ++i) edges.push_back({i, i + 1, -5, 5});
  for (std::uint32_t i = 0; i + 2 < kNodes; ++i) edges.push_back({i, i + 2, -9, 9});
  const std::vector<std::int64_t> none(kNodes, 0);
  ShortestWays ways(kNodes, edges, none);
  for (std::uint32_t i = 100; i + 100 < kNodes; i += 50) {
    const auto way = ways.between(i, i + 2, ShortestWays::End::high, kNodes - 1 + i);
    ASSERT_TRUE(way.has_value());
    ASSERT_EQ(way->length, 10);
  }
  EXPECT_LT(ways.looked(), 400u * 40);
}

}  // namespace
}  // namespace inchwright
