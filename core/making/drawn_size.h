#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/measure/limits.h"
#include "core/part/job.h"

namespace inchwright {

/// A diameter (or a slot's width) as the print wants it.
struct DrawnSize {
  Length nominal;
  SizeLimits limits;

  bool operator==(const DrawnSize&) const = default;
};

/// The size of a place: of a hole by its `limits` where it has them (`H7`, `RC4`, `0.2490/0.2493`),
/// else by the tolerance lettered with its diameter, else the title block's; of a thread its
/// outside diameter, as it stands. A hole `1/4` limits H7 → .2500 to .2506. Errors: `notFound` when
/// the part has no such place, `badRequest` when it has no size; as `limitsOfClass`; `outOfRange`.
Result<DrawnSize> drawnSize(const Part& part, std::string_view place);

}  // namespace inchwright
