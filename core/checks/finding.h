#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/making/hole_plan.h"
#include "core/part/holding.h"
#include "core/part/setup.h"

namespace inchwright {

/// What may go wrong once cutting begins.
enum class FindingCode {
  parallel,
  jaw,
  stop,
  clamp,
  clearOf,
  viceBed,
  breaksInto,
  breaksOut,
  thinWall,
  breaksThrough,
  cutterTooBig,
  cornerTooTight,
  tooDeep,
  noTool,
  drillAtReamSize,
  grip,
  travel,
  headroom,
  stockTooSmall
};
std::string_view nameOf(FindingCode code);  ///< `parallel`, `vice_bed` …

/// One thing found before cutting, as facts; core/say words it.
struct Finding {
  FindingCode code = FindingCode::noTool;
  std::vector<Id> places;    ///< what it is about; empty where it has no id (grip, a piece)
  std::optional<Length> by;  ///< how much nearer, deeper or shorter than is right; above 0
  std::string setup;         ///< empty where it holds in any

  // What else is to be said, as far as it applies.
  std::string tool;                  ///< what meets it, as in the plan
  std::optional<std::size_t> which;  ///< of the setup's parallels, clamps, clear_of
  std::optional<Jaw> jaw;
  std::optional<Side> side;        ///< of the part: broken out of, or at the jaw or stop
  std::optional<Length> shift;     ///< of a parallel, away from its jaw; below 0: towards it
  bool nowToo = false;             ///< also of the stock as it is now
  std::optional<Axis> axis;        ///< of the machine: `travel`; of the part: a piece, or from jaw
                                   ///< to jaw of work that the vice does not open so far for
  std::optional<Length> wanted;    ///< the room, grip or depth that is wanted
  std::optional<Length> had;       ///< and what there is
  std::optional<Lacking> lacking;  ///< `no_tool`
  std::string piece;

  bool operator==(const Finding&) const = default;
};

}  // namespace inchwright
