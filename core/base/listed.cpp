#include "core/base/listed.h"

namespace inchwright {

std::string joined(const std::vector<std::string>& names, const std::string& between) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) text += (i > 0 ? between : "") + names[i];
  return text;
}

std::string listed(const std::vector<std::string>& names) {
  if (names.size() < 2) return joined(names, "");
  return joined({names.begin(), names.end() - 1}, ", ") + " and " + names.back();
}

}  // namespace inchwright
