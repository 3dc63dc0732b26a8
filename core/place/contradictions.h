#pragma once

#include <cstdint>
#include <set>

#include "core/part/job.h"
#include "core/place/beyond_chains.h"
#include "core/place/part_plane.h"

namespace inchwright {

/// Puts into `out` what the spare rows of a plane check and where its readings contradict each
/// other: `clashes`, `used`, `checked`. With `findWouldBe` also what each member would have to be,
/// by solving anew with that figure open.
/// Requires: `outcome` is that of `plane`, made with the chains' figures where it has spare rows.
void tellContradictions(const Part& part, const PartPlane& plane, const PlaneOutcome& outcome,
                        bool findWouldBe, BeyondChains& out);

/// Variables of the plane that were placed by rows which take part in a contradiction.
std::set<std::uint32_t> variablesBehindClashes(const PartPlane& plane, const PlaneOutcome& outcome);

}  // namespace inchwright
