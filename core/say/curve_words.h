#pragma once

#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/plan/table.h"

namespace inchwright {

/// How each round and arc of a setup is cut, one paragraph each, and what can't be had so: `D,
/// radius 0.3750: on the rotary table …`. Empty where the setup asks for none.
std::vector<std::string> curveWords(const Part& part, const SetupTable& table, English english);

/// What stands in the way of cutting a curve so: `E: the cutter is too large for this hollow`.
std::string curveFindingWords(const CurveFinding& finding);

/// Degrees of a dial, to a thousandth: `291.738`.
std::string dialText(double degrees);

}  // namespace inchwright
