#pragma once

#include <string>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// The reading's id, or a name such as `A midway F–K` or `ring D`.
std::string labelOf(const Part& part, const Source& source);
std::vector<std::string> labelsOf(const Part& part, const std::vector<Source>& sources);

}  // namespace inchwright
