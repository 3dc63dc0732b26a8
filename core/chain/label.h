#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// The reading's id, or a name such as `A midway F–K` or `ring D`.
std::string labelOf(const Part& part, const Source& source);

/// The names put together, as `F, K, A` with a separator of choice.
std::string joined(const std::vector<std::string>& names, const std::string& between);

}  // namespace inchwright
