#pragma once

#include <string>

#include "core/part/job.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// A cut as the document's `made` names it, with the figures it was driven to, exact and in a unit
/// of its own: `finish 12.7 x 6.35 mm`. The same at any step and on any readout; other figures make
/// it another cut, which is not done.
std::string doneName(const Cut& cut);

/// Whether a cut is ticked at all that it makes.
bool isCutDone(const Part& part, const std::string& setup, const Cut& cut);

/// The part with the cut ticked, or not any more; what was ticked of it at other figures goes.
Part withCutDone(Part part, const std::string& setup, const Cut& cut, bool done);

}  // namespace inchwright
