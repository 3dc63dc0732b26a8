#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/plan/milled_work.h"

namespace inchwright {

/// Why one kind of work comes before another, in that order: the rules by which a setup is worked,
/// so that each tool is fitted once and nothing cut is in the way of what comes. `core/say` words
/// them (common practice, no source).
enum class OrderRule {
  marks,       ///< points are marked before there is a chip on the work
  roughFaces,  ///< a spotface gives the drill a flat to start on
  spots,       ///< all places while nothing is cut yet: what is wrong shows before it costs
  drills,      ///< from the smallest up, so that a pilot always comes before what it is for
  seats,       ///< while the drilled hole still guides their pilot
  bars,        ///< a bore goes where the table stands, before a reamer follows it
  reamers,     ///< to size once nothing more is drilled beside them
  taps,        ///< last of the holes, when their chips are out of the way
  presses,     ///< bushes and plugs for holes that came out wrong
  inBushes,    ///< and what is cut in them once they are in
  slots,       ///< when every drill has had whole metal about it
  pockets,     ///< likewise, and after the slots that run into them
  edges,       ///< when no tool raises another burr
  elsewhere    ///< what is spotted from a mate or drilled on assembly, once that is there
};
std::string_view nameOf(OrderRule rule);  ///< `spots`, `drills` …

/// The rule that says where a step stands, and where its kind of work does in a hole of its own.
OrderRule orderOf(const HoleStep& step);
OrderRule orderOfOp(Op op);

/// A tool of a setup and what it is fitted for.
struct ToolUse {
  OrderRule rule = OrderRule::drills;  ///< why it stands where it does
  Op op = Op::drill;
  std::string tool;
  std::optional<Length> size;
  bool inBush = false;     ///< in what was pressed in
  bool elsewhere = false;  ///< not by the coordinates of this setup
  std::vector<Id> places;

  bool operator==(const ToolUse&) const = default;
};

/// The tools of all holes of a face and of its slots and pockets in the order of use, so that each
/// is fitted once: by `OrderRule`. Boring cuts at one hole count as one fitting.
std::vector<ToolUse> toolsInOrder(const std::vector<PlannedHole>& holes,
                                  const std::vector<PlannedSlot>& slots, Face face);

}  // namespace inchwright
