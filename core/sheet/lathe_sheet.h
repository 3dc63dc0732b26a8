#pragma once

#include <vector>

#include "core/sheet/draw_list.h"
#include "core/sheet/tape_up.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// The sheet of one setup in the lathe: the part in half section as it lies, chuck at the left and
/// drawn to what it hides; lengths and diameters as the readouts show them, with a box to tick; the
/// cuts in order; the cautions of the lathe. In millimetres, as `tapeUpSheet`.
/// Requires: `work` is of this part.
std::vector<Page> latheSheet(const Job& job, const Part& part, const Solution& solution,
                             const LatheWork& work, const Lathe& lathe,
                             const SheetOptions& options);

}  // namespace inchwright
