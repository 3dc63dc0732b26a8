#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/plan/zero.h"
#include "core/tolerance/budget.h"
#include "core/tolerance/stack.h"

namespace inchwright {

/// What a budget along one axis starts from: every placed place and where the print puts it from
/// the setup's zero, in the part's own direction, with the machine's accuracy.
/// Errors: as `findZero`, `outOfRange`. Without any zero there are no places.
Result<BudgetRequest> budgetRequest(const PartAt& at, Axis axis);

/// The network that a budget is of: that of the axis, and what centre distances and angles leave
/// along it; beside it the readings that can't be shared out so (`slantedLinks`).
struct BudgetNetwork {
  ToleranceNetwork network;
  std::vector<Source> notShared;
};
/// Errors: as `toleranceNetworkOf` and `slantedLinks`.
Result<BudgetNetwork> budgetNetwork(const PartAt& at, Axis axis);

/// The budget along one axis for a setup. Toleranced readings that can't be shared out between both
/// axes are named among those not guaranteed. Errors: as `budgetRequest` and `budgetOf`.
Result<Budget> budgetAlong(const PartAt& at, Axis axis);

/// The members of a stack between two places as a part comes out that is made from a setup's zero:
/// the coordinate of the one taken from that of the other, whatever chain the print dimensions.
///
/// Each coordinate may stray by `held` about the print's own position, where that is given; else by
/// its budget about the budget's target; else, where no toleranced reading limits it, by the
/// machine's accuracy. The place zero is set on has the coordinate 0 and strays by the finder's
/// error. Positions that are no whole tick are rounded to the nearest.
/// Errors: as `budgetAlong` and `nodeAlong`; `unsolvable` for a loose place; `badRequest` when the
/// setup has no zero along the axis, or when nothing says how closely a place is held.
Result<std::vector<StackMember>> membersFromZero(const PartAt& at, Axis axis, std::string_view from,
                                                 std::string_view to, std::optional<Length> held);

/// What those members add up to; straight from place to place (`axis` empty) in the plane of the
/// setup's face, each coordinate as much as it moves the distance (of the first order). Errors: as
/// `membersFromZero`; `unsolvable` where the two are one spot.
Result<Stack> stackFromZero(const PartAt& at, std::optional<Axis> axis, std::string_view from,
                            std::string_view to, std::optional<Length> held,
                            double inflation = kCustomaryInflation);

}  // namespace inchwright
