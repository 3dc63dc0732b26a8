#include "core/graph/difference_graph.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <optional>

#include "core/base/rational.h"
#include "core/graph/ways_to.h"
#include "tests/core/tolerance/random_limits.h"

namespace inchwright {
namespace {

using test::allPairs;
using test::kFar;
using test::possibleEdges;

// What the edges on a way add up to, walked from its first node.
std::int64_t sumOf(const std::vector<DifferenceEdge>& edges, const std::vector<std::uint32_t>& way,
                   std::uint32_t source, bool high) {
  std::int64_t sum = 0;
  std::uint32_t node = source;
  for (const std::uint32_t number : way) {
    const DifferenceEdge& edge = edges[number];
    const bool forward = edge.a == node;
    sum += high ? (forward ? edge.high : -edge.low) : (forward ? edge.low : -edge.high);
    node = forward ? edge.b : edge.a;
  }
  return sum;
}

// Both ends from a node, and the ways that set them, against all pairs.
void expectReach(const std::vector<DifferenceEdge>& edges, const DifferenceGraph& graph,
                 const std::vector<std::int64_t>& positions, std::uint32_t source,
                 const std::vector<std::vector<std::int64_t>>& most) {
  const Reach reach = graph.from(source, positions);
  WaysTo toHigh(reach, edges, true), toLow(reach, edges, false);
  for (std::uint32_t node = 0; node < most.size(); ++node) {
    ASSERT_EQ(reach[node].reached(), most[source][node] != kFar);
    if (!reach[node].reached()) continue;
    ASSERT_EQ(reach[node].high, most[source][node]);
    ASSERT_EQ(reach[node].low, -most[node][source]);
    ASSERT_EQ(sumOf(edges, toHigh(node), source, true), reach[node].high);
    ASSERT_EQ(sumOf(edges, toLow(node), source, false), reach[node].low);
  }
}

TEST(DifferenceGraph, BothEndsFromEveryNodeAgreeWithAllPairs) {
  std::mt19937_64 random(20'250'401);
  for (int round = 0; round < 300; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 20250401");
    const auto nodes = static_cast<std::uint32_t>(1 + random() % 24);
    const auto more = static_cast<std::uint32_t>(random() % (1 + nodes));
    const std::int64_t slack = round % 5 == 0 ? 0 : 1'000;
    const auto edges = possibleEdges(random, nodes, more, slack);
    const auto most = allPairs(nodes, edges);
    const DifferenceGraph graph(nodes, edges);
    const auto positions = graph.feasible(std::vector<std::int64_t>(nodes, 0));
    ASSERT_TRUE(positions.has_value());
    for (const DifferenceEdge& edge : edges) {
      const std::int64_t length = (*positions)[edge.b] - (*positions)[edge.a];
      ASSERT_TRUE(edge.low <= length && length <= edge.high);
    }
    for (std::uint32_t source = 0; source < nodes; ++source) {
      expectReach(edges, graph, *positions, source, most);
      if (HasFatalFailure()) return;
    }
  }
}

// Several parts that nothing joins, edges in parallel and from a node to itself, many ties: limits
// are few whole numbers and every third edge is exact.
TEST(DifferenceGraph, AndOnLargerOnesOfEveryShape) {
  std::mt19937_64 random(1'201);
  for (int round = 0; round < 24; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1201");
    const auto nodes = static_cast<std::uint32_t>(20 + random() % 140);
    const std::uint64_t count = nodes * (1 + random() % 3);
    std::vector<std::int64_t> truth;
    for (std::uint32_t i = 0; i < nodes; ++i) {
      truth.push_back(static_cast<std::int64_t>(random() % 50));
    }
    std::vector<DifferenceEdge> edges;
    for (std::uint64_t i = 0; i < count; ++i) {
      const auto a = static_cast<std::uint32_t>(random() % nodes);
      const auto near = static_cast<std::uint32_t>(a + random() % 7) % nodes;
      const std::uint32_t b = round % 2 == 0 ? near : static_cast<std::uint32_t>(random() % nodes);
      const std::int64_t length = truth[b] - truth[a];
      const auto room = [&] { return static_cast<std::int64_t>(i % 3 == 0 ? 0 : random() % 4); };
      const std::int64_t low = length - room();
      edges.push_back({a, b, low, length + room()});
    }
    const auto most = allPairs(nodes, edges);
    const DifferenceGraph graph(nodes, edges);
    for (std::uint32_t source = 0; source < nodes; source += 5) {
      expectReach(edges, graph, truth, source, most);
      if (HasFatalFailure()) return;
    }
  }
}

TEST(DifferenceGraph, AnEdgeFromANodeToItselfCanContradict) {
  const std::vector<DifferenceEdge> edges{{0, 1, 1, 2}, {1, 1, 1, 2}};
  const DifferenceGraph graph(2, edges);
  EXPECT_FALSE(graph.feasible({}).has_value());
  EXPECT_EQ(graph.contradiction(), (std::vector<std::uint32_t>{1}));
}

TEST(DifferenceGraph, NodesThatNothingJoinsAreNotReached) {
  const std::vector<DifferenceEdge> edges{{0, 1, 1, 2}, {2, 3, 1, 2}, {3, 4, 1, 2}, {4, 2, -4, -2}};
  const DifferenceGraph graph(6, edges);
  const auto positions = graph.feasible({});
  ASSERT_TRUE(positions.has_value());
  const Reach reach = graph.from(1, *positions);
  EXPECT_TRUE(reach[0].reached());
  for (const std::uint32_t node : {2u, 3u, 4u, 5u}) EXPECT_FALSE(reach[node].reached());
}

// The fewest edges of a contradicting walk, by trying lengths one after another from every node.
std::size_t fewestByBruteForce(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges) {
  std::vector<std::vector<std::int64_t>> most(nodes, std::vector<std::int64_t>(nodes, kFar));
  for (std::uint32_t i = 0; i < nodes; ++i) most[i][i] = 0;
  for (std::size_t length = 1; length <= nodes; ++length) {
    std::vector<std::vector<std::int64_t>> next(nodes, std::vector<std::int64_t>(nodes, kFar));
    for (std::uint32_t i = 0; i < nodes; ++i) {
      for (const DifferenceEdge& edge : edges) {
        if (most[i][edge.a] != kFar) {
          next[i][edge.b] = std::min(next[i][edge.b], most[i][edge.a] + edge.high);
        }
        if (most[i][edge.b] != kFar) {
          next[i][edge.a] = std::min(next[i][edge.a], most[i][edge.b] - edge.low);
        }
      }
      if (next[i][i] < 0) return length;
    }
    most = next;
  }
  return 0;
}

TEST(DifferenceGraph, NamesTheSmallestContradiction) {
  std::mt19937_64 random(77);
  int contradicting = 0;
  for (int round = 0; round < 400; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 77");
    const auto nodes = static_cast<std::uint32_t>(3 + random() % 8);
    auto edges = possibleEdges(random, nodes, nodes, 400);
    for (int i = 0; i < 2; ++i) {
      DifferenceEdge& edge = edges[random() % edges.size()];
      const auto shift = static_cast<std::int64_t>(random() % 3'000) - 1'500;
      edge.low += shift;
      edge.high += shift;
    }
    const DifferenceGraph graph(nodes, edges);
    const auto found = graph.contradiction();
    ASSERT_EQ(found.size(), fewestByBruteForce(nodes, edges));
    ASSERT_EQ(found.empty(), graph.feasible({}).has_value());
    if (found.empty()) continue;
    ++contradicting;
    std::vector<DifferenceEdge> these;
    for (const std::uint32_t edge : found) these.push_back(edges[edge]);
    ASSERT_FALSE(DifferenceGraph(nodes, these).feasible({}).has_value());
    these.pop_back();
    ASSERT_TRUE(DifferenceGraph(nodes, these).feasible({}).has_value());
  }
  EXPECT_GT(contradicting, 50);
}

using Wide = std::vector<std::vector<Int128>>;
constexpr Int128 kWideFar = Int128{1} << 100;

// All pairs in 128 bits; nothing where the edges contradict each other.
std::optional<Wide> allPairsWide(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges) {
  Wide most(nodes, std::vector<Int128>(nodes, kWideFar));
  for (std::uint32_t i = 0; i < nodes; ++i) most[i][i] = 0;
  for (const DifferenceEdge& edge : edges) {
    most[edge.a][edge.b] = std::min<Int128>(most[edge.a][edge.b], edge.high);
    most[edge.b][edge.a] = std::min<Int128>(most[edge.b][edge.a], -Int128{edge.low});
  }
  for (std::uint32_t k = 0; k < nodes; ++k) {
    for (std::uint32_t i = 0; i < nodes; ++i) {
      for (std::uint32_t j = 0; j < nodes; ++j) {
        if (most[i][k] == kWideFar || most[k][j] == kWideFar) continue;
        most[i][j] = std::min(most[i][j], most[i][k] + most[k][j]);
      }
    }
    for (std::uint32_t i = 0; i < nodes; ++i) {
      if (most[i][i] < 0) return std::nullopt;
    }
  }
  return most;
}

// Tiny limits about hidden positions and now and then huge ones, all together below 2^62.
std::vector<DifferenceEdge> hugeEdges(std::mt19937_64& random, std::uint32_t nodes) {
  const auto below = [&](std::int64_t bound) {
    return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(bound));
  };
  std::vector<std::int64_t> truth;
  for (std::uint32_t i = 0; i < nodes; ++i) {
    truth.push_back(below(std::int64_t{1} << (20 + below(36))));
  }
  std::vector<DifferenceEdge> edges;
  std::int64_t left = std::int64_t{1} << 62;
  for (std::int64_t more = 1 + below(12); more > 0; --more) {
    DifferenceEdge edge{static_cast<std::uint32_t>(below(nodes)),
                        static_cast<std::uint32_t>(below(nodes)), 0, 0};
    const std::int64_t length = truth[edge.b] - truth[edge.a];
    const std::int64_t room = left / 2;
    edge.low = below(3) == 0 ? below(room) - room / 2 : length - below(3);
    edge.high = edge.low + (below(3) == 0 ? below(room) / 2 : below(4));
    const std::int64_t farther = std::max(std::abs(edge.low), std::abs(edge.high));
    if (farther >= left / 2) continue;
    left -= 2 * farther;
    edges.push_back(edge);
  }
  return edges;
}

// Lengths that go twice round a circle leave 64 bits.
TEST(DifferenceGraph, HugeLengthsDoNotWrap) {
  std::mt19937_64 random(62);
  int contradicting = 0;
  for (int round = 0; round < 3'000; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 62");
    const auto nodes = static_cast<std::uint32_t>(2 + random() % 9);
    const auto edges = hugeEdges(random, nodes);
    const DifferenceGraph graph(nodes, edges);
    const auto most = allPairsWide(nodes, edges);
    const auto positions = graph.feasible(std::vector<std::int64_t>(nodes, 0));
    ASSERT_EQ(positions.has_value(), most.has_value());
    const auto found = graph.contradiction();
    ASSERT_EQ(found.empty(), most.has_value());
    if (!most) {
      ++contradicting;
      std::vector<DifferenceEdge> these;
      for (const std::uint32_t edge : found) these.push_back(edges[edge]);
      ASSERT_FALSE(allPairsWide(nodes, these).has_value());
      these.pop_back();
      ASSERT_TRUE(allPairsWide(nodes, these).has_value());
      continue;
    }
    const auto source = static_cast<std::uint32_t>(random() % nodes);
    const Reach reach = graph.from(source, *positions);
    for (std::uint32_t node = 0; node < nodes; ++node) {
      ASSERT_EQ(reach[node].reached(), (*most)[source][node] != kWideFar);
      if (!reach[node].reached()) continue;
      ASSERT_TRUE(reach[node].high == (*most)[source][node]);
      ASSERT_TRUE(reach[node].low == -(*most)[node][source]);
    }
  }
  EXPECT_GT(contradicting, 500);
}

TEST(DifferenceGraph, FeasibleIsTheGreatestAtOrBelowTheGuess) {
  const std::vector<DifferenceEdge> edges{{0, 1, 5, 7}, {1, 2, -1, 1}};
  const DifferenceGraph graph(3, edges);
  EXPECT_EQ(*graph.feasible({0, 0, 0}), (std::vector<std::int64_t>{-5, 0, 0}));
  EXPECT_EQ(*graph.feasible({0, 6, 6}), (std::vector<std::int64_t>{0, 6, 6}));
}

}  // namespace
}  // namespace inchwright
