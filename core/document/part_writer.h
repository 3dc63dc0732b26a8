#pragma once

#include <string>

#include "core/part/job.h"

namespace inchwright {

/// Appends a part as one entry of `parts`, its lines indented by `indent` blanks. Features,
/// readings and understandings stand on one line each, so that a diff shows one line a change.
void writePart(std::string& out, const Part& part, int indent);

}  // namespace inchwright
