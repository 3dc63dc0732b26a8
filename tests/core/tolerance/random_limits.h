#pragma once

#include <random>
#include <vector>

#include "core/tolerance/grouped_network.h"

namespace inchwright::test {

/// Edges over nodes with hidden true positions that satisfy all of them: a random tree and some
/// more, limits unequal about the truth. No two edges join the same nodes.
inline std::vector<DifferenceEdge> possibleEdges(std::mt19937_64& random, std::uint32_t nodes,
                                                 std::uint32_t more, std::int64_t slack) {
  std::uniform_int_distribution<std::int64_t> place(0, 1'000'000);
  std::uniform_int_distribution<std::int64_t> room(0, slack);
  std::vector<std::int64_t> truth;
  for (std::uint32_t i = 0; i < nodes; ++i) truth.push_back(place(random));
  std::vector<DifferenceEdge> edges;
  const auto join = [&](std::uint32_t a, std::uint32_t b) {
    if (a == b) return;
    for (const DifferenceEdge& edge : edges) {
      if ((edge.a == a && edge.b == b) || (edge.a == b && edge.b == a)) return;
    }
    const std::int64_t length = truth[b] - truth[a];
    edges.push_back({a, b, length - room(random), length + room(random)});
  };
  for (std::uint32_t i = 1; i < nodes; ++i) {
    join(i, static_cast<std::uint32_t>(random() % i));
  }
  for (std::uint32_t i = 0; i < more; ++i) {
    join(static_cast<std::uint32_t>(random() % nodes),
         static_cast<std::uint32_t>(random() % nodes));
  }
  return edges;
}

/// The greatest x(j) − x(i) for all pairs, by Floyd and Warshall; kFar where nothing bounds it.
inline constexpr std::int64_t kFar = std::int64_t{1} << 60;

inline std::vector<std::vector<std::int64_t>> allPairs(std::uint32_t nodes,
                                                       const std::vector<DifferenceEdge>& edges) {
  std::vector<std::vector<std::int64_t>> most(nodes, std::vector<std::int64_t>(nodes, kFar));
  for (std::uint32_t i = 0; i < nodes; ++i) most[i][i] = 0;
  for (const DifferenceEdge& edge : edges) {
    most[edge.a][edge.b] = std::min(most[edge.a][edge.b], edge.high);
    most[edge.b][edge.a] = std::min(most[edge.b][edge.a], -edge.low);
  }
  for (std::uint32_t k = 0; k < nodes; ++k) {
    for (std::uint32_t i = 0; i < nodes; ++i) {
      for (std::uint32_t j = 0; j < nodes; ++j) {
        if (most[i][k] == kFar || most[k][j] == kFar) continue;
        most[i][j] = std::min(most[i][j], most[i][k] + most[k][j]);
      }
    }
  }
  return most;
}

}  // namespace inchwright::test
