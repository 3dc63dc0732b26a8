#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/plan/table.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Places that may each be off by the same, along one of the machine's axes.
struct ClosenessBand {
  MachineAxis axis = MachineAxis::x;
  Length plusMinus;        ///< either way of what is dialled, a whole number of steps
  std::vector<Id> places;  ///< as people count

  bool operator==(const ClosenessBand&) const = default;
};

/// A coordinate that leaves more room than the sheet's own, where tolerances are unequal.
struct BetterAim {
  Id place;
  MachineAxis axis = MachineAxis::x;
  Coordinate at;

  bool operator==(const BetterAim&) const = default;
};

/// A reading that the coordinates do not guarantee: to be measured on the part.
struct DirectCheck {
  Source reading;
  MachineAxis axis = MachineAxis::x;  ///< of one along an axis; others are measured straight
  /// At the step, rounded so that keeping to them keeps the reading; empty where it has none.
  std::optional<Coordinate> least;
  std::optional<Coordinate> greatest;

  bool operator==(const DirectCheck&) const = default;
};

/// What makes an axis so tight, and what would ease it.
struct ClosenessAdvice {
  MachineAxis axis = MachineAxis::x;
  std::vector<Id> places;  ///< that have to be held so close, as people count
  Length plusMinus;
  std::vector<Source> readings;  ///< that ask for it
  bool eased = false;            ///< measuring those on the part leaves at least a quarter more
  std::optional<Length> then;    ///< eased: what is left anywhere; empty where nothing limits it

  bool operator==(const ClosenessAdvice&) const = default;
};

/// How close each coordinate of a setup has to be so that every reading of the print holds, in the
/// directions of the machine.
struct Closeness {
  std::vector<ClosenessBand> bands;  ///< the tightest first, X before Y
  std::vector<BetterAim> aims;       ///< in order of places
  std::vector<DirectCheck> directChecks;
  std::vector<ClosenessAdvice> advice;

  bool operator==(const Closeness&) const = default;
};

/// The budgets along both axes of the table (`budgetAlong`), less what rounding each figure to the
/// step costs, for the places of the table. A place that no toleranced reading limits is left out,
/// as is one that zero is set on. Where measuring the readings that hold the tightest place leaves
/// at least a quarter more, `advice` says so. Requires: `table` is that of the
/// work.
/// Errors: as `budgetAlong`. Costs two budgets an axis.
Result<Closeness> closenessOf(const WorkAt& work, const SetupTable& table);

/// What of it a setup's sheet shows: all when it is wanted; else only what has to be measured on
/// the part, and nothing where the document does not say how good the machine is.
Result<std::optional<Closeness>> closenessOnSheet(const WorkAt& work, const SetupTable& table,
                                                  bool wanted);

}  // namespace inchwright
