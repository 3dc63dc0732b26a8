#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/measure/length.h"

namespace inchwright {

/// Unified coarse and fine; British Association; Whitworth; British Standard Fine; model
/// engineers'; British Standard Brass (26 to the inch); metric coarse.
enum class ThreadSeries { unc, unf, ba, bsw, bsf, me, brass, metric };

/// A screw thread and the drill its tapped hole starts from.
struct Thread {
  std::string name;  ///< in full: `1/4-20 UNC`, `#8-32 UNC`, `2 BA`, `3/16-40 ME`, `M3`
  ThreadSeries series = ThreadSeries::unc;
  Length major;          ///< outside diameter, exact
  Rational pitch;        ///< ticks; exact, also where threads to the inch give no whole tick
  int perInch = 0;       ///< threads to the inch; 0 for BA and metric
  std::string tapDrill;  ///< `#7`, `5/16`, `5.1 mm`
  Length tapDrillDiameter;
  std::string otherTapDrills;  ///< as the sources give them, with the source; may be empty
  std::string source;          ///< the keys of the sources the row was read in

  bool operator==(const Thread&) const = default;
};

/// Every thread known, in the order of `ThreadSeries`, then by size.
const std::vector<Thread>& threads();

/// What prints write after a size: `UNC`, `BA` … empty for metric.
std::string_view nameOf(ThreadSeries series);

/// What stands behind a series: the standard or custom, and where it was read.
std::string_view sourceOf(ThreadSeries series);

/// Reads a thread as prints name it: `1/4-20`, `1/4-20 UNC`, `1/4 UNC`, `1/4 x 40 ME`, `3/16-40ME`,
/// `#8-32`, `8-32 UNC`, `No. 8-32`, `.250-20`, `2 BA`, `2BA`, `No 2 BA`, `1/4 BSW`, `1/4 Whit`,
/// `M3`, `M3x0.5`, `m3 × 0,5`. Capitals and spaces do not matter; a class behind it (`-2B`, `6H`)
/// is allowed and passed over.
///
/// A name without a series is taken when only one series has that size and pitch, or when UNC or
/// UNF has it (the customary meaning of a bare inch name). Errors: `badText` when it is no thread
/// name, `notFound` when it is one that the table lacks, and says the nearest by size.
Result<Thread> threadNamed(std::string_view text);

}  // namespace inchwright
