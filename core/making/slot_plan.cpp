#include "core/making/slot_plan.h"

#include <algorithm>

#include "core/shop/cutting_speeds.h"
#include "core/shop/drill_work.h"

namespace inchwright {
namespace {

/// The largest drill that stays within the slot though it cuts over.
std::optional<DrillAtHand> drillWithin(Length width, const ToolsOwned& tools, Unit unit) {
  std::optional<DrillAtHand> found;
  for (const DrillAtHand& one : tools.drillsFor(unit)) {
    const Length size = one.drill.diameter;
    const std::optional<Length> cut = size.plus(drillOversize(size).greatest);
    if (cut && *cut <= width && (!found || size > found->drill.diameter)) found = one;
  }
  return found;
}

void addPasses(Length depth, SlotPlan& plan) {
  const std::int64_t most = std::max<std::int64_t>(plan.size.ticks() / 2, 1), deep = depth.ticks();
  // A depth of many thousand passes is a slip; the checks say that it is too deep.
  constexpr std::int64_t kMostPasses = 1000;
  const std::int64_t count = std::min((deep + most - 1) / most, kMostPasses);
  for (std::int64_t i = 1; i <= count; ++i) {
    // Rounded the same way every time, so that the last is the full depth.
    plan.passes.push_back(Length::ticks(static_cast<std::int64_t>(Int128{deep} * i / count)));
  }
}

}  // namespace

std::optional<SlotPlan> planSlot(const SlotWork& work, const ToolsOwned& tools,
                                 const std::vector<int>& speeds) {
  const OwnedCutter* best = nullptr;
  for (const OwnedCutter& one : tools.cutters()) {
    const bool fits =
        one.size.value <= work.width && (!work.cutter || one.size.value == *work.cutter);
    if (fits && (!best || one.size.value > best->size.value)) best = &one;
  }
  if (!best) return std::nullopt;
  SlotPlan plan;
  plan.tool = "end mill " + sizeName(best->size.value, best->size.unit);
  plan.cutter = best->size;
  plan.size = best->size.value;
  plan.plunges = best->centreCutting.value_or(false);
  plan.opensSides = best->size.value < work.width;
  if (!plan.plunges) plan.first = drillWithin(work.width, tools, work.unit);
  if (const auto cutting = cuttingSpeedOf(work.material); cutting && plan.size > Length()) {
    plan.speed =
        nearestSpeed(std::max(revolutionsFor(cutting->drillFeetPerMinute, plan.size), 1), speeds);
    plan.ownSpeed = !speeds.empty();
  }
  if (work.depth && *work.depth > Length()) addPasses(*work.depth, plan);
  return plan;
}

HolePlan stepsOfSlot(const SlotWork& work, const std::optional<SlotPlan>& plan) {
  HolePlan steps;
  const auto lack = [&](Op op, Lacking::Why why) {
    Lacking lacking;
    lacking.op = op;
    lacking.why = why;
    lacking.wanted = sizeName(work.width, work.unit);
    steps.lacking.push_back(std::move(lacking));
  };
  if (!plan) {
    lack(Op::mill, Lacking::Why::noCutter);
    return steps;
  }
  if (plan->first) {
    HoleStep& drill = steps.steps.emplace_back();
    drill.tool = drill.named = plan->first->drill.name;
    drill.size = plan->first->drill.diameter;
    drill.stands = plan->first->stands;
    drill.rule = Rule::holeForCutter;
    drill.through = work.through;
    // Its point stays above the floor.
    drill.pointDepth = work.depth;
    if (work.depth) {
      drill.fullDepth = work.depth->minus(pointLength(*drill.size));
      if (drill.fullDepth && *drill.fullDepth < Length()) drill.fullDepth = Length();
    }
  } else if (!plan->plunges) {
    lack(Op::drill, Lacking::Why::noDrillUnder);
  }
  HoleStep& mill = steps.steps.emplace_back();
  mill.op = Op::mill;
  mill.kind = ToolKind::endMill;
  mill.tool = plan->tool;
  mill.named = sizeName(plan->size, plan->cutter.unit);
  mill.unit = plan->cutter.unit;
  mill.size = plan->size;
  mill.rule = Rule::largestThatGoes;
  mill.through = work.through;
  mill.speed = plan->speed;
  mill.ownSpeed = plan->ownSpeed;
  mill.passes = plan->passes;
  if (!plan->passes.empty()) mill.fullDepth = mill.pointDepth = plan->passes.back();
  return steps;
}

}  // namespace inchwright
