#pragma once

#include <string>
#include <vector>

#include "core/measure/writing.h"
#include "core/plan/milled_cuts.h"

namespace inchwright {

/// How one slot or pocket is milled, in the order of work, a line a thing to do, in UK English:
/// `S: end mill 1/4, at each depth in turn: 0.1250, 0.2500`, `S down the middle: X +0.6250 to
/// +1.3750, Y +0.5000`, what to measure and what stays.
std::vector<std::string> milledWords(const MilledCut& cut, const Step& shown);

/// The same without the runs, for where each run stands by itself.
std::vector<std::string> milledNotes(const MilledCut& cut, const Step& shown);

/// A run's figures: `X +0.6250 to +1.3750, Y +0.5000`.
std::string runWords(const CutterRun& run);
/// What a run is for: `down the middle`.
std::string whatWords(CutterRun::What what);
/// The same with what is to be said of its cut: `clearing, IN DISPUTE`.
std::string purposeOf(const MilledCut& cut, const CutterRun& run);

}  // namespace inchwright
