#pragma once

#include <string>

#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// A figure as lettered, without a diameter sign of its own; names its unit when that is not
/// `shown`: `1/4`, `6 mm` on an inch sheet.
std::string figureText(const Lettered& figure, Unit shown);

/// The size of a step in its own unit: `0.0005`.
std::string stepText(const Step& step);

/// A length at the step: `0.0015`.
std::string atStep(Length length, const Step& step);

/// A figure to set or to see, with its sign; where the step rounded it the exact one stands behind:
/// `-0.1000`, `+0.0390 (exactly 0.0390625)`, `+2.9530 (exactly 75 mm)` where inches have no end.
std::string presetText(const Coordinate& figure, Unit shown);

}  // namespace inchwright
