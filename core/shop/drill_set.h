#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/shop/drills.h"

namespace inchwright {

/// Drills somebody owns, as a stand of them is called: `fractional 1/16 to 1/2`, `number`, `number
/// 1 to 60`, `letter`, `letter A to N`, `metric 1 to 10 by 0.1`, or a single one: `#7`, `F`, `5.1
/// mm`, `15/64`, `.205`. Bare figures are inches, behind `metric` millimetres.
struct DrillSet {
  std::string text;           ///< as given, unchanged
  std::vector<Drill> drills;  ///< smallest first, never empty

  bool operator==(const DrillSet&) const = default;
};

/// The most drills one text may stand for.
inline constexpr std::size_t kMostDrillsInSet = 2000;

/// Reads such a text; capitals and blanks do not matter. Without bounds a series is the whole one
/// of drills.h; with bounds and no `by` its drills that lie between, both included. Sizes are
/// exact, and one that is in no series counts to the series of its unit.
///
///     "fractional 1/16 to 1/2" -> 1/16, 5/64 … 1/2 (29 drills)
///
/// Errors: `badText` with what was not understood; a single figure over 3 1/2 in is refused, since
/// whoever writes `7` means `#7` or `7 mm`. `tooLarge` beyond kMostDrillsInSet.
Result<DrillSet> readDrillSet(std::string_view text);

}  // namespace inchwright
