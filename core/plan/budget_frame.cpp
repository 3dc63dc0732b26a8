#include "core/plan/budget_frame.h"

#include "core/plan/zero.h"

namespace inchwright {

Result<BudgetRequest> budgetRequest(const Part& part, const Solution& solution, const Setup& setup,
                                    const Machine& machine, Axis axis) {
  BudgetRequest request;
  if (machine.accuracy) request.accuracy = machine.accuracy->value.ticks();
  if (machine.finderError) request.finderError = machine.finderError->value.ticks();
  const Result<std::optional<FoundZero>> zero = findZero(part, solution, setup, axis);
  if (!zero) return zero.error();
  if (!*zero) return request;
  for (const auto& [key, position] : solution.positions) {
    if (key.second != axis || position.group != 0) continue;
    const auto ticks = position.ticks.minus((*zero)->ticks);
    if (!ticks) return Error{ErrorCode::outOfRange, "this coordinate goes too far", key.first};
    request.places.push_back({key.first, *ticks, key.first == (*zero)->asked.at});
  }
  return request;
}

Result<Budget> budgetAlong(const Part& part, const Solution& solution, const Setup& setup,
                           const Machine& machine, Axis axis) {
  const Result<BudgetRequest> request = budgetRequest(part, solution, setup, machine, axis);
  if (!request) return request.error();
  const Result<ToleranceNetwork> network = toleranceNetworkOf(part, axis);
  if (!network) return network.error();
  return budgetOf(part, *network, *request);
}

}  // namespace inchwright
