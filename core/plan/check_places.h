#pragma once

#include <vector>

#include "core/plan/setup_frame.h"

namespace inchwright {

/// Two to four places to drive to and look before cutting: those the setup names, else zero itself,
/// the corner of the work as it is now that lies farthest from zero, and the two rows that lie
/// farthest from zero and from each other. Always the same ones for the same table.
/// Errors: `notFound` or `unsolvable` for a place the setup names, `outOfRange`.
Result<std::vector<CheckPlace>> checkPlaces(const Part& part, const Solution& solution,
                                            const Setup& setup, const SetupFrame& frame,
                                            const std::vector<TableRow>& rows, const Step& step);

}  // namespace inchwright
