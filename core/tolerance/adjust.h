#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// One difference that was read or measured: position(to) − position(from) = value, in ticks.
struct Observation {
  Source source;  ///< a reading or the pitch of a row
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  double value = 0;
  double deviation = 1;  ///< standard deviation, ticks; always greater than 0

  bool operator==(const Observation&) const = default;
};

/// What a least-squares adjustment makes of differences. All of it is numeric, and no print
/// dimension.
struct Adjustment {
  struct Place {
    std::uint32_t node = 0;
    double value = 0;      ///< ticks
    double deviation = 0;  ///< standard deviation from the observations' own, ticks
  };
  struct Residual {
    double value = 0;       ///< adjusted less observed, ticks
    double normalised = 0;  ///< over its own standard deviation; 0 where nothing checks it
  };

  std::vector<Place> places;        ///< ascending
  std::vector<Residual> residuals;  ///< by observation
  double squares = 0;               ///< Σ (residual / deviation)²
  int freedom = 0;                  ///< observations beyond what is needed
  /// √(squares / freedom): near 1 when the observations are as good as was said; 0 without freedom.
  double s0 = 0;
  /// The share of such sums of squares that would be greater by chance; empty without freedom.
  std::optional<double> chance;
  /// The observation with the largest normalised residual, when that is beyond 3.29 (one in a
  /// thousand) and at least two are to spare, so that it can be told from its neighbours.
  std::optional<std::size_t> blunder;
};

/// Σ factor · value(node) = sum, whatever is observed: a middle, equal spaces.
struct Condition {
  std::vector<std::pair<std::uint32_t, std::int32_t>> terms;
  Rational sum;  ///< ticks
};

/// Weighted least squares of differences between nodes, of which `fixed` ones keep their values and
/// `conditions` hold exactly (Ghilani and Wolf, Adjustment Computations: differential levelling).
/// `places` are those nodes that are observed, fixed or in a condition. Errors: `badRequest` for a
/// deviation that is not above 0 or without a fixed node; `unsolvable` when an observation is
/// joined to no fixed node, or when conditions and fixed nodes contradict each other by over a
/// tick. Nearly linear for chains and trees.
Result<Adjustment> adjustDifferences(std::uint32_t nodes, const std::vector<Observation>& observed,
                                     const std::vector<std::pair<std::uint32_t, double>>& fixed,
                                     const std::vector<Condition>& conditions = {});

/// What to hold and how to weigh.
struct AdjustRequest {
  Id from;  ///< the place that values run from; of an empty one the first by name of a reading
  /// Places that stay where they are, and their positions less that of `from`.
  std::vector<std::pair<Id, Rational>> held;
  /// By the id of a reading, or of a row for its pitch: it counts so many times as much as its
  /// tolerance says. 1 where nothing is said.
  std::map<Id, double> weights;
};

/// An axis of a part, adjusted.
struct AdjustedAxis {
  struct Place {
    Id id;
    double value = 0;      ///< ticks from the place asked for
    double deviation = 0;  ///< ticks; 0 of what is held and what is fixed against it
  };

  Id from;
  std::vector<Place> places;          ///< in order of ids
  std::vector<Observation> observed;  ///< between the groups of `groupRigidly`, not places
  Adjustment result;                  ///< residuals by `observed`
  std::vector<Id> notJoined;          ///< places that nothing joins to what is held
};

/// Adjusts the readings along an axis: every toleranced one but reference ones is observed, at the
/// middle of its limits, its width taken as six standard deviations. Understandings, shapes, basic
/// figures, middles and equal spaces hold exactly. What nothing joins to `from` is left out and
/// named. Errors: as `nodeAlong`; `notFound` for a weight of what is no reading of the axis;
/// `unsolvable` when no reading is joined to `from`, or when what is exact contradicts itself;
/// `badRequest` for a weight that is not above 0.
Result<AdjustedAxis> adjustAxis(const Part& part, const ToleranceNetwork& network,
                                const AdjustRequest& request);

}  // namespace inchwright
