#include "core/plan/milled_work.h"

#include <algorithm>

namespace inchwright {
namespace {

/// How deep a cutter goes from the face as it is now; through work a little beyond it.
std::optional<Length> milledDepth(const MilledShape& shape, const WorkBlock& block,
                                  const ToolsOwned& tools) {
  if (shape.depth) return shape.depth->plus(block.stock(shape.face));
  const std::optional<Length> thick = block.sizeNow(axisAcross(shape.face));
  return thick ? thick->plus(tools.marginBelow()) : std::nullopt;
}

}  // namespace

std::vector<PlannedSlot> planSlots(const HolesAsked& asked, const WorkBlock& block,
                                   const ToolsOwned& tools) {
  std::vector<PlannedSlot> planned;
  const std::vector<int>& speeds = asked.job->machine.speeds;
  for (MilledShape& shape : milledShapes(*asked.part, *asked.solution)) {
    if (shape.face != asked.setup->face) continue;
    SlotWork work;
    work.pocket = shape.isPocket;
    work.unit = asked.job->unit;
    work.material = asked.part->material;
    work.through = !shape.depth;
    work.depth = milledDepth(shape, block, tools);
    PlannedSlot& one = planned.emplace_back();
    HolePlan steps;
    if (shape.isPocket) {
      const bool closes = !shape.way.empty();
      if (closes) one.plan = planPocket(work, shape.way, tools, speeds);
      if (closes) steps = stepsOfSlot(work, one.plan);
      if (!closes) steps.notes.push_back(HoleNote::notClosed);
    } else {
      const kind::Slot& slot = *asked.part->feature(shape.id)->as<kind::Slot>();
      work.width = slot.width->value;
      work.close = isClose(*slot.width);
      work.unit = slot.width->unit;
      if (slot.cutter) work.cutter = slot.cutter->value;
      one.plan = planSlot(work, tools, speeds);
      steps = stepsOfSlot(work, one.plan);
    }
    one.id = shape.id;
    one.steps = std::move(steps);
    one.shape = std::move(shape);
  }
  return planned;
}

}  // namespace inchwright
