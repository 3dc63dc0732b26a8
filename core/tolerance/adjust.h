#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// One difference that was read or measured: position(to) − position(from) = value, in ticks.
struct Observation {
  std::string label;
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

  std::vector<Place> places;        ///< all that are joined to a fixed one, fixed ones included
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

/// Weighted least squares of differences between nodes, of which `fixed` ones keep their values
/// (Ghilani and Wolf, Adjustment Computations: differential levelling). Errors: `badRequest` for a
/// deviation that is not above 0 or without a fixed node; `unsolvable` when an observation is
/// joined to no fixed node.
Result<Adjustment> adjustDifferences(std::uint32_t nodes, const std::vector<Observation>& observed,
                                     const std::vector<std::pair<std::uint32_t, double>>& fixed);

/// What is observed along an axis of a part: every reading but reference ones, at the middle of its
/// limits, its width taken as six standard deviations; understandings, shapes and basic figures as
/// all but exact (a tenth of the closest reading's deviation). Middles and equal spaces take no
/// part.
std::vector<Observation> observationsOf(const Part& part, const ToleranceNetwork& network);

}  // namespace inchwright
