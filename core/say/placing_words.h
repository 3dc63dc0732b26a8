#pragma once

#include <string>

#include "core/solution/solution.h"

namespace inchwright {

/// Two coordinates to a tenth of a thou: `(2.0000, 2.0729)`.
std::string pointText(const std::array<Length, 2>& at);
/// An angle as shown, to a hundredth of a degree at most: `55°`, `33.69°`.
std::string degreesText(double degrees);
/// A kind of understanding in a sentence: `in line`, `tangent`.
std::string kindWords(UnderstandingKind kind);

/// What placing has to ask: `C may lie at (1.0000, 1.5000) or (1.0000, 0.0000); say which way round
/// it lies, or on which side`. Coordinates from the outer sides at the lower ends, at a step of a
/// ten-thousandth. Requires: `doubt.placing` is not none.
std::string placingText(const Part& part, const Solution& solution, const Doubt& doubt);

/// What one reading of a contradiction would have to be, and why it is suspected: `5/8 from A
/// straight to C may be 7/8: looks like 7/8`.
std::string suspectText(const Part& part, const CentreSuspect& suspect);
/// The last part of it; empty where nothing but the sum speaks against the reading.
std::string reasonText(const Part& part, const CentreSuspect& suspect);

/// How a place that is held half can still move: `it can still swing about A`.
std::string freeText(const FreePlace& free);

}  // namespace inchwright
