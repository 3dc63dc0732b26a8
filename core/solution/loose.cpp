#include "core/solution/loose.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/chain/feature_links.h"

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

// What a place lacks beside a distance of its own.
void tellLack(const Part& part, const Feature& feature, Loose& loose) {
  if (const auto* ring = feature.as<kind::Ring>(); ring && loose.id != feature.id) {
    if (ring->firstAngle && pitchDiameterOf(part, feature) != nullptr) return;
    loose.lacks = ring->firstAngle ? Loose::Lacks::pitchDiameter : Loose::Lacks::firstAngle;
    loose.of = feature.id;
    return;
  }
  const auto* round = feature.as<kind::Round>();
  if (round == nullptr) return;
  for (const Id& edge : round->corner) {
    const Feature* one = part.feature(edge);
    if (one == nullptr || axisOf(*one) != loose.axis || sideOf(*one)) continue;
    loose.lacks = Loose::Lacks::side;
    loose.of = edge;
    return;
  }
}

}  // namespace

bool isWithoutPlace(const Part& part, const AxisNetwork& network, std::size_t place) {
  const Feature& owner = part.features[network.owners[place]];
  const auto* slot = owner.as<kind::Slot>();
  return slot != nullptr && !slot->about.empty() && network.places[place] == owner.id;
}

std::vector<Loose> looseAlong(const Part& part, const AxisNetwork& network,
                              const std::vector<Position>& positions) {
  std::vector<Loose> all;
  std::map<int, std::vector<std::size_t>> kin;  // by group: nodes
  for (std::size_t i = 0; i < positions.size(); ++i) {
    if (positions[i].group != 0) kin[positions[i].group].push_back(i);
  }
  if (kin.empty()) return all;
  const Id fixed = fixedPlace(network, positions);
  std::set<std::pair<std::uint32_t, int>> told;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    const int group = positions[i].group;
    const std::uint32_t owner = network.owners[i];
    if (group == 0 || isWithoutPlace(part, network, i) || !told.insert({owner, group}).second)
      continue;
    Loose loose{network.places[i], network.axis};
    loose.fixed = fixed;
    for (const std::size_t one : kin[group]) {
      if (network.owners[one] == owner) continue;
      loose.moreKin = loose.kin.size() == kMostNamed;
      if (loose.moreKin) break;
      loose.kin.push_back(network.places[one]);
    }
    tellLack(part, part.features[owner], loose);
    all.push_back(std::move(loose));
  }
  return all;
}

}  // namespace inchwright
