#include "core/tolerance/reach_search.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "core/tolerance/reach_front.h"
#include "tests/core/tolerance/random_limits.h"

namespace inchwright {
namespace {

using Edges = std::vector<DifferenceEdge>;

Reach searched(std::uint32_t nodes, const Edges& edges, std::uint32_t source,
               const std::vector<std::int64_t>& positions) {
  return ReachSearch(nodes, edges, source, positions).run();
}

// The ways have to lead back to the source, each edge on from the one before.
void expectWaysLeadHome(const Reach& reach, const Edges& edges, std::uint32_t source) {
  for (std::uint32_t node = 0; node < reach.size(); ++node) {
    if (!reach[node].reached()) continue;
    for (const bool high : {false, true}) {
      const auto way = DifferenceGraph::waysTo(reach, edges, node, high, edges.size() + 1);
      ASSERT_LE(way.size(), edges.size()) << "goes round in circles from " << node;
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

/// The ways of a graph by node, as a front wants them.
struct Listed {
  std::vector<std::uint32_t> first;
  std::vector<ReachWay> ways;

  Listed(std::uint32_t nodes, const Edges& edges) {
    for (std::uint32_t node = 0; node <= nodes; ++node) {
      first.push_back(static_cast<std::uint32_t>(ways.size()));
      for (std::uint32_t i = 0; i < edges.size(); ++i) {
        const DifferenceEdge& edge = edges[i];
        if (edge.a == node) ways.push_back({edge.b, i, {edge.high, -edge.low}});
        if (edge.b == node) ways.push_back({edge.a, i, {-edge.low, edge.high}});
      }
    }
  }
};

/// Limits on either side of zero between random nodes, each near the one before or anywhere.
Edges aroundZero(std::mt19937_64& random, std::uint32_t nodes, std::uint32_t count, bool near) {
  Edges edges;
  for (std::uint32_t i = 0; i < count; ++i) {
    const auto a = static_cast<std::uint32_t>(random() % nodes);
    const auto b = static_cast<std::uint32_t>(near ? (a + random() % 4) % nodes : random() % nodes);
    edges.push_back(
        {a, b, -static_cast<std::int64_t>(random() % 9), static_cast<std::int64_t>(random() % 9)});
  }
  return edges;
}

std::vector<ReachStop> steppedThenFinished(const Listed& graph, std::uint32_t nodes,
                                           std::size_t side, std::uint32_t source,
                                           std::uint32_t mostSteps) {
  std::vector<ReachStop> stops(nodes);
  ReachFront front(side, graph.first, graph.ways, stops, source);
  for (std::uint32_t i = 0; i < mostSteps && front.isNarrow(); ++i) front.step();
  front.finish();
  EXPECT_FALSE(front.isNarrow());
  return stops;
}

// Whether it goes a step at a time to the end, changes to the heap on its way or begins with it,
// also where more wait than a step looks through.
TEST(ReachFront, StepsAndTheHeapComeToTheSameDistances) {
  std::mt19937_64 random(1'956);
  for (int round = 0; round < 30; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1956");
    const auto nodes = static_cast<std::uint32_t>(1 + random() % 200);
    const Edges edges = aroundZero(random, nodes, 2 * nodes, round % 2 == 0);
    const auto most = test::allPairs(nodes, edges);
    const Listed graph(nodes, edges);
    const auto source = static_cast<std::uint32_t>(random() % nodes);
    for (const std::uint32_t steps : {0u, 1u, nodes / 2, nodes + 1}) {
      for (const std::size_t side : {0u, 1u}) {
        const auto stops = steppedThenFinished(graph, nodes, side, source, steps);
        for (std::uint32_t node = 0; node < nodes; ++node) {
          const std::int64_t far = side == 0 ? most[source][node] : most[node][source];
          ASSERT_EQ(stops[node].distance, far == test::kFar ? INT64_MAX : far) << node;
          ASSERT_EQ(stops[node].by == kNone, node == source || far == test::kFar);
        }
      }
    }
  }
}

// Each of 64 nodes has as many ways as a step may take, and all of those wait at once.
TEST(ReachFront, AsManyWaitAsEverMay) {
  constexpr std::uint32_t kWays = ReachFront::kMostWays;
  constexpr std::uint32_t kNodes = 1 + kWays + kWays * (kWays - 1);
  Edges edges;
  for (std::uint32_t i = 1; i < kNodes; ++i) {
    const std::uint32_t parent = i <= kWays ? 0 : 1 + (i - kWays - 1) / (kWays - 1);
    edges.push_back({parent, i, -std::int64_t{i} % 7, 1'000 - std::int64_t{i} % 11});
  }
  const Listed graph(kNodes, edges);
  for (const std::uint32_t steps : {1u, 2u, 3u, kNodes}) {
    const auto stops = steppedThenFinished(graph, kNodes, 0, 0, steps);
    for (std::uint32_t i = 1; i < kNodes; ++i) {
      const std::uint32_t parent = edges[i - 1].a;
      ASSERT_EQ(stops[i].distance, stops[parent].distance + edges[i - 1].high);
      ASSERT_EQ(stops[i].by, i - 1);
    }
  }
}

// A hub with a spoke to each node of a ring: more wait than the queue holds without its heap.
TEST(ReachSearch, AWheelOfManySpokes) {
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
TEST(ReachSearch, RingsWhereverTheyHang) {
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
TEST(ReachSearch, ExactEdgesTieEverywhere) {
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
TEST(ReachSearch, AVeryLongRun) {
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

TEST(ReachSearch, ASinglePlace) {
  const Reach reach = searched(1, {}, 0, {0});
  ASSERT_EQ(reach.size(), 1u);
  EXPECT_EQ(reach[0].high, 0);
  EXPECT_EQ(reach[0].low, 0);
  EXPECT_TRUE(DifferenceGraph::waysTo(reach, Edges(), 0, true).empty());
}

}  // namespace
}  // namespace inchwright
