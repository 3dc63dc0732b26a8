#pragma once

#include <optional>
#include <string_view>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/shop/threads.h"

namespace inchwright {

/// A thread's name taken apart; the table says whether there is such a thread.
struct ThreadName {
  std::optional<int> gauge;  ///< a whole number that may be a gauge or BA number
  bool gaugeMarked = false;  ///< it was written `#8` or `No. 8`, so it is no size in inches
  bool fraction = false;     ///< written as a fraction: 1/8-40 is no #5-40, though as large
  bool metric = false;       ///< it began with `M`
  Length size;               ///< major diameter as written, exact
  std::optional<int> perInch;
  std::optional<Length> pitch;  ///< metric
  std::optional<ThreadSeries> series;
};

/// Errors: `badText` with the byte offset of the fault.
Result<ThreadName> readThreadName(std::string_view text);

}  // namespace inchwright
