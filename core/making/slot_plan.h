#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/path.h"
#include "core/making/hole_plan.h"

namespace inchwright {

/// How a slot or a pocket is milled: with which cutter, how it goes in, and how deep pass by pass.
struct SlotPlan {
  std::string tool;  ///< `end mill 1/4`
  Lettered cutter;
  Length size;
  /// Whether the cutter goes straight down; else a hole is drilled at one end first. Where nobody
  /// said whether it cuts over its centre, a hole is drilled.
  bool plunges = false;
  /// Narrower than the slot: down the middle first, then either side, to climb out of nothing.
  bool opensSides = false;
  /// The drill for that hole: the largest owned that stays within the cutter. Empty where the
  /// cutter plunges, or where no drill is small enough.
  std::optional<DrillAtHand> first;
  std::optional<int> speed;    ///< revolutions a minute, a guide
  bool ownSpeed = false;       ///< one that the machine has
  std::vector<Length> passes;  ///< depths from the face as it is now, the last one full depth

  bool operator==(const SlotPlan&) const = default;
};

struct SlotWork {
  bool pocket = false;
  Length width;                  ///< of a slot
  bool close = false;            ///< lettered closer than a fraction: opened up by a smaller cutter
  std::optional<Length> cutter;  ///< the one the print asks for
  std::optional<Length> depth;   ///< from the face as it is now; empty where it is not known
  bool through = false;
  Unit unit = Unit::inch;
  std::string material;
};

/// Whether a width is lettered closer than a fraction: three places or more, or with limits that
/// are tighter than 1/64 either way.
bool isClose(const Lettered& width);

/// The cutter named, else the largest owned that goes in, of a close slot the largest at least 1/64
/// under it; passes of at most half its diameter (from memory), alike within a tick. A cutter that
/// the print names counts as owned where nobody said which are. Empty where none goes in: see the
/// checks.
///
///     1/4 wide, 3/8 deep, all customary cutters -> end mill 1/4 in 3 passes: 1/8, 1/4, 3/8
///     .250 wide -> end mill 15/64 at most, then either side
std::optional<SlotPlan> planSlot(const SlotWork& work, const ToolsOwned& tools,
                                 const std::vector<int>& speeds = {});

/// The same for a pocket by its wall, a closed path in inches followed anticlockwise: the largest
/// owned that its corners' rounds let in; where its corners are square, the largest up to half its
/// width, since it leaves its own radius there (from memory).
std::optional<SlotPlan> planPocket(const SlotWork& work, const std::vector<PathPiece>& wall,
                                   const ToolsOwned& tools, const std::vector<int>& speeds = {});

/// The same as steps, as a hole has them: the drill, then the cutter with its passes. Without a
/// plan, what lacks.
HolePlan stepsOfSlot(const SlotWork& work, const std::optional<SlotPlan>& plan);

}  // namespace inchwright
