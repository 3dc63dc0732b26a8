#pragma once

#include <cstddef>

#include "core/base/result.h"
#include "core/part/job.h"
#include "core/place/beyond_chains.h"

namespace inchwright {

/// What has to be understood for one of several answers to be the one: C at 2 from A and 2 from B,
/// the upper answer, gives `way_round A B C anticlockwise`; where no two places tell the answers
/// apart, `beside` of a line or edge. Found by placing the part with each: only what leads to that
/// very answer, to 100 ticks, is taken.
///
/// Requires: `several` is among the answers of this part, and `index` among its own. Errors:
/// `notFound` where nothing that can be said in one line tells it from the others.
/// Cost: a placing of the part for each of a few dozen ways to say it, at most.
Result<Understanding> understandingFor(const Part& part, const SeveralAnswers& several,
                                       std::size_t index);

}  // namespace inchwright
