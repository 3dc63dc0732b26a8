#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "core/graph/difference_graph.h"

namespace inchwright {

/// The edges that set the high (or low) end of nodes, from the node measured from on. Of edges 0–1
/// and 1–2 that set the high end of 2 as seen from 0, those to 2 are edge 0 and edge 1. Each way is
/// that of the node before it and one edge, and is kept.
class WaysTo {
 public:
  /// With `most`, no more than the last so many of a way. What is given has to outlive it.
  WaysTo(const Reach& reach, std::span<const DifferenceEdge> edges, bool high,
         std::size_t most = std::numeric_limits<std::size_t>::max());

  /// Requires: the node is reached.
  const std::vector<std::uint32_t>& operator()(std::uint32_t node);

 private:
  std::uint32_t lastOf(std::uint32_t node) const {
    return high_ ? reach_[node].highBy : reach_[node].lowBy;
  }

  const Reach& reach_;
  std::span<const DifferenceEdge> edges_;
  bool high_;
  std::size_t most_;
  std::vector<std::vector<std::uint32_t>> ways_;  // by node; empty until it is asked for
};

}  // namespace inchwright
