#pragma once

#include "core/lines/lines.h"

namespace inchwright {

/// Reads the line of a turned feature behind its id: its edge or two edges, then what it is.
/// Errors: `badText` with the byte offset in `tail`.
Result<FeatureLine> readTurnedLine(Feature feature, std::string_view tail, Unit unit);

}  // namespace inchwright
