#pragma once

#include <string>

#include "core/lines/lines.h"

namespace inchwright {

/// What was understood of a feature's line beyond its own size, for people to look at before they
/// take it: `ream, 3/8 deep; counterbore 3/8, 3/16 deep; the print speaks of 4`. In UK English.
std::string calloutWords(const FeatureLine& line);

}  // namespace inchwright
