#pragma once

#include <string>
#include <vector>

#include "core/plan/table.h"

namespace inchwright {

/// A table and the part it is of. Refers only.
struct TableOfPart {
  const Part& part;
  const SetupTable& table;
};

/// Tables as comma-separated values (RFC 4180: CRLF at line ends, quotes doubled): one heading
/// line, then one line a row, with the part, setup, unit and step on each. In UK English always, so
/// that what reads it need not know which. Of a hole at 1 3/16: `...,A,1.1875,0.5625,...`.
std::string tablesAsCsv(const std::vector<TableOfPart>& tables);

}  // namespace inchwright
