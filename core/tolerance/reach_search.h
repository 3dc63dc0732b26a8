#pragma once

#include <array>
#include <cstdint>
#include <memory_resource>
#include <span>

#include "core/tolerance/difference_graph.h"
#include "core/tolerance/reach_front.h"

namespace inchwright {

/// The search behind `DifferenceGraph::from`: both ends of every node from one source.
///
/// Most of a print is trees and runs of nodes with two edges, and neither needs a queue. So the
/// graph is folded up first: trees are peeled off from their leaves, and a node with two edges is
/// absorbed into one edge with the sums of their limits. What is left, a third of a usual print, is
/// searched by Dijkstra's algorithm, for the high ends and the low ones in turn (`ReachFront`),
/// with the feasible positions taken off so that no step costs less than nothing. Then everything
/// is unfolded in the opposite order, each node from its two neighbours.
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
  /// What a node is left with while the graph is folded up: how many edges, and the exclusive or
  /// of their numbers, which leads from one of two to the other. One word, as it changes so often.
  class Joint {
   public:
    std::uint32_t degree() const { return static_cast<std::uint32_t>(word_ >> 32); }
    std::uint32_t edges() const { return static_cast<std::uint32_t>(word_); }
    void add(std::uint32_t edge) { word_ = (word_ + kOne) ^ edge; }
    void remove(std::uint32_t edge) { word_ = (word_ - kOne) ^ edge; }
    void replace(std::uint32_t edge, std::uint32_t other) { word_ ^= edge ^ other; }
    void removeRing() { word_ -= 2 * kOne; }
    /// So that the source is neither peeled off nor absorbed.
    void pin() { word_ += kPinned; }
    void unpin() { word_ -= kPinned; }

   private:
    static constexpr std::uint64_t kOne = std::uint64_t{1} << 32;
    static constexpr std::uint64_t kPinned = std::uint64_t{1} << 63;
    std::uint64_t word_ = 0;
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
  void unfoldRuns(Reach& reach) const;
  void unfoldTrees(Reach& reach) const;

  std::uint32_t nodes_;
  std::span<const DifferenceEdge> given_;
  std::uint32_t source_;
  std::span<const std::int64_t> positions_;

  std::pmr::monotonic_buffer_resource memory_;
  std::span<Joint> joints_;          ///< by node
  std::span<std::uint32_t> leaves_;  ///< edges to nodes peeled off: twice the number, and one more
                                     ///< where the leaf is its first end
  std::span<DifferenceEdge> edges_;  ///< by number; both ends alike once peeled off or absorbed
  std::span<std::uint32_t> pairs_;   ///< nodes with two edges once trees are peeled off
  std::span<std::uint32_t> kernel_;  ///< nodes left over
  /// By node, and one more that is nobody's: one of its edges while runs are absorbed, then its
  /// place in the kernel.
  std::span<std::uint32_t> edgeAt_;
  std::span<Absorbed> absorbed_;
  std::span<std::uint32_t> firstWay_;  ///< by place in the kernel, and one more for the end
  std::span<ReachWay> ways_;
  std::uint32_t mostWays_ = 0;  ///< of any node
};

}  // namespace inchwright
