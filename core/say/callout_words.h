#pragma once

#include <string>

#include "core/lines/lines.h"

namespace inchwright {

/// What was understood of a feature's line beyond its own size, for people to look at before they
/// take it: `ream, 3/8 deep; counterbore 3/8, 3/16 deep; the print speaks of 4`. In UK English.
std::string calloutWords(const FeatureLine& line);

/// Two callouts that fit what is being traced, to show in an empty line: of a hole `1/4 ream` and
/// `C'BORE 3/8 x 3/16 DEEP`. `unit` is the print's.
std::string calloutExamples(FeatureKind kind, Unit unit);

}  // namespace inchwright
