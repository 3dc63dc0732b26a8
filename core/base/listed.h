#pragma once

#include <string>
#include <vector>

namespace inchwright {

/// `A`, `B`, `C` with `; ` between → `A; B; C`; nothing of an empty list.
std::string joined(const std::vector<std::string>& names, const std::string& between);

/// As a sentence has them: `A, B and C`.
std::string listed(const std::vector<std::string>& names);

}  // namespace inchwright
