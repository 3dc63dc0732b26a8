#pragma once

#include <string>
#include <vector>

#include "core/kit/difference.h"

namespace inchwright {

/// In what two parts that look alike differ, a line each: `A: diameter 1/4 in Front click, 9/32 in
/// Back click`; last what is alike.
std::vector<std::string> differenceLines(const Difference& found, const Step& step);
/// For a warning on the sheet of either: `like the front cock, but: H is 5/16, not 9/32`.
std::string mistakenWarning(const Difference& found, const Step& step);

}  // namespace inchwright
