#pragma once

#include <optional>

#include "core/plan/why.h"

namespace inchwright {

/// How a place that was solved for is held, as the readout of a setup shows it. C at 2 from A and
/// from B, which lie 3 apart: ends A, 41.41°, and B, 138.59°, and where the other crossing lies.
/// Empty for a place that chains place, or that is not in the plane of the setup's face.
std::optional<WhyHeld> heldAt(const WorkAt& work, const Id& place);

}  // namespace inchwright
