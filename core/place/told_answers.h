#pragma once

#include <array>

#include "core/place/part_plane.h"
#include "core/place/placing.h"

namespace inchwright {

/// Puts into `out.answers` what came out in several ways in a plane, each once: a place or a group
/// taken by the tracing or in doubt, and a line in doubt. C at 2 from A and 2 from B: both points;
/// a line that touches two holes, untraced: where each of its four ways passes one of them.
/// Requires: `outcome` is that of `plane`, and `out.positions` holds what it placed.
void tellAnswers(const Part& part, const std::array<AxisSystem, 3>& systems, const PartPlane& plane,
                 const PlaneOutcome& outcome, PlacedPart& out);

}  // namespace inchwright
