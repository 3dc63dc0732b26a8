#pragma once

#include <string>
#include <utility>
#include <vector>

namespace inchwright {

/// Members of a document object that this version does not know: name and JSON text, in the order
/// they stood. They are written back behind the known ones.
using Extra = std::vector<std::pair<std::string, std::string>>;

}  // namespace inchwright
