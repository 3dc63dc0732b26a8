#include "core/making/slot_plan.h"

namespace inchwright {

std::optional<SlotPlan> planSlot(const SlotWork& work, const ToolsOwned& tools) {
  const OwnedCutter* best = nullptr;
  for (const OwnedCutter& one : tools.cutters()) {
    const bool fits =
        one.size.value <= work.width && (!work.cutter || one.size.value == *work.cutter);
    if (fits && (!best || one.size.value > best->size.value)) best = &one;
  }
  if (!best) return std::nullopt;
  SlotPlan plan;
  plan.tool = "end mill " + sizeName(best->size.value, best->size.unit);
  plan.size = best->size.value;
  plan.plunges = best->centreCutting.value_or(false);
  plan.opensSides = best->size.value < work.width;
  if (!work.depth || *work.depth <= Length()) return plan;
  const std::int64_t most = best->size.value.ticks() / 2, deep = work.depth->ticks();
  const std::int64_t count = (deep + most - 1) / most;
  for (std::int64_t i = 1; i <= count; ++i) {
    // Rounded the same way every time, so that the last is the full depth.
    plan.passes.push_back(Length::ticks(static_cast<std::int64_t>(Int128{deep} * i / count)));
  }
  return plan;
}

}  // namespace inchwright
