#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"

namespace inchwright {

/// The least and greatest that a size may be, both included.
struct SizeLimits {
  Length least;
  Length greatest;

  bool operator==(const SizeLimits&) const = default;
};

/// A lettered size with its tolerance about it: `.500` with +.002 −0 is .500 to .502. Exact;
/// without a tolerance both are the size itself. Empty on overflow.
std::optional<SizeLimits> limitsOf(const Lettered& size, const std::optional<Tolerance>& tolerance);

/// The least and greatest size that are still right, at a step.
struct ShownLimits {
  Shown low;
  Shown high;
};

/// Limits as shown at a step, in the step's unit: the lower one rounded up and the upper one down,
/// so that converting them to another unit never lets in a size that the print does not. A limit
/// that is a whole number of steps stays as it is. Exact.
///
/// Requires: both are positions or sizes a reader or solver produces (|ticks| below 2^62).
/// Errors: `badRequest` when low is above high; `unsolvable` when no whole number of steps lies
/// between them: the step is too coarse to state them.
Result<ShownLimits> showLimitsInwards(Length low, Length high, const Step& step);

}  // namespace inchwright
