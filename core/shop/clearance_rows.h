#pragma once

#include <span>

#include "core/measure/length.h"

namespace inchwright {

/// ASME B18.2.8 for inch screws, a customary US shop chart, ISO 273, British Association custom.
enum class ClearanceStandard { asme, shopChart, iso, ba };

/// A row of the table of clearance holes as it stands in the source: a 1/4 in screw, `normal`,
/// drill `9/32`, hole 0.2812 in.
struct ClearanceRow {
  ClearanceStandard standard = ClearanceStandard::asme;
  const char* thread = "";  ///< in full where the screw goes by that, else empty
  Length major;             ///< else its outside diameter
  const char* fit = "";
  const char* drill = "";
  Length hole;
  const char* sourceKeys = "";
};

std::span<const ClearanceRow> clearanceRows();

}  // namespace inchwright
