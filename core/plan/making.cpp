#include "core/plan/making.h"

#include <algorithm>

#include "core/measure/writing.h"
#include "core/shop/drills.h"
#include "core/shop/reaming.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

enum Rank { kMark, kDrill, kBore, kReam, kTap, kSlot };

std::string depthText(const Depth& depth, Unit shown) {
  if (depth.through || !depth.length) return "through";
  return figureText(*depth.length, shown);
}

std::string depthPhrase(const Depth& depth, Unit shown) {
  const std::string text = depthText(depth, shown);
  return depth.through || !depth.length ? text : text + " deep";
}

/// Gathers the run of tools of one hole.
class HolePlan {
 public:
  HolePlan(const Drilled& hole, Unit shown)
      : hole_(hole), shown_(shown), depth_(depthText(hole.depth, shown)) {
    if (hole.diameter) {
      unit_ = hole.diameter->unit;
      sets_ = DrillSets::customaryFor(unit_);
    }
  }

  Making take() && {
    addWork();
    addSeat();
    for (const MakingStep& step : making_.steps) {
      making_.run += (making_.run.empty() ? "" : " + ") + step.tool;
    }
    return std::move(making_);
  }

 private:
  void addWork() {
    add(StepKind::spot, "spot", Length(), "common practice: spot so that the drill starts true");
    making_.steps.back().depth.clear();
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
    making_.size = sizePhrase("drill");
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    const Drill* drill = drillOfSize(size, sets_);
    if (!drill) drill = drillOfSize(size);
    if (drill) {
      addNamed(*drill, std::string(sourceOf(drill->series)));
    } else {
      add(StepKind::drill, "drill to " + figure(*hole_.diameter), size,
          "no drill of this size in the tables");
      making_.notes.push_back("no listed drill has this size");
    }
  }

  void addReam() {
    making_.rank = kReam;
    making_.size = sizePhrase("ream");
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    if (const auto under = drillUnderReamer(size, unit_, sets_)) {
      addNamed(under->drill, under->rule);
    } else {
      add(StepKind::drill, "drill and bore under " + figure(*hole_.diameter), Length(),
          "no listed drill leaves at most 1/32 for the reamer");
      making_.notes.push_back("no listed drill suits this reamer");
    }
    add(StepKind::ream, "ream " + figure(*hole_.diameter), size, "to size");
  }

  void addBore() {
    making_.rank = kBore;
    making_.size = sizePhrase("bore");
    if (!hole_.diameter) return lacksDiameter();
    const Length size = hole_.diameter->value;
    if (const auto under = drillUnderBore(size, sets_)) {
      addNamed(under->drill, under->rule);
    } else {
      add(StepKind::drill, "drill under " + figure(*hole_.diameter), Length(),
          "no listed drill is small enough");
      making_.notes.push_back("too small for the drills listed");
    }
    add(StepKind::bore, "bore to " + figure(*hole_.diameter), size, "to size");
  }

  void addTap() {
    making_.rank = kTap;
    const std::string named = hole_.thread.empty() ? "thread not given" : hole_.thread;
    making_.size = named + " tap, " + depthPhrase(hole_.depth, shown_);
    const Result<Thread> thread = threadNamed(hole_.thread);
    if (!thread) {
      add(StepKind::drill, "drill tapping size for " + named, Length(), thread.error().text);
      add(StepKind::tap, "tap " + named, Length(), "as lettered");
      making_.notes.push_back(hole_.thread.empty() ? "the print gives no thread"
                                                   : thread.error().text);
      return;
    }
    std::string rule = "tap drill for " + thread->name + " (" + thread->source + ")";
    if (!hole_.depth.through) rule += "; deeper than the thread by the tap's lead";
    add(StepKind::drill, thread->tapDrill, thread->tapDrillDiameter, std::move(rule));
    making_.first = thread->tapDrillDiameter;
    add(StepKind::tap, "tap " + thread->name, thread->major, std::string(sourceOf(thread->series)));
  }

