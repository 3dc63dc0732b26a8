#include "core/plan/making.h"

#include <array>

#include "core/shop/drills.h"
#include "core/shop/reaming.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

enum Rank { kMark, kDrill, kBore, kReam, kTap, kSlot };

/// Gathers the run of tools of one hole.
class HoleMaker {
 public:
  explicit HoleMaker(const Drilled& hole) : hole_(hole) {
    if (hole.diameter) {
      unit_ = hole.diameter->unit;
      sets_ = DrillSets::customaryFor(unit_);
    }
  }

  Making take() && {
    add(StepKind::spot, {}, Length(), "common practice: spot so that the drill starts true");
    making_.steps.back().depth.reset();
    addWork();
    addSeat();
    return std::move(making_);
  }

 private:
  void addWork() {
    switch (hole_.make) {
      case Make::tap:
        return addTap();
      case Make::ream:
        return addReam();
      case Make::bore:
        return addBore();
      default:
        return addDrill();
    }
  }

  void addDrill() {
    making_.rank = kDrill;
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    const Drill* drill = drillOfSize(size, sets_);
    if (!drill) drill = drillOfSize(size);
    if (drill) return addNamed(*drill, std::string(sourceOf(drill->series)));
    add(StepKind::drill, ofFigure(Tool::Way::toFigure), size,
        "no drill of this size in the tables");
    making_.faults.push_back(MakingFault::noDrillOfSize);
  }

  void addReam() {
    making_.rank = kReam;
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    if (const auto under = drillUnderReamer(size, unit_, sets_)) {
      addNamed(under->drill, under->rule);
    } else {
      add(StepKind::drill, ofFigure(Tool::Way::boredUnder), Length(),
          "no listed drill leaves at most 1/32 for the reamer");
      making_.faults.push_back(MakingFault::noDrillUnderReamer);
    }
    add(StepKind::ream, ofFigure(Tool::Way::sized), size, "to size");
  }

  void addBore() {
    making_.rank = kBore;
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    if (const auto under = drillUnderBore(size, sets_)) {
      addNamed(under->drill, under->rule);
    } else {
      add(StepKind::drill, ofFigure(Tool::Way::under), Length(), "no listed drill is small enough");
      making_.faults.push_back(MakingFault::noDrillUnderBore);
    }
    add(StepKind::bore, ofFigure(Tool::Way::toFigure), size, "to size");
  }

  void addTap() {
    making_.rank = kTap;
    const Result<Thread> thread = threadNamed(hole_.thread);
    if (!thread) {
      add(StepKind::drill, {Tool::Way::tappingSize, hole_.thread}, Length(), thread.error().text);
      add(StepKind::tap, {Tool::Way::named, hole_.thread}, Length(), "as lettered");
      making_.faults.push_back(hole_.thread.empty() ? MakingFault::noThread
                                                    : MakingFault::unknownThread);
      return;
    }
    std::string rule = "tap drill for " + thread->name + " (" + thread->source + ")";
    if (!hole_.depth.through) rule += "; deeper than the thread by the tap's lead";
    add(StepKind::drill, {Tool::Way::named, thread->tapDrill}, thread->tapDrillDiameter,
        std::move(rule));
    making_.first = thread->tapDrillDiameter;
    add(StepKind::tap, {Tool::Way::named, thread->name}, thread->major,
        std::string(sourceOf(thread->series)));
  }

  void addSeat() {
    switch (hole_.make) {
      case Make::counterbore:
        return addSeat(StepKind::counterbore, MakingFault::noCounterboreSize);
      case Make::countersink:
        return addSeat(StepKind::countersink, MakingFault::noCountersinkSize);
      case Make::spotface:
        return addSeat(StepKind::spotface, MakingFault::noSpotfaceSize);
      default:
        return;
    }
  }

  void addSeat(StepKind kind, MakingFault unsized) {
    const std::optional<Lettered>& size = hole_.seatDiameter;
    add(kind, size ? Tool{Tool::Way::sized, {}, size} : Tool{}, size ? size->value : Length(),
        "as lettered");
    making_.steps.back().depth.reset();
    if (hole_.seatDepth) making_.steps.back().depth = Depth{false, hole_.seatDepth};
    if (!size) making_.faults.push_back(unsized);
  }

  void lacksDiameter() {
    making_.faults.push_back(MakingFault::noDiameter);
    add(StepKind::drill, {Tool::Way::asWanted}, Length(), "no diameter given");
  }

  void addNamed(const Drill& drill, std::string rule) {
    add(StepKind::drill, {Tool::Way::named, drill.name}, drill.diameter, std::move(rule));
    making_.first = drill.diameter;
  }

  Tool ofFigure(Tool::Way way) const { return {way, {}, hole_.diameter}; }

  void add(StepKind kind, Tool tool, Length diameter, std::string rule) {
    making_.steps.push_back({kind, std::move(tool), diameter, hole_.depth, std::move(rule)});
  }

  const Drilled& hole_;
  Unit unit_ = Unit::inch;
  DrillSets sets_ = DrillSets::customaryFor(Unit::inch);
  Making making_;
};

}  // namespace

std::string_view nameOf(StepKind kind) {
  constexpr std::array<std::string_view, 9> kNames{
      "spot", "drill", "ream", "bore", "tap", "counterbore", "countersink", "spotface", "mark"};
  return kNames[static_cast<std::size_t>(kind)];
}

Making makingOf(const Feature& feature) {
  if (const Drilled* hole = feature.drilled()) return HoleMaker(*hole).take();
  Making making;
  if (const auto* slot = feature.as<kind::Slot>()) {
    making.rank = kSlot;
    if (slot->width) making.first = slot->width->value;
    return making;
  }
  making.rank = kMark;
  making.steps.push_back({StepKind::mark, {}, Length(), {}, "a point: nothing is cut"});
  return making;
}

}  // namespace inchwright
