#pragma once

#include <span>
#include <string_view>

#include "core/measure/length.h"

namespace inchwright {

/// A row of the tables of ANSI B4.1 as it stands in the source: sizes in hundredths of an inch,
/// limits in hundredths of a thousandth.
struct InchFitRow {
  const char* fit = "";
  int over = 0;
  int upTo = 0;
  int holeUpper = 0;
  int shaftUpper = 0;
  int shaftLower = 0;
  const char* sourceKeys = "";
};

/// Fits in the order RC, LC, LT, LN, FN, by number, then by size.
std::span<const InchFitRow> inchFitRows();

/// Whether the limits of a class of ISO 286 for a size stand here from memory.
bool isIsoFromMemory(std::string_view name, Length size);

}  // namespace inchwright
