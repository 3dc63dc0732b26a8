#pragma once

#include <optional>
#include <string>

#include "core/measure/length.h"
#include "core/shop/drills.h"

namespace inchwright {

/// The drill that goes before a reamer or a boring tool, and why.
struct DrillUnder {
  Drill drill;
  Length left;       ///< on the diameter, for the reamer or boring tool to take
  std::string rule;  ///< for people: `1/64 under the reamer, at most 1/32: custom …`

  bool operator==(const DrillUnder&) const = default;
};

/// The largest drill that leaves a reamer enough; never the reamer's own size. Sources differ, so
/// the rule is shown. In inches: at least 1/64 from 1/8 in up, at least 0.005 in below (so does a
/// public trade table for reamers up to 0.170 in). In millimetres: at least 0.1 up to 5 mm, 0.2 up
/// to 20 mm, 0.3 above (an apprentice course). Empty when no drill of the sets leaves at most 1/32
/// in (`not over 1/32 under`, Applied Science for Metal Workers par. 313).
std::optional<DrillUnder> drillUnderReamer(Length reamer, Unit unit, const DrillSets& sets);

/// The largest drill that leaves at least 1/32 in on the diameter for boring. From memory, no
/// source: trade texts leave 0.010 to 0.030 in for the last cuts and rough out below. Empty when
/// no drill is that small. There is no upper limit: a bore may be opened as far as it has to be.
std::optional<DrillUnder> drillUnderBore(Length bore, const DrillSets& sets);

}  // namespace inchwright
