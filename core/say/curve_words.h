#pragma once

#include <string>

#include "core/plan/curve_cuts.h"

namespace inchwright {

/// What stands in the way of cutting a curve so: `E: the cutter is too large for this hollow`.
std::string curveFindingWords(const CurveFinding& finding);

}  // namespace inchwright
