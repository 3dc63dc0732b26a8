#pragma once

#include <span>

#include "core/measure/length.h"
#include "core/shop/threads.h"

namespace inchwright {

/// A row of the table of threads as it stands in the source.
struct ThreadRow {
  ThreadSeries series = ThreadSeries::unc;
  const char* size = "";  ///< without the series: `1/4-20`, `2`, `M3`
  Length major;
  int perInch = 0;
  Length pitch;  ///< when `perInch` is 0
  const char* tapDrill = "";
  Length tapDrillDiameter;
  const char* otherTapDrills = "";
  const char* sourceKeys = "";
};

std::span<const ThreadRow> threadRows();

}  // namespace inchwright
