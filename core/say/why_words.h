#pragma once

#include <string>

#include "core/plan/why.h"

namespace inchwright {

/// What one step of a sum is: its reading, `from zero to L`, `by 2 from A straight
/// to C and 2 from B straight to C`.
std::string stepText(const Part& part, const Why& why, const WhyStep& step);

/// How a place is held, in words and with its figures as the readout shows them: `C is held by 2
/// from A straight to C and 2 from B straight to C: from A (0.5000, 0.7500) 2.0000 at 41.41°, from
/// B (3.5000, 0.7500) 2.0000 at 138.59°. The same readings hold at (2.0000, -0.5730), 2.6458 off;
/// the tracing shows this one.`
std::string heldText(const Part& part, const WhyHeld& held, const Step& step);

}  // namespace inchwright
