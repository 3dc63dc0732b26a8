#pragma once

#include <optional>
#include <vector>

#include "core/making/slot_plan.h"
#include "core/plan/hole_work.h"
#include "core/plan/milled_shape.h"

namespace inchwright {

/// A slot or a pocket of the setup's face with how it is milled.
struct PlannedSlot {
  Id id;                         ///< of the shape
  std::optional<SlotPlan> plan;  ///< empty where no cutter owned goes in
  SharedPlan steps;              ///< the same as steps, or what lacks
  MilledShape shape;
};
/// The slots in the order of the features, then the pockets in that of the part's outlines.
std::vector<PlannedSlot> planSlots(const HolesAsked& asked, const WorkBlock& block,
                                   const ToolsOwned& tools);

}  // namespace inchwright
