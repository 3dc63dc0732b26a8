#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/tolerance/grouped_network.h"

namespace inchwright {

/// How far every node may lie from one of them, and the edges that stop it there.
struct Reach {
  static constexpr std::int64_t kUnreached = INT64_MAX;

  std::vector<std::int64_t> high;     ///< ticks; kUnreached where nothing joins the two
  std::vector<std::int64_t> low;      ///< ticks
  std::vector<std::uint32_t> highBy;  ///< the last edge on the way that sets `high`
  std::vector<std::uint32_t> lowBy;

  bool reached(std::uint32_t node) const { return high[node] != kUnreached; }
};

/// Difference constraints over integers: low ≤ x(b) − x(a) ≤ high for every edge.
///
/// The greatest x(v) − x(s) that all constraints allow is the length of the shortest way from s to
/// v where an edge costs `high` forwards and −low backwards (Cormen, Leiserson, Rivest and Stein,
/// Introduction to Algorithms, 24.4); the least is the same backwards. Most of a print is trees
/// and runs of nodes with two edges, which need no queue: trees are peeled off and runs become one
/// edge each, and only what is left is searched.
///
/// Requires: |low| and |high| together below 2^62, so that no sum overflows.
class DifferenceGraph {
 public:
  /// Linear. The graph keeps its own copy of what it needs.
  DifferenceGraph(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges);

  /// Positions that satisfy every edge: `guess` when it does, else the nearest found from it.
  /// Empty when the edges contradict each other. Linear when `guess` fits.
  std::optional<std::vector<std::int64_t>> feasible(std::vector<std::int64_t> guess) const;

  /// The fewest edges that contradict each other, in the order of a walk round them; empty when
  /// none do. Among several sets of that size the one through the lowest node. Past a few hundred
  /// million steps the best set found so far is given: still a contradiction, perhaps not the
  /// smallest.
  std::vector<std::uint32_t> contradiction() const;

  /// Both ends for every node. Requires: `feasiblePositions` satisfies every edge.
  Reach from(std::uint32_t source, std::span<const std::int64_t> feasiblePositions) const;

  /// The edges that set the high (or low) end of a node, from the source on.
  static std::vector<std::uint32_t> waysTo(const Reach& reach,
                                           std::span<const DifferenceEdge> edges,
                                           std::uint32_t node, bool high);

 private:
  /// What a node may be beyond its neighbour over one edge, both ways of walking it.
  struct Arc {
    std::uint32_t to = 0;
    std::uint32_t edge = 0;
    std::int64_t up = 0;    ///< x(to) − x(here) ≤ up
    std::int64_t down = 0;  ///< x(here) − x(to) ≤ down
  };
  /// A node peeled off, and what holds it to the rest.
  struct Leaf {
    std::uint32_t node = 0;
    Arc arc;  ///< to its parent
  };
  /// A run from junction to junction over nodes that have two edges each.
  struct Run {
    std::uint32_t begin = 0;  ///< into steps_; each step leads to the next node of the run
    std::uint32_t end = 0;
    std::uint32_t from = 0;  ///< junction, by number in junctions_
    std::uint32_t to = 0;
    std::int64_t up = 0;
    std::int64_t down = 0;
  };
  struct Sweep;

  std::span<const Arc> arcsAt(std::uint32_t node) const;
  std::vector<std::uint32_t> circleOf(const std::vector<std::uint32_t>& parentEdge) const;
  std::vector<std::uint32_t> settle(std::vector<std::int64_t>& positions) const;
  std::vector<std::uint32_t> circleFrom(std::uint32_t start, std::size_t limit,
                                        std::uint64_t& steps) const;
  void peel(std::vector<std::uint32_t>& degree);
  void findRuns(const std::vector<std::uint32_t>& degree);
  void walkRun(std::uint32_t junction, const Arc& first, std::vector<bool>& edgeDone);

  std::uint32_t nodes_ = 0;
  std::vector<DifferenceEdge> edges_;
  std::vector<std::uint32_t> firstArc_;
  std::vector<Arc> arcs_;
  std::vector<Leaf> leaves_;               ///< in the order they were peeled
  std::vector<std::uint32_t> leafOf_;      ///< by node: its number in leaves_, else kNone
  std::vector<std::uint32_t> junctions_;   ///< nodes
  std::vector<std::uint32_t> junctionOf_;  ///< by node
  std::vector<Run> runs_;
  std::vector<Arc> steps_;
  std::vector<std::uint32_t> runOf_;     ///< by node inside a run
  std::vector<std::uint32_t> stepOf_;    ///< by node inside a run: the step that leads to it
  std::vector<std::uint32_t> firstRun_;  ///< by junction, into runsAt_
  std::vector<std::uint32_t> runsAt_;
};

}  // namespace inchwright
