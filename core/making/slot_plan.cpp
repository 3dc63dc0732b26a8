#include "core/making/slot_plan.h"

#include <algorithm>
#include <limits>

#include "core/geometry/inset.h"
#include "core/shop/cutting_speeds.h"
#include "core/shop/drill_work.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// A cutter has no more than its middle to be drilled for; beyond this a drill wants a pilot (from
// memory).
constexpr Length kLargestEntry = sixtyFourths(32);

/// The largest drill that stays within the cutter though it cuts over.
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

SlotPlan planWith(const OwnedCutter& cutter, const SlotWork& work, const ToolsOwned& tools,
                  const std::vector<int>& speeds) {
  SlotPlan plan;
  plan.tool = "end mill " + sizeName(cutter.size.value, cutter.size.unit);
  plan.cutter = cutter.size;
  plan.size = cutter.size.value;
  plan.plunges = cutter.centreCutting.value_or(false);
  if (!plan.plunges) {
    plan.first = drillWithin(std::min(plan.size, kLargestEntry), tools, work.unit);
  }
  if (const auto cutting = cuttingSpeedOf(work.material); cutting && plan.size > Length()) {
    plan.speed =
        nearestSpeed(std::max(revolutionsFor(cutting->drillFeetPerMinute, plan.size), 1), speeds);
    plan.ownSpeed = !speeds.empty();
  }
  if (work.depth && *work.depth > Length()) addPasses(*work.depth, plan);
  return plan;
}

/// The tightest round of a wall that stands open to the cutter; infinite where there is none.
double tightestCorner(const std::vector<PathPiece>& wall) {
  double least = std::numeric_limits<double>::infinity();
  for (const PathPiece& piece : wall) {
    const bool hollow = piece.circle && piece.sense > 0;
    if (hollow) least = std::min(least, piece.circle->radius);
  }
  return least;
}

}  // namespace

bool isClose(const Lettered& width) {
  constexpr Length kFraction = sixtyFourths(1);
  if (width.basic) return true;
  if (width.tolerance) return width.tolerance->width().ticks() < 2 * kFraction.ticks();
  return width.lettering == Lettering::decimal && width.places >= 3;
}

std::optional<SlotPlan> planSlot(const SlotWork& work, const ToolsOwned& tools,
                                 const std::vector<int>& speeds) {
  const Length most = work.close && !work.cutter
                          ? Length::ticks(work.width.ticks() - sixtyFourths(1).ticks())
                          : work.width;
  const OwnedCutter* best = nullptr;
  for (const OwnedCutter& one : tools.cuttersFor(work.unit)) {
    const bool fits = one.size.value <= most && (!work.cutter || one.size.value == *work.cutter);
    if (fits && (!best || one.size.value > best->size.value)) best = &one;
  }
  if (!best && work.close && !work.cutter) {
    SlotWork plain = work;
    plain.close = false;
    return planSlot(plain, tools, speeds);
  }
  OwnedCutter named;
  if (!best && work.cutter && *work.cutter <= work.width && !tools.shop().cutters) {
    named.size.value = *work.cutter;
    named.size.unit = work.unit;
    best = &named;
  }
  if (!best) return std::nullopt;
  SlotPlan plan = planWith(*best, work, tools, speeds);
  plan.opensSides = best->size.value < work.width;
  return plan;
}

std::optional<SlotPlan> planPocket(const SlotWork& work, const std::vector<PathPiece>& wall,
                                   const ToolsOwned& tools, const std::vector<int>& speeds) {
  const auto [low, high] = extentsOf(wall);
  const double corner = tightestCorner(wall);
  const double tick = Length::ticks(2).toInches();
  const double wanted = 2 * std::min(corner, std::min(high.x - low.x, high.y - low.y) / 4) + tick;
  const OwnedCutter* best = nullptr;
  const OwnedCutter* least = nullptr;
  for (const OwnedCutter& one : tools.cuttersFor(work.unit)) {
    const double size = one.size.value.toInches();
    if (size > 2 * corner + tick || !insetOf(wall, size / 2)) continue;
    if (!least || one.size.value < least->size.value) least = &one;
    if (size <= wanted && (!best || one.size.value > best->size.value)) best = &one;
  }
  if (!best) best = least;
  if (!best) return std::nullopt;
  return planWith(*best, work, tools, speeds);
}

HolePlan stepsOfSlot(const SlotWork& work, const std::optional<SlotPlan>& plan) {
  HolePlan steps;
  const auto lack = [&](Op op, Lacking::Why why) {
    Lacking lacking;
    lacking.op = op;
    lacking.why = why;
    if (!work.pocket) lacking.wanted = sizeName(work.width, work.unit);
    steps.lacking.push_back(std::move(lacking));
  };
  if (!plan) {
    lack(Op::mill, work.pocket ? Lacking::Why::noCutterForPocket : Lacking::Why::noCutter);
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
  mill.rule = work.pocket                      ? Rule::largestInCorners
              : work.close && plan->opensSides ? Rule::underCloseSlot
                                               : Rule::largestThatGoes;
  mill.through = work.through;
  mill.speed = plan->speed;
  mill.ownSpeed = plan->ownSpeed;
  mill.passes = plan->passes;
  if (!plan->passes.empty()) mill.fullDepth = mill.pointDepth = plan->passes.back();
  return steps;
}

}  // namespace inchwright
