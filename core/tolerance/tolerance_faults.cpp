#include <algorithm>

#include "core/graph/difference_graph.h"
#include "core/part/axis.h"
#include "core/tolerance/ranges.h"

namespace inchwright {
namespace {

bool letters(const Part& part, const Source& source) {
  const Lettered* figure = figureOf(part, source);
  return figure != nullptr && (figure->tolerance || figure->basic);
}

bool allLetter(const Part& part, const std::vector<Source>& sources) {
  return std::all_of(sources.begin(), sources.end(),
                     [&](const Source& source) { return letters(part, source); });
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
      if (letters(part, link.source) && !isOneOf(clashing, id)) asked.push_back(id);
    }
    if (asked.empty()) continue;
    const Result<std::vector<Source>> contradicting = contradictingReadings(*network);
    if (!contradicting) return contradicting.error();
    const auto clashes = [&](const Source& source) {
      return source.kind == SourceKind::reading && isOneOf(clashing, idOf(part, source));
    };
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
