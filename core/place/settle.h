#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/place/equations.h"

namespace inchwright {

struct SettleOptions {
  int mostSteps = 60;
  double enough = 1e-13;         ///< inches: a greatest residual below it ends the search
  std::uint32_t denseUpTo = 60;  ///< variables; beyond, the normal equations are sparse
  double firstDamping = 1e-4;    ///< of the greatest diagonal
  /// What a variable weighs at least in the damping, of what the heaviest does. At 1 all weigh
  /// alike: of many answers one near the start is found, also where rows hardly feel a variable.
  double leastWeight = 1e-12;

  /// Errors: `badRequest`, naming the member that makes no sense.
  Result<Done> isValid() const;
};

enum class SettleOutcome : std::uint8_t {
  settled,  ///< all residuals are within `enough`, or as near as doubles go
  stalled,  ///< at a least sum of squares that is not 0: the rows do not meet there
  unended,  ///< `mostSteps` were taken
};

struct SettleSummary {
  SettleOutcome outcome = SettleOutcome::unended;
  int steps = 0;
  double residual = 0;  ///< the greatest, in inches
};

/// Moves the `open` variables so that the `rows` hold, by damped least squares (Levenberg 1944,
/// Marquardt 1963; the damping after H. B. Nielsen 1999), from where they are. The others stay.
///
/// The variables are left at the best point met, whatever the outcome; never NaN. As many rows as
/// variables, fewer or more. Cost: dense below `denseUpTo`, else by sparse Cholesky.
/// Requires: `options.isValid()`, all variables finite.
SettleSummary settle(const Equations& equations, std::span<const std::uint32_t> rows,
                     std::span<const std::uint32_t> open, std::span<double> variables,
                     const SettleOptions& options = {});

/// The greatest residual of some rows, in inches.
double greatestResidual(const Equations& equations, std::span<const std::uint32_t> rows,
                        std::span<const double> variables);

}  // namespace inchwright
