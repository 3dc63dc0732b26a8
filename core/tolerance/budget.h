#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// A place and where the print puts it from zero, in ticks along the part's own axis.
struct PrintedPlace {
  Id id;
  Rational ticks;
  bool isZero = false;        ///< zero is set on it, so it has no error of its own
  bool isBesideZero = false;  ///< another place of the feature that zero is set on

  bool operator==(const PrintedPlace&) const = default;
};

struct BudgetRequest {
  /// Places with a position along the axis; others get no budget.
  std::vector<PrintedPlace> places;
  /// How closely the machine goes to a coordinate, either way; 0 when nothing is known of it. No
  /// place gets less than this: readings that would need less are not guaranteed.
  std::int64_t accuracy = 0;
  /// How far zero itself may be off the place it is set on, either way.
  std::int64_t finderError = 0;
};

/// How far one coordinate may stray.
struct PlaceBudget {
  Id id;
  /// From zero, ticks. The print's own position where that leaves as much room as any other, and
  /// as near to it as possible where unequal tolerances ask for another.
  std::int64_t target = 0;
  std::int64_t printed = 0;  ///< the print's own position, to the tick
  /// Either way, ticks, rounded down; empty where no toleranced reading limits it.
  std::optional<std::int64_t> plusMinus;
  bool isZero = false;
  std::vector<Source> heldBy;  ///< readings that keep it from more, in order of ids

  bool operator==(const PlaceBudget&) const = default;
};

struct Budget {
  std::vector<PlaceBudget> places;  ///< in order of ids
  /// Readings that working within these budgets does not guarantee, in order of ids: to be checked
  /// directly on the part.
  std::vector<Source> notGuaranteed;

  bool operator==(const Budget&) const = default;
};

/// How closely each coordinate has to be worked to from a zero, so that every toleranced reading
/// holds for any part within the budgets: the tightest as wide as possible, then the next, and so
/// on (max–min fair), exactly.
///
/// For every reading from a to b with limits [low, high] the targets c and budgets t satisfy
/// c(b) + t(b) − (c(a) − t(a)) ≤ high and c(b) − t(b) − (c(a) + t(a)) ≥ low. A place that zero is
/// set on has its printed target and ±0, and counts with the finder's error. Where zero is the
/// middle of two sides, both are ordinary coordinates: the middle is found from the stock as it is,
/// so either side may come out off its place. Places in line, concentric or at an exact pitch from
/// each other share one budget, and a reading to one of them binds all; but what is fixed so
/// against zero itself keeps, of a reading to zero, as close as that letters, and takes no room
/// from its other end. Basic figures, middles and equal spaces are no toleranced readings and bind
/// nothing.
///
/// What is not guaranteed is chosen so: readings that are too tight by themselves for the machine;
/// then, from the widest to the tightest (of equal ones against the order of their names), each
/// that no longer holds at the machine's accuracy beside those before it. Cost: about linear in the
/// readings where they hold; a contradiction adds what it moves. Errors: `outOfRange`; `notFound`
/// for a place the network does not have.
Result<Budget> budgetOf(const Part& part, const ToleranceNetwork& network,
                        const BudgetRequest& request);

/// What is left of a budget once its target is dialled at a step: the budget less what rounding
/// the target costs, not below 0.
std::int64_t leftAfterRounding(std::int64_t plusMinus, std::int64_t target, std::int64_t dialled);

}  // namespace inchwright
