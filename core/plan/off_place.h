#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/plan/budget_from_zero.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// Where a place was to be in the setup it was measured in, and how far it was found from there, as
/// the readout shows both. Empty along an axis where the place has no figure or none was measured.
struct OffPlace {
  std::optional<Coordinate> wantedX;
  std::optional<Coordinate> wantedY;
  std::optional<Length> x;
  std::optional<Length> y;
  bool beyond = false;  ///< by more than its budget from that zero

  bool operator==(const OffPlace&) const = default;
};

/// Looks up places of one part, each setup worked out once. Setups of the lathe and places of
/// another face than the setup's have no figures. Job, part and solution outlive it.
class OffPlaces {
 public:
  OffPlaces(const Job& job, const Part& part, const Solution& solution)
      : job_(job), part_(part), solution_(solution) {}

  /// Found at X 1.2545 where 1.2500 was wanted, budget ±.002 -> x = +.0045, beyond.
  /// Errors: as `workAt` and `WorkAt::coordinate`.
  Result<OffPlace> of(const MadePlace& made);

 private:
  struct SetupSaid {
    WorkAt work;
    std::map<Axis, Budget> budgets;
  };
  Result<const SetupSaid*> saidOf(const Setup& setup);

  const Job& job_;
  const Part& part_;
  const Solution& solution_;
  std::map<std::string, SetupSaid> said_;
};

}  // namespace inchwright
