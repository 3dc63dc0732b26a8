#pragma once

#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// What was measured at the machine, as one line that a page at the machine gives back:
///
///     found 1: A x 0.3752 y 0.7498 size 0.2503; D3 size 4.02 mm
///
/// A setup's name, a colon, then places with what was found there: where, as the readout showed it,
/// and the size. `tail` is what stands behind `found`; bare figures are in `unit`. What was known
/// of a place and is not named stays as it was. Errors: `badText` with the byte offset within
/// `tail`; `notFound` for a setup or place.
Result<std::vector<MadePlace>> readFoundLine(const Part& part, std::string_view tail, Unit unit);

}  // namespace inchwright
