#pragma once

#include <vector>

#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::app {

/// Places that the tracing of a face says are likely to be understood so, and that nothing relates
/// yet: in line or midway along an axis, or concentric; empty when there are none, and for other
/// kinds. The first such in the part's order. Midway names the one in the middle first. What lies
/// within one of `declined` is passed over.
///
/// An offer only, for a print drawn to scale: whoever sees it there takes it. Time n squared.
std::vector<Id> suggested(const Part& part, const Solution& solution, Face face,
                          UnderstandingKind kind, Axis axis,
                          const std::vector<std::vector<Id>>& declined = {});

}  // namespace inchwright::app
