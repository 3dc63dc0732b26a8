#pragma once

#include <vector>

#include "core/plan/table.h"

namespace inchwright {

/// What to mind about a setup, in the order in which a sheet says it: along X, along Y, of the
/// stock, of the finder, of figures that a careful reader would ask about. A setup without a zero
/// along Y: `zeroAssumed`, or `noZero` where nothing is placed there.
std::vector<SetupWarning> setupWarnings(const WorkAt& work, const FinderTip& tip);

}  // namespace inchwright
