#include <algorithm>
#include <map>
#include <set>

#include "core/checks/checks.h"

namespace inchwright {
namespace {

// What the print does not say is asked of the print, and no tool would help.
bool isTheShops(const Lacking& lacking) {
  return lacking.why != Lacking::Why::noDiameter && lacking.why != Lacking::Why::noThread &&
         lacking.why != Lacking::Why::noSeatSize;
}

void addLacking(const CheckedWork& work, std::vector<Finding>& findings) {
  // Holes that are alike share their plan, and are named together.
  std::map<const HolePlan*, std::size_t> seen;
  for (const PlannedHole& hole : work.holes) {
    if (hole.face != work.setup.face) continue;
    const auto [entry, fresh] = seen.emplace(&*hole.plan, findings.size());
    std::size_t at = entry->second;
    for (const Lacking& lacking : hole.plan->lacking) {
      if (!isTheShops(lacking)) continue;
      if (fresh) {
        Finding finding;
        finding.code = FindingCode::noTool;
        finding.lacking = lacking;
        findings.push_back(std::move(finding));
      }
      findings[at++].places.push_back(hole.id);
    }
  }
}

void addTooDeep(const CheckedWork& work, std::vector<Finding>& findings) {
  for (const PlannedHole& hole : work.holes) {
    if (hole.face != work.setup.face) continue;
    for (const HoleStep& step : hole.plan->steps) {
      if (!step.flutes || !step.fullDepth || *step.fullDepth <= *step.flutes) continue;
      Finding finding;
      finding.code = FindingCode::tooDeep;
      finding.places = {hole.id};
      finding.by = step.fullDepth->minus(*step.flutes);
      finding.setup = work.setup.name;
      finding.tool = step.tool;
      finding.wanted = step.fullDepth;
      finding.had = step.flutes;
      findings.push_back(std::move(finding));
      break;
    }
  }
}

/// A slot or pocket that nothing owned goes into, or not deep enough.
void addMilled(const CheckedWork& work, const PlannedSlot& milled, std::vector<Finding>& findings) {
  Finding finding;
  finding.places = {milled.id};
  finding.setup = work.setup.name;
  const Feature* feature = milled.shape.isPocket ? nullptr : work.part.feature(milled.id);
  const kind::Slot* slot = feature ? feature->as<kind::Slot>() : nullptr;
  if (slot && slot->cutter && slot->cutter->value > slot->width->value) {
    finding.code = FindingCode::cutterTooBig;
    finding.by = slot->cutter->value.minus(slot->width->value);
    finding.had = slot->cutter->value;
    findings.push_back(std::move(finding));
    return;
  }
  for (const Lacking& lacking : milled.steps->lacking) {
    Finding lacks = finding;
    lacks.code = FindingCode::noTool;
    lacks.lacking = lacking;
    lacks.setup.clear();
    findings.push_back(std::move(lacks));
  }
  if (!milled.plan || milled.plan->passes.empty()) return;
  const Length deep = milled.plan->passes.back();
  const OwnedCutter* cutter = nullptr;
  for (const OwnedCutter& one : work.tools.cutters()) {
    if (one.size.value == milled.plan->size) cutter = &one;
  }
  if (!cutter || !cutter->length || deep <= cutter->length->value) return;
  finding.code = FindingCode::tooDeep;
  finding.by = deep.minus(cutter->length->value);
  finding.tool = milled.plan->tool;
  finding.wanted = deep;
  finding.had = cutter->length->value;
  findings.push_back(std::move(finding));
}

/// A drill ticked off at a hole that is still to be reamed, and as large as its reamer.
void addDrilledAtReamSize(const CheckedWork& work, std::vector<Finding>& findings) {
  for (const MadePlace& made : work.part.made) {
    if (made.setup != work.setup.name) continue;
    for (const PlannedHole& hole : work.holes) {
      const bool reamed = hole.drilled->make == Make::ream && hole.diameter > Length();
      if (hole.id != made.place || !reamed) continue;
      for (const std::string& tick : made.ticks) {
        const std::string_view name =
            tick.starts_with("drill ") ? std::string_view(tick).substr(6) : std::string_view(tick);
        const Drill* drill = drillNamed(name);
        if (!drill || drill->diameter < hole.diameter) continue;
        Finding finding;
        finding.code = FindingCode::drillAtReamSize;
        finding.places = {hole.id};
        finding.by = drill->diameter.minus(hole.diameter);
        finding.setup = work.setup.name;
        finding.tool = drill->name;
        findings.push_back(std::move(finding));
        break;
      }
    }
  }
}

void addHeadroom(const CheckedWork& work, std::vector<Finding>& findings) {
  const auto& quill = work.job.machine.quill;
  if (!quill) return;
  std::optional<Length> least, greatest;
  std::string longest;
  for (const PlannedHole& hole : work.holes) {
    if (hole.face != work.setup.face) continue;
    for (const HoleStep& step : hole.plan->steps) {
      if (!step.stands) continue;
      if (!least || *step.stands < *least) least = step.stands;
      if (greatest && *step.stands <= *greatest) continue;
      greatest = step.stands;
      longest = step.tool;
    }
  }
  if (!least) return;
  const auto differ = greatest->minus(*least);
  if (!differ || *differ <= quill->value) return;
  Finding finding;
  finding.code = FindingCode::headroom;
  finding.by = differ->minus(quill->value);
  finding.setup = work.setup.name;
  finding.tool = longest;
  finding.wanted = differ;
  findings.push_back(std::move(finding));
}

}  // namespace

std::vector<Finding> checkTools(const CheckedWork& work) {
  std::vector<Finding> findings;
  addLacking(work, findings);
  addTooDeep(work, findings);
  for (const PlannedSlot& milled : work.milled) addMilled(work, milled, findings);
  addDrilledAtReamSize(work, findings);
  addHeadroom(work, findings);
  return findings;
}

}  // namespace inchwright
