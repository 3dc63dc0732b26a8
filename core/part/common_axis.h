#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// The axis along which two places can both be measured: the context's if they share it, else the
/// first they share. Errors: `notFound`, `badRequest` when they share none.
Result<Axis> axisBetween(const Part& part, std::string_view from, std::string_view to, Axis wanted);

/// The axis that a reading between two places is likely along: as `axisBetween`, but where both are
/// traced, in line along that axis and well apart along another they share, it is the other, since
/// no print letters a distance of nothing.
Result<Axis> axisOfReading(const Part& part, std::string_view from, std::string_view to,
                           Axis wanted);

}  // namespace inchwright
