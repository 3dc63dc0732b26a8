#include <algorithm>

#include "core/part/axis.h"
#include "core/tolerance/difference_graph.h"
#include "core/tolerance/ranges.h"

namespace inchwright {
namespace {

bool letters(const Part& part, const Id& id) {
  const Reading* reading = part.reading(id);
  return reading && (reading->figure.tolerance || reading->figure.basic);
}

bool allLetter(const Part& part, const std::vector<Id>& ids) {
  return std::all_of(ids.begin(), ids.end(), [&](const Id& id) { return letters(part, id); });
}

bool isOneOf(const std::vector<Id>& ids, const Id& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

// Only what takes it beyond its limits has to be lettered.
bool isLettered(const Part& part, const Unassured& one) {
  const bool high = one.others.high > one.allowed.high && allLetter(part, one.highBy);
  const bool low = one.others.low < one.allowed.low && allLetter(part, one.lowBy);
  return high || low;
}

}  // namespace

Result<std::vector<ToleranceFault>> toleranceFaults(const Part& part,
                                                    const std::vector<Id>& clashing) {
  std::vector<ToleranceFault> faults;
  for (const Axis axis : kAxes) {
    const auto network = toleranceNetworkOf(part, axis);
    if (!network) return network.error();
    std::vector<Id> asked;
    for (const TolerancedLink& link : network->links) {
      if (!link.toleranced || link.source.kind != SourceKind::reading) continue;
      const Id& id = part.readings[link.source.index].id;
      if (letters(part, id) && !isOneOf(clashing, id)) asked.push_back(id);
    }
    if (asked.empty()) continue;
    const Result<std::vector<Id>> contradicting = contradictingReadings(part, *network);
    if (!contradicting) return contradicting.error();
    const auto clashes = [&](const Id& id) { return isOneOf(clashing, id); };
    const bool isNew = !contradicting->empty() &&
                       std::none_of(contradicting->begin(), contradicting->end(), clashes);
    if (isNew) faults.push_back({axis, *contradicting, {}});
    const auto unassured = unassuredReadings(part, *network, asked);
    if (!unassured) return unassured.error();
    for (const Unassured& one : unassured->found) {
      if (isLettered(part, one)) faults.push_back({axis, {}, one});
    }
  }
  return faults;
}

}  // namespace inchwright
