#include <algorithm>
#include <set>
#include <utility>

#include "core/chain/axis_solver.h"
#include "core/chain/doubts.h"
#include "core/chain/label.h"
#include "core/chain/solution.h"
#include "core/chain/suspects.h"

namespace inchwright {
namespace {

// The place to measure a loose one from: the origin of the part along that axis, else any placed.
Id fixedPlace(const AxisNetwork& network, const std::vector<Position>& positions) {
  Id found;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    if (positions[i].group != 0) continue;
    if (found.empty() || positions[i].ticks.isZero()) found = network.places[i];
    if (positions[i].ticks.isZero()) break;
  }
  return found;
}

// One entry a place that is not in group 0; of one feature's places that hang together only the
// first, since what places it places them all.
void addLoose(const Part& part, const AxisNetwork& network, const std::vector<Position>& positions,
              std::vector<Loose>& loose) {
  if (std::all_of(positions.begin(), positions.end(),
                  [](const Position& position) { return position.group == 0; })) {
    return;
  }
  std::map<Id, const Feature*> owner;
  for (const Feature& feature : part.features) {
    for (const Place& place : placesOf(feature)) owner[place.id] = &feature;
  }
  std::map<int, std::vector<Id>> kin;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    if (positions[i].group != 0) kin[positions[i].group].push_back(network.places[i]);
  }
  const Id fixed = fixedPlace(network, positions);
  std::set<std::pair<const Feature*, int>> told;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    const int group = positions[i].group;
    const Id& id = network.places[i];
    if (group == 0 || !told.insert({owner[id], group}).second) continue;
    std::vector<Id> others;
    for (const Id& one : kin[group]) {
      if (others.size() > kMostNamed) break;
      if (owner[one] != owner[id]) others.push_back(one);
    }
    loose.push_back(
        {id, network.axis, adviceFor(part, *owner[id], id, network.axis, fixed, others)});
  }
}

std::vector<Id> placedFeatures(const Part& part, const Solution& solution) {
  std::vector<Id> placed;
  for (const Feature& feature : part.features) {
    const std::vector<Place> places = placesOf(feature);
    bool all = !places.empty();
    for (const Place& place : places) {
      for (const Axis axis : place.axes) {
        const Position* position = solution.position(place.id, axis);
        all = all && position != nullptr && position->group == 0;
      }
    }
    if (all) placed.push_back(feature.id);
  }
  return placed;
}

}  // namespace

Result<Solution> solve(const Part& part, const SolveOptions& options) {
  Solution solution;
  const auto systems = systemsOf(part);
  if (!systems) return systems.error();
  for (const Reading& reading : part.readings) solution.status[reading.id] = ReadingStatus::unused;
  for (const AxisSystem& system : *systems) {
    const AxisNetwork& ordered = system.network();
    const Axis axis = ordered.axis;
    auto outcome = solveAxis(part, system);
    if (!outcome) return outcome.error();
    for (std::size_t i = 0; i < ordered.places.size(); ++i) {
      solution.positions[{ordered.places[i], axis}] = outcome->positions[i];
    }
    for (const auto& [index, status] : outcome->status) {
      solution.status[part.readings[index].id] = status;
    }
    addLoose(part, ordered, outcome->positions, solution.loose);
    for (Clash& clash : outcome->clashes) solution.clashes.push_back(std::move(clash));
  }
  std::stable_sort(solution.loose.begin(), solution.loose.end(),
                   [](const Loose& a, const Loose& b) {
                     return std::pair(a.id, a.axis) < std::pair(b.id, b.axis);
                   });
  solution.placed = placedFeatures(part, solution);
  if (options.findSuspects) rankSuspects(part, *systems, solution);
  solution.doubts = doubtsOf(part, solution);
  return solution;
}

}  // namespace inchwright
