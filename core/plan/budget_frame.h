#pragma once

#include "core/base/result.h"
#include "core/chain/solution.h"
#include "core/part/job.h"
#include "core/tolerance/budget.h"

namespace inchwright {

/// What a budget along one axis starts from: every placed place and where the print puts it from
/// the setup's zero, in the part's own direction, with the machine's accuracy.
/// Errors: as `findZero`, `outOfRange`. Without any zero there are no places.
Result<BudgetRequest> budgetRequest(const Part& part, const Solution& solution, const Setup& setup,
                                    const Machine& machine, Axis axis);

/// The budget along one axis for a setup. Errors: as `budgetRequest` and `budgetOf`.
Result<Budget> budgetAlong(const Part& part, const Solution& solution, const Setup& setup,
                           const Machine& machine, Axis axis);

}  // namespace inchwright
