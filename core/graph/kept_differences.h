#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/graph/difference_edge.h"

namespace inchwright {

/// Difference constraints low ≤ x(b) − x(a) ≤ high, taken one after the other: one that contradicts
/// those taken before is refused. At every moment it holds positions that satisfy what was taken.
///
/// From 0 and 0: 1 ≤ x(1) − x(0) ≤ 2 is taken, and the positions become 0 and 1; then
/// 3 ≤ x(1) − x(0) ≤ 4 is refused.
///
/// Exact. An edge that the positions satisfy costs nothing; another one costs what has to move for
/// it, as a shortest way does (S. Cotton and O. Maler, Fast and flexible difference constraint
/// propagation for DPLL(T), SAT 2006).
/// Requires: positions and limits together below 2^61, so that no sum overflows.
class KeptDifferences {
 public:
  explicit KeptDifferences(std::vector<std::int64_t> start);

  /// All of them or none.
  bool take(std::span<const DifferenceEdge> edges);
  const std::vector<std::int64_t>& positions() const { return at_; }

 private:
  /// x(to) − x(from) ≤ most.
  struct Arc {
    std::uint32_t to = 0;
    std::int64_t most = 0;
  };

  bool take(std::uint32_t from, Arc arc);

  std::vector<std::int64_t> at_;
  std::vector<std::vector<Arc>> arcs_;  // by where they begin
};

}  // namespace inchwright
