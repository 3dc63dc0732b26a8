#pragma once

#include <vector>

#include "core/chain/axis_system.h"
#include "core/solution/solution.h"

namespace inchwright {

/// What stands in doubt, most pressing topics first, then by key. Keys follow from ids alone.
/// Requires: all else in `solution` is filled in; the systems are the part's own.
std::vector<Doubt> doubtsOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                            const Solution& solution);

/// Outer sides in the wrong order or there twice, places outside of them, holes that run over one,
/// into each other or are on a face that no setup has up, figures that are millimetres by all
/// appearance.
void addOrderDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                    const Solution& solution, std::vector<Doubt>& doubts);

/// Sizes of one feature or of the title block that contradict one another.
void addSizeDoubts(const Part& part, const Solution& solution, std::vector<Doubt>& doubts);

/// Members of the part's document that are nearly known ones.
void addMisspelt(const Part& part, std::vector<Doubt>& doubts);

/// What placing beyond the chains has to ask: answers taken or in doubt, readings that don't meet,
/// what is weakly held, lines and understandings that came to nothing.
void addPlacingDoubts(const Part& part, const BeyondChains& beyond, std::vector<Doubt>& doubts);

/// Readings that nothing else checks and the tracing contradicts. The tracing bears witness to a
/// length where most lengths along that axis agree with it, to the order of two places always.
void addTracedDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                     const Solution& solution, std::vector<Doubt>& doubts);

}  // namespace inchwright
