#pragma once

#include <optional>
#include <string_view>

#include "core/base/result.h"
#include "core/measure/limits.h"
#include "core/part/job.h"
#include "core/shop/threads.h"

namespace inchwright {

/// A diameter (or a slot's width) as the print wants it.
struct DrawnSize {
  Length nominal;
  SizeLimits limits;

  bool operator==(const DrawnSize&) const = default;
};

/// What a pin or gauge may find in a tapped hole: from full thread, as deep as tap drills are
/// reckoned by, to half of it, which strips (common practice, no source). 1/4-20 UNC: .1850 to
/// .2175. Empty where it is out of range.
std::optional<SizeLimits> tappedLimits(const Thread& thread);

/// The size of a place: of a hole by its `limits` where it has them (`H7`, `RC4`, `0.2490/0.2493`),
/// else by the tolerance lettered with its diameter, else the title block's; of a screw its
/// outside diameter, of a tapped hole what is left between full thread and half of it. A hole `1/4`
/// limits H7 → .2500 to .2506. Errors: `notFound` when the part has no such place, `badRequest`
/// when it has no size; as `limitsOfClass`; `outOfRange`.
Result<DrawnSize> drawnSize(const Part& part, std::string_view place);

/// Why one side of what goes together can't be what it is said to be: a hole that is none, or a
/// shaft that is a hole. Taken the wrong way round the clearance would have the wrong sign. Empty
/// for a size as text, and for what the job does not have.
std::optional<Error> sideFault(const Job& job, const SizeOrPlace& side, bool hole);

}  // namespace inchwright
