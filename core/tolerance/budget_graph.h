#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/tolerance/budget.h"
#include "core/tolerance/grouped_network.h"

namespace inchwright {

/// The coordinates of a budget as variables: places that share one are one, and the place that zero
/// is set on stands by itself with a settled room. Lengths are counted in parts of a tick, as in
/// `GroupedNetwork`.
struct BudgetGraph {
  struct Edge {
    DifferenceEdge limits;
    std::uint32_t link = 0;  ///< in the tolerance network
  };
  /// 2 · room of a variable is no more than this: a reading between places that share it.
  struct Inner {
    std::uint32_t variable = 0;
    std::int64_t slack = 0;  ///< the lesser of what is left to its two limits
    std::uint32_t link = 0;
  };

  std::int64_t scale = 1;
  std::uint32_t variables = 0;
  std::vector<std::uint32_t> variable;  ///< by place; kNone where it has no printed position
  std::vector<std::int64_t> offset;     ///< by place: its target less that of its variable
  std::vector<std::int64_t> printed;    ///< by variable: the print's position from zero
  std::optional<std::uint32_t> zero;    ///< the variable of the place zero is set on
  /// Places of zero's own feature: of a reading to zero they keep as close as the print letters
  /// there, without taking room from the reading's other end.
  struct Likewise {
    std::uint32_t variable = 0;
    std::int64_t room = 0;
    std::uint32_t link = 0;
  };
  std::vector<Edge> edges;
  std::vector<Inner> inner;
  std::vector<Likewise> likewise;
};

/// Errors: `notFound`, `outOfRange`.
Result<BudgetGraph> budgetGraphOf(const ToleranceNetwork& network, const BudgetRequest& request);

}  // namespace inchwright
