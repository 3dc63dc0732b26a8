#pragma once

#include <string>
#include <vector>

#include "core/plan/setup_frame.h"

namespace inchwright {

/// The tip that finds edges, and whether the machine's profile named it.
struct FinderTip {
  Length diameter;
  std::string text;  ///< `0.200`, with a unit when that is not the table's
  bool assumed = false;
};

FinderTip finderTip(const Machine& machine, Unit shown);

/// How to find zero along both axes of the table and in depth, in words with presets.
///
/// A preset is what the readout must be set to while the tip touches the work as it is now: the
/// spindle stands half the tip outside the side, and the side stands its stock outside the finished
/// one; the sign follows from the way the side faces on the table and the way the readout counts.
/// Presets are exact until shown; where the step rounds one, the exact figure stands beside it.
/// Errors: `outOfRange`, and those of `findZero` for a zero along the depth.
Result<std::vector<TouchOff>> touchOffs(const Part& part, const Solution& solution,
                                        const Setup& setup, const SetupFrame& frame,
                                        const FinderTip& tip, const Step& step);

/// Where zero is along a table axis, in one phrase: `middle of L–R (stock)`, `at F + 1/4 away`.
std::string zeroPhrase(const TableAxis& axis, Unit shown);

}  // namespace inchwright
