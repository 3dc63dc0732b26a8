#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/graph/difference_edge.h"

namespace inchwright {

/// One two-connected block of a graph while rooms are shared out over it (see filling.h). Between
/// two nodes that may lie 6 thou nearer or farther both rooms grow to 3 thou, where it is full.
class RatioBlock {
 public:
  RatioBlock(std::span<const DifferenceEdge> edges, std::vector<std::uint32_t> numbers);

  /// What stops the rooms of this block from growing on.
  struct Limit {
    Rational level;
    std::vector<std::uint32_t> nodes;  ///< whose rooms end there, ascending
    std::vector<std::uint32_t> edges;  ///< without slack left, by number of the graph
  };

  const std::vector<std::uint32_t>& nodes() const { return nodes_; }

  /// The level at which the first circle runs out of slack; empty when no circle has a node left
  /// whose room is not settled. Requires: settled rooms leave no circle short.
  /// Errors: `outOfRange`.
  Result<std::optional<Limit>> limit(const std::vector<std::optional<Rational>>& room);

 private:
  struct Arc {
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    std::uint32_t edge = 0;  ///< in numbers_
    Int128 slack = 0;        ///< high or −low less settled rooms, in parts of a tick
    int growing = 0;         ///< how many of its two ends have rooms that still grow
  };
  struct Ratio {
    Int128 slack = 0;
    Int128 growing = 1;
  };

  bool weigh(const std::vector<std::optional<Rational>>& room);
  std::optional<Ratio> firstGuess() const;
  std::vector<std::uint32_t> shortCircle(const Ratio& ratio);
  std::vector<std::uint32_t> circleOf(const std::vector<std::uint32_t>& cameBy) const;
  Int128 cost(const Arc& arc, const Ratio& ratio) const {
    return arc.slack * ratio.growing - ratio.slack * arc.growing;
  }
  Limit limitAt(const Ratio& ratio, const std::vector<std::optional<Rational>>& room) const;
  std::vector<std::uint32_t> circlesWithoutSlack(const Ratio& ratio) const;

  std::vector<std::uint32_t> numbers_;  ///< of the edges, in the graph
  std::vector<DifferenceEdge> edges_;   ///< between nodes of the block
  std::vector<std::uint32_t> nodes_;    ///< by node of the block: its number in the graph
  std::vector<std::uint32_t> firstArc_;
  std::vector<Arc> arcs_;         ///< by the node they leave
  std::vector<Int128> position_;  ///< satisfies every arc at the level last looked at
  Int128 parts_ = 1;              ///< of a tick
};

}  // namespace inchwright
