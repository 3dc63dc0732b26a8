#pragma once

#include <optional>
#include <vector>

#include "core/measure/length.h"
#include "core/part/shop_owned.h"

namespace inchwright {

/// One cut of a boring bar.
struct BoreCut {
  Length dial;  ///< turned from the last setting: half of what the hole grows by where it counts
                ///< the slide, all of it where it counts the diameter or nobody said
  Length size;  ///< of the hole after it
  bool trial = false;

  bool operator==(const BoreCut&) const = default;
};

/// A hole to be opened: from `start`, by its drill's nominal size, to `target`; with limits to
/// anywhere from `low` to `high`.
struct BoreJob {
  Length start;
  Length target;
  std::optional<Length> low;
  std::optional<Length> high;
};

/// The cuts, all whole divisions of the dial, each measured after. The last two take about 0.010 in
/// of the hole between them and are alike within one division (half of what is left, then the other
/// half); what is before them goes in equal cuts of at most 0.050 in (from memory). Where nobody
/// said what the dial counts a trial cut of about 0.010 in stands first.
///
/// Without limits the hole never comes out over the target, and under it by less than the last
/// division; with limits as near to the target as the dial allows within them.
/// Empty when no whole division lies between, or none within the limits.
std::vector<BoreCut> boringCuts(const BoreJob& job, Length division,
                                const std::optional<DialCounts>& dial);

}  // namespace inchwright
