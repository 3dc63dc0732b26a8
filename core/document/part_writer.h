#pragma once

#include <string>

#include "core/part/job.h"

namespace inchwright {

/// Appends a part as one entry of `parts`, its lines indented by `indent` blanks. Features,
/// readings and understandings stand on one line each, so that a diff shows one line a change.
void writePart(std::string& out, const Part& part, int indent);
/// A part that is the other hand of `base`: only what differs from that part, mirrored.
void writeOppositePart(std::string& out, const Part& part, const Part& base, int indent);

}  // namespace inchwright
