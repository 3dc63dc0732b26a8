#pragma once

#include <array>
#include <vector>

#include "core/chain/axis_system.h"
#include "core/place/placing.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Places beyond the chains what they leave loose, and puts it into the positions and the statuses
/// of a solution that holds the chains' own: a reading that placed or checked something agrees, or
/// stands alone, or clashes.
/// Requires: `systems` are those of the part. Errors: `outOfRange`.
Result<PlacedPart> placeBeyondChains(const Part& part, const std::array<AxisSystem, 3>& systems,
                                     Solution& solution);

/// What placing has to ask the print about: answers taken or in doubt, readings that don't meet,
/// what is weakly held.
void addPlacingDoubts(const Part& part, const PlacedPart& placed, std::vector<Doubt>& doubts);

/// The key of the doubt about several answers: `question::C`.
DoubtKey keyOf(const SeveralAnswers& several);

/// What placing finds in a part, without the rest of its solution. Errors: as `solve`.
Result<PlacedPart> placedFacts(const Part& part);

}  // namespace inchwright
