#include <algorithm>

#include "core/making/hole_planner.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// A boring cut that puts a hole in its place needs something to cut; from memory.
constexpr Length kLeftForPlace = sixtyFourths(2);
// Under a reamer, after boring (practice of a school workshop, S35).
constexpr Length kBoredUnderLeast = tenThousandths(50), kBoredUnderMost = tenThousandths(100);
// The chamfer at the end of a machine reamer, which does not cut full size; from memory.
constexpr Length kMachineLead = sixtyFourths(2);

Length leadOf(const OwnedReamer& reamer) {
  return reamer.by == ReamedBy::machine ? kMachineLead : ToolsOwned::reamerBelow(reamer);
}

}  // namespace

std::vector<OwnedReamer> HolePlanner::reamersThatSuit() const {
  const Lettered& wanted = *work_.drilled.diameter;
  const auto suits = [&](Length size) {
    if (!plan_.limits) return size == wanted.value;
    return size >= plan_.limits->least && size <= plan_.limits->greatest;
  };
  std::vector<OwnedReamer> found;
  if (!tools_.saysReamers()) {
    OwnedReamer customary;
    customary.size = wanted;
    if (suits(wanted.value)) found.push_back(std::move(customary));
    return found;
  }
  for (const OwnedReamer& reamer : *tools_.shop().reamers) {
    if (suits(reamer.size.value)) found.push_back(reamer);
  }
  // The print's own size first, then the nearest; of equal ones the machine reamer.
  std::stable_sort(found.begin(), found.end(), [&](const OwnedReamer& a, const OwnedReamer& b) {
    const auto off = [&](const OwnedReamer& one) {
      return Length::ticks(one.size.value.ticks() - wanted.value.ticks()).magnitude();
    };
    if (off(a) != off(b)) return off(a) < off(b);
    return a.by < b.by;
  });
  return found;
}

const DrillAtHand* HolePlanner::drillBefore(const OwnedReamer& reamer) const {
  const Length low = sumHeld(reamer.size.value, tools_.greatestLeft(reamer.by).negated());
  const Length high = sumHeld(reamer.size.value, tools_.leastLeft(reamer.by).negated());
  return tools_.largestDrill(std::max(low, Length::ticks(1)), high, unit_);
}

void HolePlanner::addReamed() {
  const std::vector<OwnedReamer> reamers = reamersThatSuit();
  if (reamers.empty()) {
    const bool beyond = !tools_.saysReamers();
    Lacking& lacking = lack(Op::ream, sizeText(),
                            beyond ? Lacking::Why::reamerBeyondLimits : Lacking::Why::noReamer);
    const Length wanted = work_.drilled.diameter->value;
    for (const OwnedReamer& one :
         tools_.saysReamers() ? *tools_.shop().reamers : std::vector<OwnedReamer>()) {
      lacking.near.push_back({sizeName(one.size.value, one.size.unit), one.size.value,
                              Length::ticks(one.size.value.ticks() - wanted.ticks()), std::nullopt,
                              std::nullopt});
    }
    std::stable_sort(lacking.near.begin(), lacking.near.end(),
                     [](const Lacking::Near& a, const Lacking::Near& b) {
                       return a.differs.magnitude() < b.differs.magnitude();
                     });
    if (lacking.near.size() > 2) lacking.near.resize(2);
    const auto start = boreStart(wanted);
    lacking.barWouldDo = start && barFor(start->size(), wanted).has_value();
    return;
  }
  if (work_.closePlace) {
    if (addBoredThenReamed(reamers.front(), true)) return;
    plan_.notes.push_back(HoleNote::barTooSmall);
  }
  for (const OwnedReamer& reamer : reamers) {
    const DrillAtHand* drill = drillBefore(reamer);
    if (!drill) continue;
    addDrill(*drill, reamer.by == ReamedBy::machine ? Rule::beforeReamer : Rule::beforeHandReamer,
             blindBeforeReam(reamer, drill->drill.diameter));
    return addReam(reamer);
  }
  // Boring under the reamer will do where a bar is known to be owned; else it is only named.
  if (tools_.shop().boring && addBoredThenReamed(reamers.front(), false)) return;
  const OwnedReamer& reamer = reamers.front();
  const Length low = sumHeld(reamer.size.value, tools_.greatestLeft(reamer.by).negated());
  const Length high = sumHeld(reamer.size.value, tools_.leastLeft(reamer.by).negated());
  Lacking& lacking = lack(Op::drill, sizeText(), Lacking::Why::noneLeavesEnough);
  nameNearestDrills(lacking, low, high);
  const DrillAtHand* under = tools_.largestDrill(
      Length::ticks(1), sumHeld(reamer.size.value, kLeftForPlace.negated()), unit_);
  lacking.barWouldDo = under && barFor(under->drill.diameter, reamer.size.value).has_value();
  addReam(reamer);
}

std::optional<Length> HolePlanner::blindBeforeReam(const OwnedReamer& reamer, Length drill) {
  const std::optional<Length> depth = blindDepth();
  if (!depth) return std::nullopt;
  const Length least = sumHeld(*depth, leadOf(reamer));
  const Length chips = Length::ticks(drill.ticks() / 4);  // room for what falls; from memory
  return shortOfFar(sumHeld(least, chips), least, Length::ticks(drill.ticks() * 3 / 10));
}

bool HolePlanner::addBoredThenReamed(const OwnedReamer& reamer, bool forPlace) {
  const Length size = reamer.size.value;
  const DrillAtHand* drill =
      tools_.largestDrill(Length::ticks(1), sumHeld(size, kLeftForPlace.negated()), unit_);
  if (!drill) return false;
  const Length open = openAlready();
  BoreJob job;
  job.start = std::max(drill->drill.diameter, open);
  const std::optional<Bar> bar = barFor(job.start, size);
  if (!bar) return false;
  job.low = sumHeld(size, kBoredUnderMost.negated());
  job.high = sumHeld(size, kBoredUnderLeast.negated());
  job.target = Length::ticks((job.low->ticks() + job.high->ticks()) / 2);
  const bool bored = open >= *job.low;
  const std::vector<BoreCut> cuts =
      bored ? std::vector<BoreCut>() : boringCuts(job, bar->division, bar->dial);
  if (cuts.empty() && !bored) return false;
  const Length drilled = drill->drill.diameter;
  const std::optional<Length> deep = blindBeforeReam(reamer, drilled);
  if (drilled > open) addDrill(*drill, Rule::beforeBoreReam, deep);
  addCuts(*bar, cuts, Rule::boreBeforeReamer);
  if (forPlace && !bored) plan_.notes.push_back(HoleNote::reamerDoesNotMove);
  addReam(reamer);
  return true;
}

void HolePlanner::addReam(const OwnedReamer& reamer) {
  const bool byHand = reamer.by == ReamedBy::hand;
  HoleStep& step =
      add(Op::ream, ToolKind::reamer, byHand ? "hand ream" : "ream", reamer.size, Rule::reamToSize);
  step.below = ToolsOwned::reamerBelow(reamer);
  // As lettered; of a reamer of the other system by its own name.
  step.struckOut =
      reamer.size.unit == unit_ ? sizeText() : sizeName(reamer.size.value, reamer.size.unit);
  if (reamer.stands) step.stands = reamer.stands->value;
  if (reamer.length) step.flutes = reamer.length->value;
  setDepths(step, isThrough() ? step.below : leadOf(reamer), blindDepth());
  if (!byHand) setSpeed(step, reamer.size.value, 1);
}

}  // namespace inchwright
