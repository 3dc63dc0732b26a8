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

/// The least and greatest that something may come out at, as shown at a step: the lower end rounded
/// down and the upper one up, so that no worst case looks better than it is. Exact: 2.984375 to
/// 3.015625 in at 0.0005 come out as `2.9840` and `3.0160`.
///
/// Requires: both are within 2^62 ticks.
ShownLimits showOutwards(Length low, Length high, const Step& step);

/// The step, or as much finer a one by tens as it takes, at which the figures shown bear out how a
/// span lies to its limits: its ends outwards, the limits to nearest. So at a step of 0.0005 an
/// upper end of 3.0154 against a greatest of 3.0152, which would be 3.0155 against 3.0150, stays
/// there, and against one of 3.0153, which would be 3.0155 too, is shown at 0.00005. Ends where a
/// step can't be divided any more; then the figures may look alike.
Step stepThatTells(Length low, Length high, std::optional<Length> least,
                   std::optional<Length> greatest, const Step& step);

}  // namespace inchwright
