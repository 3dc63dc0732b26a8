#include "core/checks/whole_part.h"

#include <algorithm>
#include <array>

#include "core/plan/table.h"

namespace inchwright {
namespace {

// The same fault is found in each setup that it does not hang on.
bool isAlike(const Finding& a, const Finding& b) {
  const bool ownSetup = !a.setup.empty() || !b.setup.empty();
  return a.code == b.code && a.places == b.places && a.by == b.by && a.lacking == b.lacking &&
         (!ownSetup || a.setup == b.setup) && a.which == b.which && a.piece == b.piece;
}

void addNew(std::vector<Finding>& all, std::vector<Finding> more) {
  for (Finding& finding : more) {
    const bool known = std::any_of(all.begin(), all.end(),
                                   [&](const Finding& one) { return isAlike(one, finding); });
    if (!known) all.push_back(std::move(finding));
  }
}

}  // namespace

CheckedSetup planAndCheck(const Job& job, const Part& part, const Solution& solution,
                          const Setup& setup, const ToolsOwned& tools) {
  CheckedSetup checked;
  const WorkBlock block(part, solution, &setup);
  const HolesAsked asked{&job, &part, &solution, &setup};
  checked.holes = planHoles(asked, block, tools);
  checked.milled = planSlots(asked, block, tools);
  const CheckedWork work{job, part, solution, setup, block, checked.holes, tools, checked.milled};
  checked.findings = checkSetupWork(work);
  checked.unsaid = unsaidOf(work);
  checked.pieces = piecesLeft(setup, block);
  return checked;
}

std::vector<Finding> findingsOf(const Job& job, const Part& part, const Solution& solution,
                                const ToolsOwned& tools) {
  std::vector<Setup> setups = part.setups;
  if (setups.empty()) setups.push_back(defaultSetup(part, solution));
  std::vector<Finding> all;
  std::array<bool, 6> turnedUp{};
  for (const Setup& setup : setups) {
    if (setup.chucked) continue;  // nothing of it is drilled from a face
    turnedUp[static_cast<std::size_t>(setup.face)] = true;
    addNew(all, planAndCheck(job, part, solution, setup, tools).findings);
  }
  const WorkBlock block(part, solution, nullptr);
  const std::vector<PlannedHole> holes = planHoles({&job, &part, &solution, nullptr}, block, tools);
  const std::vector<PlannedSlot> none;
  const CheckedWork work{job, part, solution, setups.front(), block, holes, tools, none};
  for (std::size_t i = 0; i < turnedUp.size(); ++i) {
    if (!turnedUp[i]) addNew(all, checkOutline(work, static_cast<Face>(i)));
  }
  return all;
}

}  // namespace inchwright
