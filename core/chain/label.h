#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// The reading's id, or a name such as `A midway F–K` or `ring D`.
std::string labelOf(const Part& part, const Source& source);

}  // namespace inchwright
