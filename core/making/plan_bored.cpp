#include <algorithm>

#include "core/making/hole_planner.h"
#include "core/shop/drill_work.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// Where the shop says nothing of its boring head; from memory.
constexpr Length kCustomaryLeastBore = sixtyFourths(16);
constexpr Length kCustomaryDivision = tenThousandths(10);
// What an end mill may cut over; from memory.
constexpr Length kMillOver = tenThousandths(50);

}  // namespace

std::optional<HolePlanner::BoreStart> HolePlanner::boreStart(Length target) const {
  BoreStart start;
  for (const DrillAtHand& one : tools_.drillsFor(unit_)) {
    const Length size = one.drill.diameter;
    // It may cut over, and must still leave the bar something.
    if (sumHeld(size, drillOversize(size).greatest) >= target) break;
    if (!start.drill || size > start.drill->drill.diameter) start.drill = &one;
  }
  for (const OwnedCutter& one : tools_.cutters()) {
    if (sumHeld(one.size.value, kMillOver) >= target) break;
    // A drill wanders where it breaks out; an end mill does not.
    const bool wanted =
        work_.breaksOut || !start.drill || one.size.value > start.drill->drill.diameter;
    if (wanted) start.cutter = &one;
  }
  if (!start.drill && !start.cutter) return std::nullopt;
  if (work_.breaksOut && start.cutter) start.drill = nullptr;
  return start;
}

std::optional<HolePlanner::Bar> HolePlanner::barFor(Length start, Length target) const {
  const auto& owned = tools_.shop().boring;
  if (!owned) {
    if (start < kCustomaryLeastBore) return std::nullopt;
    return Bar{std::nullopt, kCustomaryDivision, Unit::inch, std::nullopt};
  }
  for (const OwnedBoring& one : *owned) {
    if (one.least && start < one.least->value) continue;
    if (one.greatest && target > one.greatest->value) continue;
    return Bar{one.dial, one.division ? one.division->value : kCustomaryDivision,
               one.division ? one.division->unit : Unit::inch,
               one.stands ? std::optional(one.stands->value) : std::nullopt};
  }
  return std::nullopt;
}

void HolePlanner::addBoreStart(const BoreStart& start) {
  std::optional<Length> deep = blindDepth();
  const auto shortOfFloor = [&](Length end) -> std::optional<Length> {
    if (!deep) return std::nullopt;
    return std::max(Length(), sumHeld(*deep, end.negated()));
  };
  if (start.drill) {
    // The floor stays flat where the point does not go below it.
    addDrill(*start.drill, Rule::underBore, shortOfFloor(pointLength(start.drill->drill.diameter)));
  }
  if (!start.cutter) return;
  const OwnedCutter& cutter = *start.cutter;
  HoleStep& step =
      add(Op::drill, ToolKind::endMill, "end mill", cutter.size, Rule::endMillUnderBore);
  step.below = tools_.marginBelow();
  if (cutter.stands) step.stands = cutter.stands->value;
  if (cutter.length) step.flutes = cutter.length->value;
  setDepths(step, Length(), deep);
  setSpeed(step, cutter.size.value, 2);
}

void HolePlanner::addBored() {
  const Length size = work_.drilled.diameter->value;
  BoreJob job;
  job.target = size;
  if (plan_.limits) {
    job.low = plan_.limits->least;
    job.high = plan_.limits->greatest;
    job.target = Length::ticks(job.low->ticks() + (job.high->ticks() - job.low->ticks()) / 2);
  }
  const std::optional<BoreStart> start = boreStart(job.low.value_or(job.target));
  const Length open = openAlready();
  if (open >= job.low.value_or(job.target)) return;
  if (!start && open.isZero()) {
    lack(Op::drill, sizeText(), Lacking::Why::noDrillUnder);
    return;
  }
  job.start = std::max(start ? start->size() : Length(), open);
  if (start && job.start > open) addBoreStart(*start);
  const std::optional<Bar> bar = barFor(job.start, size);
  if (!bar) {
    lack(Op::bore, sizeText(), Lacking::Why::noBar);
    return;
  }
  const std::vector<BoreCut> cuts = boringCuts(job, bar->division, bar->dial);
  if (cuts.empty()) {
    lack(Op::bore, sizeText(), Lacking::Why::dialTooCoarse);
    return;
  }
  addCuts(*bar, cuts, Rule::boringCut);
  if (work_.breaksOut) plan_.notes.push_back(HoleNote::interrupted);
}

void HolePlanner::addCuts(const Bar& bar, const std::vector<BoreCut>& cuts, Rule rule) {
  for (const BoreCut& cut : cuts) {
    HoleStep& step = add(Op::bore, ToolKind::bar, "bore", "", cut.size,
                         cut.trial && rule == Rule::boringCut ? Rule::trialCut : rule);
    step.dial = cut.dial;
    step.dialUnit = bar.unit;
    step.measure = true;
    step.stands = bar.stands;
    step.below = tools_.marginBelow();
    setDepths(step, Length(), blindDepth());
    setSpeed(step, cut.size, 1);
  }
  if (!bar.dial) plan_.notes.push_back(HoleNote::dialUnsaid);
}

}  // namespace inchwright
