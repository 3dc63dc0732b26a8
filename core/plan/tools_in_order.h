#pragma once

#include <string>
#include <vector>

#include "core/plan/hole_work.h"

namespace inchwright {

/// A tool of a setup and what it is fitted for.
struct ToolUse {
  Op op = Op::drill;
  std::string tool;
  std::optional<Length> size;
  std::vector<Id> places;

  bool operator==(const ToolUse&) const = default;
};

/// The tools of all holes of a face in the order of use, so that each is fitted once: rough faces,
/// then spotting, drills from the smallest up (so a pilot always comes before what it is for),
/// seats while the drilled hole guides them, bars, reamers, taps when the chips are out of the way,
/// edges. Boring cuts at one hole count as one fitting.
std::vector<ToolUse> toolsInOrder(const std::vector<PlannedHole>& holes, Face face);

}  // namespace inchwright
