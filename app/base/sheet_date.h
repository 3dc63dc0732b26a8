#pragma once

#include <string>

namespace inchwright::app {

/// The date to stand on a sheet, `2026-11-25`: today by the local clock, or the day that the
/// environment's SOURCE_DATE_EPOCH names (UTC), so that a build can be repeated to the byte.
std::string sheetDate();

}  // namespace inchwright::app
