#pragma once

#include <regex>
#include <sstream>
#include <string>

namespace inchwright::test {

/// The first line that names a reading by its id alone, as in `r5 may be 1 1/8`, which nobody finds
/// on a print; empty when there is none. A row of a table may begin with it, with its ends behind.
inline std::string lineWithBareId(const std::string& text) {
  // A fault of the document itself quotes an id as it stands there.
  static const std::regex row(R"(^\s*r\d+  +)"), bare(R"((^|[^\w`])r\d+($|[^\w`]))");
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(std::regex_replace(line, row, ""), bare)) return line;
  }
  return {};
}

}  // namespace inchwright::test
