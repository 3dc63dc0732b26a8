#include "core/making/tools_owned.h"

#include <algorithm>

#include "core/measure/writing.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

void inOrderOfSize(std::vector<DrillAtHand>& drills) {
  std::stable_sort(drills.begin(), drills.end(), [](const DrillAtHand& a, const DrillAtHand& b) {
    if (a.drill.diameter != b.drill.diameter) return a.drill.diameter < b.drill.diameter;
    return a.drill.series < b.drill.series;
  });
}

std::vector<DrillAtHand> customaryDrills(const DrillSets& sets) {
  std::vector<DrillAtHand> all;
  for (const Drill& drill : drills()) {
    if (sets.has(drill.series)) all.push_back({drill, std::nullopt});
  }
  inOrderOfSize(all);
  return all;
}

std::vector<DrillAtHand> drillsSaid(const std::vector<OwnedDrills>& owned) {
  std::vector<DrillAtHand> all;
  for (const OwnedDrills& set : owned) {
    for (const Drill& drill : set.set.drills) {
      all.push_back({drill, set.stands ? std::optional(set.stands->value) : std::nullopt});
    }
  }
  inOrderOfSize(all);
  return all;
}

Lettered fractionOfInch(int sixteenths) {
  return *readLength(writeFraction(sixtyFourths(std::int64_t{sixteenths} * 4)));
}

// From memory: the end mills a home shop starts with.
std::vector<OwnedCutter> customaryCutters() {
  std::vector<OwnedCutter> all;
  for (const int sixteenths : {2, 3, 4, 5, 6, 8, 10, 12, 16}) {
    OwnedCutter cutter;
    cutter.size = fractionOfInch(sixteenths);
    all.push_back(std::move(cutter));
  }
  return all;
}

std::vector<OwnedCutter> customaryMetricCutters() {
  std::vector<OwnedCutter> all;
  for (const int millimetres : {2, 3, 4, 5, 6, 8, 10, 12, 16, 20}) {
    OwnedCutter cutter;
    cutter.size = *readLength(std::to_string(millimetres) + " mm");
    all.push_back(std::move(cutter));
  }
  return all;
}

constexpr Length kThirtySecond = sixtyFourths(2);

Length marginOr(const std::optional<Margins>& margins, std::optional<Lettered> Margins::*which) {
  if (margins && (*margins).*which) return ((*margins).*which)->value;
  return kThirtySecond;
}

}  // namespace

ToolsOwned::ToolsOwned(const Shop& shop) : shop_(shop) {
  if (shop_.drills) {
    inch_ = drillsSaid(*shop_.drills);
    metric_ = inch_;
    tables_ = inch_;
  } else {
    static const std::vector<DrillAtHand> kInch =
        customaryDrills(DrillSets::customaryFor(Unit::inch));
    static const std::vector<DrillAtHand> kMetric =
        customaryDrills(DrillSets::customaryFor(Unit::millimetre));
    static const std::vector<DrillAtHand> kTables = customaryDrills(DrillSets{});
    inch_ = kInch;
    metric_ = kMetric;
    tables_ = kTables;
  }
  cutters_ = shop_.cutters ? *shop_.cutters : customaryCutters();
  std::stable_sort(
      cutters_.begin(), cutters_.end(),
      [](const OwnedCutter& a, const OwnedCutter& b) { return a.size.value < b.size.value; });
  metricCutters_ = shop_.cutters ? cutters_ : customaryMetricCutters();
  if (!shop_.taps) return;
  for (const OwnedTap& tap : *shop_.taps) {
    Result<Thread> thread = threadNamed(tap.size);
    if (!thread) continue;  // a thread the table lacks has no drill and no percent
    taps_.push_back({*std::move(thread), tap.lead.value_or(TapLead::second),
                     tap.stands ? std::optional(tap.stands->value) : std::nullopt});
  }
}

const std::vector<DrillAtHand>& ToolsOwned::drillsFor(Unit unit) const {
  return unit == Unit::inch ? inch_ : metric_;
}

const DrillAtHand* ToolsOwned::largestDrill(Length low, Length high, Unit unit) const {
  const std::vector<DrillAtHand>& all = drillsFor(unit);
  const auto above = std::upper_bound(
      all.begin(), all.end(), high,
      [](Length size, const DrillAtHand& one) { return size < one.drill.diameter; });
  if (above == all.begin()) return nullptr;
  // The first of those of equal size.
  const auto first = std::lower_bound(
      all.begin(), above, std::prev(above)->drill.diameter,
      [](const DrillAtHand& one, Length size) { return one.drill.diameter < size; });
  return first->drill.diameter < low ? nullptr : &*first;
}

const DrillAtHand* ToolsOwned::ownDrillOf(const Thread& thread) const {
  const DrillAtHand* same = nullptr;
  for (const DrillAtHand& one : tables_) {
    if (one.drill.diameter != thread.tapDrillDiameter) continue;
    if (!same || one.drill.name == thread.tapDrill) same = &one;
  }
  return same;
}

std::vector<TapAtHand> ToolsOwned::tapsOf(const Thread& thread) const {
  std::vector<TapAtHand> found;
  if (!saysTaps()) {
    for (const TapLead lead : {TapLead::bottoming, TapLead::second, TapLead::taper}) {
      found.push_back({thread, lead, std::nullopt});
    }
    return found;
  }
  for (const TapAtHand& tap : taps_) {
    if (tap.thread.name == thread.name) found.push_back(tap);
  }
  std::stable_sort(found.begin(), found.end(), [](const TapAtHand& a, const TapAtHand& b) {
    return threadsOfLead(a.lead) < threadsOfLead(b.lead);
  });
  return found;
}

Length ToolsOwned::leastLeft(ReamedBy by) const {
  if (shop_.reaming) {
    const auto& pair = by == ReamedBy::machine ? shop_.reaming->machine : shop_.reaming->hand;
    if (pair.size() == 2) return pair[0].value;
  }
  return by == ReamedBy::machine ? tenThousandths(60) : tenThousandths(10);
}

Length ToolsOwned::greatestLeft(ReamedBy by) const {
  if (shop_.reaming) {
    const auto& pair = by == ReamedBy::machine ? shop_.reaming->machine : shop_.reaming->hand;
    if (pair.size() == 2) return pair[1].value;
  }
  return by == ReamedBy::machine ? tenThousandths(180) : tenThousandths(50);
}

Length ToolsOwned::reamerBelow(const OwnedReamer& reamer) {
  if (reamer.by == ReamedBy::machine) return sixtyFourths(8);
  if (reamer.length) return Length::ticks(reamer.length->value.ticks() / 4);
  return Length::ticks(reamer.size.value.ticks() * 2);
}

Length ToolsOwned::marginAround() const {
  return marginOr(shop_.margins, &Margins::around);
}
Length ToolsOwned::marginWall() const {
  return marginOr(shop_.margins, &Margins::wall);
}
Length ToolsOwned::marginBelow() const {
  return marginOr(shop_.margins, &Margins::below);
}

std::string sizeName(Length size, Unit unit) {
  return writePlain(size, unit) + (unit == Unit::millimetre ? " mm" : "");
}

}  // namespace inchwright
