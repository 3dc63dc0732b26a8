#pragma once

#include <optional>
#include <string_view>

#include "core/measure/limits.h"
#include "core/part/job.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// From one place to another along an axis of the part, as far as both were measured from one zero
/// (a place that the zero is on counts as 0): each coordinate ± its instrument's error. Where they
/// were measured in several setups the last that has both; empty where none has. A at 0.4985 and B
/// at 1.6870, each ±0.0005: 1.1875 to 1.1895.
std::optional<SizeLimits> foundDistance(const Job& job, const Part& part, const Solution& solution,
                                        Axis axis, std::string_view from, std::string_view to);

}  // namespace inchwright
