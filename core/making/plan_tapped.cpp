#include <algorithm>

#include "core/making/hole_planner.h"
#include "core/shop/drill_work.h"
#include "core/shop/thread_name.h"
#include "core/shop/thread_work.h"

namespace inchwright {
namespace {

constexpr std::size_t kNearestThreads = 3;

bool isMetric(const Thread& thread) {
  return thread.series == ThreadSeries::metric || thread.series == ThreadSeries::ba;
}

}  // namespace

void HolePlanner::addTapped() {
  const std::string& named = work_.drilled.thread;
  if (named.empty()) {
    lack(Op::tap, "", Lacking::Why::noThread);
    return;
  }
  const Result<Thread> thread = threadNamed(named);
  if (!thread) {
    Lacking& lacking = lack(Op::tap, named, Lacking::Why::noSuchThread);
    const Result<ThreadName> name = readThreadName(named);
    if (name && name->size > Length()) nameNearestThreads(lacking, name->size, "");
    return;
  }
  const std::vector<TapAtHand> taps = tools_.tapsOf(*thread);
  if (taps.empty()) {
    Lacking& lacking = lack(Op::tap, thread->name, Lacking::Why::noTap);
    nameNearestThreads(lacking, thread->major, thread->name);
    return;
  }
  const TappingRule rule = tools_.shop().tapping.value_or(TappingRule{});
  const DrillAtHand* drill = tools_.ownDrillOf(*thread);
  const bool own = drill != nullptr;
  if (!own) {
    int best = 0;
    for (const DrillAtHand& one : tools_.drillsFor(isMetric(*thread) ? Unit::millimetre : unit_)) {
      const int percent = threadPercent(*thread, one.drill.diameter);
      if (percent < rule.least * 100 || percent > rule.greatest * 100) continue;
      const int off = std::abs(percent - rule.percent * 100);
      if (drill && off >= best) continue;
      drill = &one;
      best = off;
    }
  }
  // Blind: the shortest lead that is owned, where the customary second tap would break through.
  const TapAtHand* tap = nullptr;
  for (const TapAtHand& one : taps) {
    if (one.lead == TapLead::second) tap = &one;
  }
  if (!tap) tap = &taps.front();
  if (const std::optional<Length> depth = blindDepth(); depth && drill && work_.throughFinished) {
    const Length end = sumHeld(pointLength(drill->drill.diameter), tools_.marginWall());
    const Length room = sumHeld(*work_.throughFinished, sumHeld(*depth, end).negated());
    if (leadLength(*thread, tap->lead) > room) tap = &taps.front();
  }
  if (!drill) {
    Lacking& lacking = lack(Op::drill, thread->name, Lacking::Why::noneWithinPercent);
    nameNearestDrills(lacking, thread->tapDrillDiameter, thread->tapDrillDiameter);
    for (Lacking::Near& near : lacking.near) {
      near.differs = Length::ticks(near.size.ticks() - thread->tapDrillDiameter.ticks());
      near.percent = threadPercent(*thread, near.size);
    }
  } else {
    std::optional<Length> deep = blindDepth();
    if (deep) {
      const Length least = sumHeld(*deep, leadLength(*thread, tap->lead));
      const Length chips = nearestTick(thread->pitch).value_or(Length());
      deep = shortOfFar(sumHeld(least, chips), least, pointLength(drill->drill.diameter));
    }
    HoleStep& step = addDrill(*drill, own ? Rule::tableTapDrill : Rule::nearestPercent, deep);
    step.percent = threadPercent(*thread, drill->drill.diameter);
  }
  addTap(*thread, *tap);
}

void HolePlanner::addTap(const Thread& thread, const TapAtHand& tap) {
  HoleStep& step = add(Op::tap, ToolKind::tap, "tap", thread.name, thread.major, Rule::tapThread);
  step.stands = tap.stands;
  step.below = leadLength(thread, tap.lead);
  step.unit = isMetric(thread) ? Unit::millimetre : Unit::inch;
  step.struckOut = sizeName(thread.major, step.unit);
  setDepths(step, step.below, blindDepth());
}

void HolePlanner::nameNearestThreads(Lacking& lacking, Length major, const std::string& name) {
  std::vector<Thread> at;
  if (tools_.saysTaps()) {
    for (const OwnedTap& tap : *tools_.shop().taps) {
      if (Result<Thread> thread = threadNamed(tap.size)) at.push_back(*std::move(thread));
    }
  } else {
    at = threads();
  }
  std::stable_sort(at.begin(), at.end(), [&](const Thread& a, const Thread& b) {
    const auto off = [&](const Thread& one) {
      return Length::ticks(one.major.ticks() - major.ticks()).magnitude();
    };
    return off(a) < off(b);
  });
  for (const Thread& thread : at) {
    if (lacking.near.size() == kNearestThreads) break;
    const bool again = std::any_of(lacking.near.begin(), lacking.near.end(),
                                   [&](const auto& near) { return near.name == thread.name; });
    if (again || thread.name == name) continue;
    lacking.near.push_back({thread.name, thread.major,
                            Length::ticks(thread.major.ticks() - major.ticks()), std::nullopt,
                            thread});
  }
}

}  // namespace inchwright
