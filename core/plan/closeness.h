#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/chain/solution.h"
#include "core/part/job.h"
#include "core/plan/table.h"

namespace inchwright {

/// Places that may each be off by the same, along one of the machine's axes.
struct ClosenessBand {
  bool alongX = true;      ///< of the machine; else along Y
  Length plusMinus;        ///< either way of what is dialled, a whole number of steps
  std::vector<Id> places;  ///< as people count

  bool operator==(const ClosenessBand&) const = default;
};

/// A coordinate that leaves more room than the sheet's own, where tolerances are unequal.
struct BetterAim {
  Id place;
  bool alongX = true;
  Coordinate at;

  bool operator==(const BetterAim&) const = default;
};

/// How close each coordinate of a setup has to be so that every reading of the print holds, in the
/// words and directions of the machine.
struct Closeness {
  std::vector<ClosenessBand> bands;       ///< the tightest first, X before Y
  std::vector<BetterAim> aims;            ///< in order of places
  std::vector<std::string> directChecks;  ///< readings that this does not guarantee, a line each
  std::vector<std::string> advice;        ///< what makes it so tight and what would ease it

  bool operator==(const Closeness&) const = default;
};

/// The budgets along both axes of the table (`budgetAlong`), less what rounding each figure to the
/// step costs, for the places of the table. A place that no toleranced reading limits is left out,
/// as is one that zero is set on. Where measuring the readings that hold the tightest place leaves
/// at least a quarter more, `advice` says so. Requires: `table` is that setup's.
/// Errors: as `budgetAlong`. Costs two budgets an axis.
Result<Closeness> closenessOf(const Part& part, const Solution& solution, const Setup& setup,
                              const Machine& machine, const SetupTable& table);

/// What of it a setup's sheet shows: all when it is wanted; else only what has to be measured on
/// the part, and nothing where the document does not say how good the machine is.
Result<std::optional<Closeness>> closenessOnSheet(const Part& part, const Solution& solution,
                                                  const Setup& setup, const Machine& machine,
                                                  const SetupTable& table, bool wanted);

}  // namespace inchwright
