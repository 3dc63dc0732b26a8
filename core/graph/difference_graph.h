#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/graph/difference_edge.h"
#include "core/graph/forest.h"

namespace inchwright {

/// How far a node may lie from another, and the edges that stop it there.
struct NodeReach {
  static constexpr std::int64_t kUnreached = INT64_MAX;

  std::int64_t high = kUnreached;  ///< ticks; kUnreached where nothing joins the two
  std::int64_t low = kUnreached;   ///< ticks
  std::uint32_t highBy = kNone;  ///< the last edge on the way that sets `high`; kNone at the other
  std::uint32_t lowBy = kNone;

  bool reached() const { return high != kUnreached; }
};

/// By node.
using Reach = std::vector<NodeReach>;

/// Difference constraints over integers: low ≤ x(b) − x(a) ≤ high for every edge.
///
/// The greatest x(v) − x(s) that all constraints allow is the length of the shortest way from s to
/// v where an edge costs `high` forwards and −low backwards (Cormen, Leiserson, Rivest and Stein,
/// Introduction to Algorithms, 24.4); the least is the same backwards.
///
/// Requires: |low| and |high| together below 2^62, so that no sum overflows; fewer than 2^31 edges.
class DifferenceGraph {
 public:
  /// The edges stay where they are and have to outlive the graph. An edge from a node to itself
  /// bounds nothing, but can be a contradiction.
  DifferenceGraph(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges)
      : nodes_(nodeCount), edges_(edges) {}
  DifferenceGraph(std::uint32_t nodeCount, std::vector<DifferenceEdge>&& edges) = delete;

  /// Positions that satisfy every edge: `guess` when it does, else the nearest found from it.
  /// Empty when the edges contradict each other. Linear when `guess` fits.
  std::optional<std::vector<std::int64_t>> feasible(std::vector<std::int64_t> guess) const;

  /// The fewest edges that contradict each other, in the order of a walk round them; empty when
  /// none do. Among several sets of that size the one through the lowest node. Past a few hundred
  /// million steps the best set found so far is given: still a contradiction, perhaps not the
  /// smallest.
  std::vector<std::uint32_t> contradiction() const;

  /// Both ends for every node (see `ShortestWays`). Requires: `feasiblePositions` satisfies every
  /// edge.
  Reach from(std::uint32_t source, std::span<const std::int64_t> feasiblePositions) const;

 private:
  /// A step over an edge: twice its number, and one more when it is walked from its second end.
  using Step = std::uint32_t;
  struct Arc;
  class Arcs;

  // Which way a step goes is as good as random, so these are worked out without a branch.
  std::uint32_t startOf(Step step) const {
    const DifferenceEdge& edge = edges_[step >> 1];
    return edge.a ^ ((edge.a ^ edge.b) & (0U - (step & 1)));
  }
  std::uint32_t endOf(Step step) const { return startOf(step ^ 1); }
  Step stepFrom(std::uint32_t node, std::uint32_t edge) const {
    return 2 * edge + (edges_[edge].a == node ? 0 : 1);
  }
  /// What x(there) − x(here) is at most.
  std::int64_t costOf(Step step) const {
    const DifferenceEdge& edge = edges_[step >> 1];
    return (step & 1) == 0 ? edge.high : -edge.low;
  }
  bool allows(Step step, std::span<const std::int64_t> at) const {
    return at[endOf(step)] - at[startOf(step)] <= costOf(step);
  }

  std::vector<std::uint32_t> circleOf(const std::vector<std::uint32_t>& parentEdge) const;
  std::vector<std::uint32_t> settle(const Arcs& arcs, std::vector<std::int64_t>& positions) const;
  std::vector<std::uint32_t> circleFrom(const Arcs& arcs, std::uint32_t start, std::size_t limit,
                                        std::uint64_t& steps) const;

  std::uint32_t nodes_ = 0;
  std::span<const DifferenceEdge> edges_;
};

}  // namespace inchwright
