#pragma once

#include <string>

#include "core/making/hole_plan.h"
#include "core/part/made.h"

namespace inchwright {

/// An operation as the document's `made` names it: by its kind and the size it cuts, `drill 15/64`,
/// `ream 6 mm`, `tap 1/4-20 UNC`. The same in both Englishes and on any readout.
std::string doneName(const HoleStep& step);

/// Whether an operation is among those done at a place: by kind and diameter, however its tool was
/// called when it was ticked. A tool without a diameter goes by its name.
bool isDone(const MadePlace& made, const HoleStep& step);

/// The place with the operation ticked, or not any more.
MadePlace withDone(MadePlace made, const HoleStep& step, bool done);

}  // namespace inchwright
