#pragma once

#include <array>

#include "core/chain/axis_system.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Places beyond the chains what they leave loose, and puts it into the positions, the statuses and
/// `beyond` of a solution that holds the chains' own: a reading that placed or checked something
/// agrees, or stands alone, or clashes. `findSuspects`: what each reading of a contradiction would
/// have to be, ranked.
/// Requires: `systems` are those of the part. Errors: `outOfRange`.
Result<Done> placeBeyondChains(const Part& part, const std::array<AxisSystem, 3>& systems,
                               bool findSuspects, Solution& solution);

}  // namespace inchwright
