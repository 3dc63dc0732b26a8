#include <algorithm>
#include <utility>

#include "core/chain/axis_solver.h"
#include "core/graph/branches.h"
#include "core/solution/doubts.h"
#include "core/solution/loose.h"
#include "core/solution/placed_solution.h"
#include "core/solution/solution.h"
#include "core/suspect/suspects.h"

namespace inchwright {
namespace {

// Features placed along each of their axes, in the part's order.
std::vector<Id> placedFeatures(const Part& part, const std::array<AxisSystem, 3>& systems,
                               const Solution& solution) {
  std::vector<bool> seen(part.features.size());
  std::vector<bool> open(part.features.size());
  for (const AxisSystem& system : systems) {
    const auto& positions = solution.positions.along(system.axis()).positions;
    for (std::size_t i = 0; i < positions.size(); ++i) {
      const std::uint32_t owner = system.network().owners[i];
      seen[owner] = true;
      if (positions[i].group != 0 && !isWithoutPlace(part, system.network(), i)) open[owner] = true;
    }
  }
  std::vector<Id> placed;
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    if (seen[i] && !open[i]) placed.push_back(part.features[i].id);
  }
  return placed;
}

// Positions whose way leads over an understanding that is assumed and not accepted.
void markAssumed(const AxisSystem& system, const std::vector<bool>& isOpen,
                 std::vector<Position>& positions) {
  const AxisNetwork& network = system.network();
  const Branches branches(system.forest());
  const auto rests = [&](const Source& source) {
    return source.kind == SourceKind::understanding && isOpen[source.index];
  };
  for (const AxisSystem::Way& way : system.ways()) {
    const auto& [links, relations] = way.members;
    const bool before =
        std::any_of(links.begin(), links.end(),
                    [&](const auto& one) { return rests(network.links[one.first].source); }) ||
        std::any_of(relations.begin(), relations.end(),
                    [&](std::uint32_t one) { return rests(network.relations[one].source); });
    branches.walkFrom(
        way.entrance, [&](std::uint32_t node, std::uint32_t from, std::uint32_t link) {
          positions[node].assumed =
              link == kNone ? before : positions[from].assumed || rests(network.links[link].source);
        });
  }
}

void markAssumed(const Part& part, const std::array<AxisSystem, 3>& systems, Solution& solution) {
  std::vector<bool> isOpen(part.understood.size());
  for (const Doubt& doubt : solution.doubts) {
    if (doubt.key.topic == DoubtTopic::assumed && !doubt.accepted &&
        doubt.source->kind == SourceKind::understanding) {
      isOpen[doubt.source->index] = true;
    }
  }
  if (std::find(isOpen.begin(), isOpen.end(), true) == isOpen.end()) return;
  for (const AxisSystem& system : systems) {
    markAssumed(system, isOpen, solution.positions.along(system.axis()).positions);
  }
}

}  // namespace

Result<Solution> solve(const Part& part, const SolveOptions& options) {
  Solution solution;
  const auto systems = systemsOf(part);
  if (!systems) return systems.error();
  solution.status.assign(part.readings.size(), ReadingStatus::unused);
  for (const AxisSystem& system : *systems) {
    auto outcome = solveAxis(part, system);
    if (!outcome) return outcome.error();
    for (const auto& [index, one] : outcome->status) solution.status[index] = one;
    for (Clash& clash : outcome->clashes) solution.clashes.push_back(std::move(clash));
    for (const Clash& loop : outcome->roundings) {
      solution.roundings.push_back(roundingOf(part, loop));
    }
    solution.positions.set(system.axis(), {system.network().places, std::move(outcome->positions)});
  }
  const auto placed = placeBeyondChains(part, *systems, options.findSuspects, solution);
  if (!placed) return placed.error();
  for (const AxisSystem& system : *systems) {
    const auto& positions = solution.positions.along(system.axis()).positions;
    for (Loose& one : looseAlong(part, system.network(), positions)) {
      solution.loose.push_back(std::move(one));
    }
  }
  for (const FreePlace& free : solution.beyond.free) {
    for (Loose& loose : solution.loose) {
      if (loose.id == free.place) loose.free = free;
    }
  }
  std::stable_sort(solution.loose.begin(), solution.loose.end(),
                   [](const Loose& a, const Loose& b) {
                     return std::tie(a.id, a.axis) < std::tie(b.id, b.axis);
                   });
  solution.placed = placedFeatures(part, *systems, solution);
  solution.suspects.resize(solution.clashes.size());
  if (options.findSuspects) solution.suspects = suspectsOf(part, *systems, solution.clashes);
  solution.doubts = doubtsOf(part, *systems, solution);
  markAssumed(part, *systems, solution);
  return solution;
}

}  // namespace inchwright