  void addSeat() {
    StepKind kind = StepKind::counterbore;
    std::string word = "counterbore";
    if (hole_.make == Make::countersink) {
      kind = StepKind::countersink;
      word = "countersink";
    } else if (hole_.make == Make::spotface) {
      kind = StepKind::spotface;
      word = "spotface";
    } else if (hole_.make != Make::counterbore) {
      return;
    }
    std::string tool = word;
    if (hole_.seatDiameter) tool += " " + figure(*hole_.seatDiameter);
    making_.size += "; " + word;
    if (hole_.seatDiameter) making_.size += " Ø" + figure(*hole_.seatDiameter);
    add(kind, tool, hole_.seatDiameter ? hole_.seatDiameter->value : Length(), "as lettered");
    making_.steps.back().depth.clear();
    if (hole_.seatDepth) {
      making_.steps.back().depth = figure(*hole_.seatDepth);
      making_.size += ", " + making_.steps.back().depth + " deep";
    }
    if (!hole_.seatDiameter) making_.notes.push_back("the print gives no size for the " + word);
  }

  void lacksDiameter() {
    making_.notes.push_back("the print gives no diameter");
    add(StepKind::drill, "drill to size", Length(), "no diameter given");
  }

  void addNamed(const Drill& drill, std::string rule) {
    add(StepKind::drill, drill.name, drill.diameter, std::move(rule));
    making_.first = drill.diameter;
  }

  void add(StepKind kind, std::string tool, Length diameter, std::string rule) {
    making_.steps.push_back({kind, std::move(tool), diameter, depth_, std::move(rule)});
  }

  std::string figure(const Lettered& lettered) const { return figureText(lettered, shown_); }

  std::string sizePhrase(std::string_view verb) const {
    std::string text = hole_.diameter ? "Ø" + figure(*hole_.diameter) + " " : std::string();
    return text + std::string(verb) + ", " + depthPhrase(hole_.depth, shown_);
  }

  const Drilled& hole_;
  Unit shown_;
  std::string depth_;
  Unit unit_ = Unit::inch;
  DrillSets sets_ = DrillSets::customaryFor(Unit::inch);
  Making making_;
};

Making markOf(const Feature& feature, Unit shown) {
  Making making;
  if (const auto* slot = feature.as<kind::Slot>()) {
    making.rank = kSlot;
    making.size = "slot";
    if (slot->width) making.size += " " + figureText(*slot->width, shown) + " wide";
    if (slot->length) making.size += ", " + figureText(*slot->length, shown) + " long";
    making.size += ", " + depthPhrase(slot->depth, shown);
    if (slot->width) making.first = slot->width->value;
    making.run = making.size;
    return making;
  }
  making.rank = kMark;
  making.size = std::string(nameOf(feature.kind()));
  making.steps.push_back({StepKind::mark, "mark", Length(), "", "a point: nothing is cut"});
  making.run = "mark";
  return making;
}

}  // namespace

std::string figureText(const Lettered& figure, Unit shown) {
  // A bare figure, with its tolerance if it has one, stands as lettered; anything else (a sum, a
  // figure in brackets or with a symbol) is written out.
  const std::string_view allowed = figure.tolerance ? "0123456789./ -+\xC2\xB1" : "0123456789./ -";
  const bool bare =
      !figure.text.empty() && figure.text.find_first_not_of(allowed) == std::string::npos;
  std::string text = bare ? figure.text : writePlain(figure.value, figure.unit);
  if (figure.tolerance && !bare) {
    const auto deviation = [&](Length value) {
      return (value < Length() ? " -" : " +") + writeDecimal(value.magnitude(), figure.unit);
    };
    text += deviation(figure.tolerance->upper) + deviation(figure.tolerance->lower);
  }
  if (figure.unit != shown) text += figure.unit == Unit::inch ? " in" : " mm";
  return text;
}

Making makingOf(const Feature& feature, Unit shown) {
  if (const Drilled* hole = feature.drilled()) return HolePlan(*hole, shown).take();
  return markOf(feature, shown);
}

}  // namespace inchwright
