#include <algorithm>

#include "core/making/hole_planner.h"

namespace inchwright {
namespace {

bool isInside(const HoleStep& step) {
  return step.op == Op::ream || step.op == Op::tap || step.op == Op::counterbore ||
         step.op == Op::countersink;
}

}  // namespace

void HolePlanner::leaveAsFound() {
  plan_.putRight = work_.putRight;
  plan_.notes.push_back(work_.putRight->way == WayOut::shaft ? HoleNote::shaftToSuit
                                                             : HoleNote::leftAsFound);
}

/// Of a hole that is there already nothing is spotted, and what is no larger than it cuts nothing.
void HolePlanner::leaveOutWhatIsCut() {
  plan_.putRight = work_.putRight;
  const PutRight& right = *work_.putRight;
  plan_.notes.push_back(right.way == WayOut::openToSize ? HoleNote::openedToSize
                                                        : HoleNote::openedUp);
  const Length there = right.found.least.value_or(Length());
  std::erase_if(plan_.steps, [&](const HoleStep& step) {
    if (step.op == Op::spot) return true;
    const bool opens = step.op == Op::pilot || step.op == Op::drill || step.op == Op::ream;
    return opens && step.size && *step.size <= there;
  });
}

Length HolePlanner::openAlready() const {
  if (!work_.putRight || work_.putRight->isLined()) return {};
  const FoundSize& found = work_.putRight->found;
  return found.greatest.value_or(found.least.value_or(Length()));
}

/// Bored true, lined, and made again in what was pressed in.
void HolePlanner::addLined() {
  const PutRight& right = *work_.putRight;
  plan_.putRight = right;
  plan_.notes.push_back(right.way == WayOut::bush ? HoleNote::linedOnPlace
                                                  : HoleNote::linedAsFound);
  if (!addBoredForLining(*right.bushing)) return;
  const bool plug = right.way == WayOut::plug;
  HoleStep& press = add(Op::press, ToolKind::hand, plug ? "press plug" : "press bush", "",
                        right.bushing->outside, Rule::pressIn);
  press.through = isThrough();
  const std::size_t lined = plan_.steps.size();
  addFinishInside();
  for (std::size_t i = lined; i < plan_.steps.size(); ++i) plan_.steps[i].inBush = true;
  add(Op::deburr, ToolKind::hand, "deburr", "", std::nullopt, Rule::breakEdges);
  addLocating();
  setPins();
}

bool HolePlanner::addBoredForLining(const Bushing& bushing) {
  const PutRight& right = *work_.putRight;
  BoreJob job;
  job.low = bushing.boreLimits.least;
  job.high = bushing.boreLimits.greatest;
  job.target = Length::ticks(job.low->ticks() + (job.high->ticks() - job.low->ticks()) / 2);
  job.start = right.found.greatest.value_or(right.found.least.value_or(bushing.inside));
  const std::string name = sizeName(bushing.bore, unit_);
  if (job.start >= *job.low) return job.start <= *job.high;
  const std::optional<Bar> bar = barFor(job.start, bushing.bore);
  const std::vector<BoreCut> cuts =
      bar ? boringCuts(job, bar->division, bar->dial) : std::vector<BoreCut>();
  if (cuts.empty()) {
    lack(Op::bore, name, bar ? Lacking::Why::dialTooCoarse : Lacking::Why::noBar);
    return false;
  }
  addCuts(*bar, cuts, Rule::openForBush);
  return true;
}

/// A plug is drilled anew, bored where the hole cuts its joint; a bush has its hole, a little
/// under.
void HolePlanner::addFinishInside() {
  const PutRight& right = *work_.putRight;
  HoleWork inside = work_;
  inside.putRight.reset();
  if (right.bushing->cutsJoint) inside.drilled.make = Make::bore;
  HolePlan made = HolePlanner(inside, tools_, speeds_).take();
  std::erase_if(made.steps, [](const HoleStep& step) { return step.op == Op::deburr; });
  std::erase_if(made.notes, [](HoleNote note) {
    return note == HoleNote::throughBoth || note == HoleNote::byMatesSheet ||
           note == HoleNote::fromMate || note == HoleNote::onAssembly ||
           note == HoleNote::mateNotThere;
  });
  plan_.lacking.insert(plan_.lacking.end(), made.lacking.begin(), made.lacking.end());
  if (right.way != WayOut::plug) {
    const auto last = std::find_if(made.steps.rbegin(), made.steps.rend(), [](const HoleStep& one) {
      return one.op == Op::bore || one.op == Op::drill;
    });
    const bool reamed = std::any_of(made.steps.begin(), made.steps.end(),
                                    [](const HoleStep& one) { return one.op == Op::ream; });
    std::optional<HoleStep> opens;
    if (!reamed && last != made.steps.rend()) opens = *last;
    std::erase_if(made.steps, [](const HoleStep& step) { return !isInside(step); });
    if (opens) {
      opens->dial.reset();
      made.steps.insert(made.steps.begin(), *std::move(opens));
    }
    if (!made.steps.empty()) made.steps.front().rule = Rule::afterPressing;
  } else {
    plan_.notes.insert(plan_.notes.end(), made.notes.begin(), made.notes.end());
  }
  plan_.steps.insert(plan_.steps.end(), made.steps.begin(), made.steps.end());
}

}  // namespace inchwright
