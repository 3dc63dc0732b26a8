#pragma once

#include <array>
#include <cstdint>
#include <memory_resource>
#include <span>

#include "core/tolerance/difference_graph.h"

namespace inchwright {

/// The search behind `DifferenceGraph::from`: both ends of every node from one source.
///
/// Most of a print is trees and runs of nodes with two edges, and neither needs a queue. So the
/// graph is folded up first: trees are peeled off from their leaves, and a node with two edges is
/// absorbed into one edge with the sums of their limits. What is left, a third of a usual print, is
/// searched by Dijkstra's algorithm, once for the high ends and once for the low ones, with the
/// feasible positions taken off so that no step costs less than nothing. Then everything is
/// unfolded in the opposite order, each node from its two neighbours.
///
/// Which edge or node comes next is as good as random, so the loops are written without branches
/// that could be guessed wrong, and all that they work on lies in one piece of memory.
class ReachSearch {
 public:
  /// Requires: `positions` satisfy every edge. What is given has to outlive the search.
  ReachSearch(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges, std::uint32_t source,
              std::span<const std::int64_t> positions);

  /// Called once.
  Reach run();

 private:
  /// What a node is left with while the graph is folded up.
  struct Joint {
    std::uint32_t degree = 0;
    std::uint32_t edges = 0;  ///< exclusive or of their numbers: leads from one of two to the other
    std::uint32_t any = 0;    ///< one of them, once trees are peeled off
  };
  struct Limits {
    std::int64_t low = 0;
    std::int64_t high = 0;
  };
  /// A node with two edges. The first, to `before`, went on to stand for both; where it led to
  /// this node it now leads to `after`.
  struct Absorbed {
    std::uint32_t node = 0;
    std::uint32_t before = 0;
    std::uint32_t after = 0;
    std::uint32_t first = 0;
    std::uint32_t second = 0;
    Limits fromBefore;  ///< of the node less `before`
    Limits fromAfter;
  };
  /// An edge left over, as seen from one of its nodes: what it adds to the high end of the other,
  /// and takes from the low one, with the feasible positions taken off both.
  struct Way {
    std::uint32_t to = 0;
    std::uint32_t edge = 0;
    std::array<std::int64_t, 2> costs = {};
  };

  static Limits limitsFrom(std::uint32_t node, const DifferenceEdge& edge) {
    return edge.a == node ? Limits{edge.low, edge.high} : Limits{-edge.high, -edge.low};
  }
  static std::uint32_t farEnd(const DifferenceEdge& edge, std::uint32_t node) {
    return edge.a ^ edge.b ^ node;
  }
  static bool isLeft(const DifferenceEdge& edge) { return edge.a != edge.b; }
  /// Room that is not written to before it is used.
  template <class T>
  std::span<T> room(std::size_t count) {
    return {static_cast<T*>(memory_.allocate(count * sizeof(T), alignof(T))), count};
  }

  void countEdges();
  void peelTrees();
  void findPairs();
  void absorbRuns();
  void listWays();
  void search(Reach& reach);
  void searchSide(std::size_t side, std::span<std::int64_t> distance, std::span<std::uint32_t> by);
  void unfoldRuns(Reach& reach) const;
  void unfoldTrees(Reach& reach) const;

  std::uint32_t nodes_;
  std::span<const DifferenceEdge> given_;
  std::uint32_t source_;
  std::span<const std::int64_t> positions_;

  std::pmr::monotonic_buffer_resource memory_;
  std::span<Joint> joints_;          ///< by node, and one more that is nobody's
  std::span<std::uint32_t> leaves_;  ///< edges to nodes peeled off: twice the number, and one more
                                     ///< where the leaf is its first end
  std::span<DifferenceEdge> edges_;  ///< by number; both ends alike once peeled off or absorbed
  std::span<std::uint32_t> pairs_;   ///< nodes with two edges once trees are peeled off
  std::span<Absorbed> absorbed_;
  std::span<std::uint32_t> kernel_;    ///< nodes left over
  std::span<std::uint32_t> firstWay_;  ///< by node, and one more for the end
  std::span<Way> ways_;
};

}  // namespace inchwright
