#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/graph/difference_edge.h"
#include "core/graph/forest.h"

namespace inchwright {

/// Shortest ways over difference constraints from one node to others (E. W. Dijkstra, 1959), with
/// positions that satisfy them all taken off, so that no step costs less than nothing.
///
/// 0 ≤ x(1) − x(0) ≤ 4 and 1 ≤ x(2) − x(1) ≤ 2: x(2) − x(0) is 6 at most, over edges 0 and 1.
class ShortestWays {
 public:
  enum class End { high, low };  ///< which end of x(to) − x(from) a way sets

  struct Stop {
    std::int64_t distance =
        INT64_MAX;             ///< beyond the positions' own, ticks; INT64_MAX: not reached
    std::uint32_t by = kNone;  ///< the last edge on the way; kNone at its start
  };
  struct Way {
    std::int64_t length = 0;           ///< what x(to) − x(from) is at that end
    std::vector<std::uint32_t> edges;  ///< from the start on
  };

  /// Requires: `positions` satisfy every edge. What is given has to outlive it.
  ShortestWays(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
               std::span<const std::int64_t> positions);

  /// By node.
  std::vector<Stop> from(std::uint32_t source, End end) const;

  /// The way between two nodes that leaves out one edge; empty where there is none. It looks no
  /// further than it has to: the cost is that of what lies nearer than `to`.
  std::optional<Way> between(std::uint32_t from, std::uint32_t to, End end, std::uint32_t without);

  /// How many edges all calls of `between` have looked at.
  std::uint64_t looked() const { return looked_; }

 private:
  struct Arc {
    std::uint32_t to = 0;
    std::uint32_t edge = 0;
    std::array<std::int64_t, 2> costs = {};  ///< by end; none below 0
  };

  /// Settles nodes until `until` is; calls `reached` for each that is first reached.
  template <class Reached>
  void search(std::uint32_t source, End end, std::uint32_t until, std::uint32_t without,
              std::vector<Stop>& stops, const Reached& reached) const;

  std::span<const DifferenceEdge> edges_;
  std::span<const std::int64_t> positions_;
  std::vector<std::uint32_t> first_;  ///< by node, and one more for the end
  std::vector<Arc> arcs_;
  std::vector<Stop> stops_;  ///< of `between`; as new outside of it
  std::uint64_t looked_ = 0;
};

}  // namespace inchwright
