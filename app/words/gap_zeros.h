#pragma once

#include <string>
#include <vector>

#include "app/words/job_file.h"
#include "core/plan/gap.h"

namespace inchwright::app {

/// The zeros that `--from-zero` names for the parts a gap measures in: `SETUP` for all of them, or
/// `PART=SETUP` for some, separated by commas. Errors: `badRequest`; `notFound` for a part that
/// lacks its setup. The zeros stand only as long as `opened`.
Result<std::vector<MadePart>> gapZeros(const std::string& named, const OpenedJob& opened,
                                       const Gap& gap);

/// What a gap made from them is called: `from zero of Frame 1, Arbor 2, the rest as drawn`.
std::string titleOf(const std::vector<MadePart>& zeros, const Gap& gap);

}  // namespace inchwright::app
