#include "core/tolerance/ranges.h"

#include <algorithm>

#include "core/chain/ordered.h"
#include "core/chain/skeleton.h"
#include "core/tolerance/difference_graph.h"
#include "core/tolerance/relation_ranges.h"

namespace inchwright {
namespace {

std::vector<Id> labelsOf(const Part& part, const ToleranceNetwork& network,
                         const GroupedNetwork& grouped, const std::vector<std::uint32_t>& edges) {
  std::vector<Id> labels;
  for (const std::uint32_t edge : edges) {
    labels.push_back(labelOf(part, network.links[grouped.linkOf[edge]].source));
  }
  return labels;
}

// Whether a reading is the one that a chain of others closes on: none of them is longer.
bool isOverall(const Part& part, const Unassured& one) {
  const auto lengthOf = [&](const Id& id) {
    const Reading* reading = part.reading(id);
    return reading ? reading->figure.value : Length();
  };
  const auto noLonger = [&](const Id& id) { return lengthOf(id) <= lengthOf(one.reading); };
  return std::all_of(one.lowBy.begin(), one.lowBy.end(), noLonger) &&
         std::all_of(one.highBy.begin(), one.highBy.end(), noLonger);
}

}  // namespace

std::vector<std::int64_t> printedPositions(const ToleranceNetwork& network,
                                           const GroupedNetwork& grouped, std::uint32_t first) {
  std::vector<std::vector<std::uint32_t>> at(grouped.groups);
  for (std::uint32_t i = 0; i < grouped.edges.size(); ++i) {
    at[grouped.edges[i].a].push_back(i);
    at[grouped.edges[i].b].push_back(i);
  }
  std::vector<std::int64_t> positions(grouped.groups, 0);
  std::vector<bool> seen(grouped.groups, false);
  std::vector<std::uint32_t> starts{first};
  for (std::uint32_t group = 0; group < grouped.groups; ++group) starts.push_back(group);
  for (const std::uint32_t start : starts) {
    if (seen[start]) continue;
    seen[start] = true;
    std::vector<std::uint32_t> queue{start};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (const std::uint32_t number : at[queue[i]]) {
        const DifferenceEdge& edge = grouped.edges[number];
        const bool forward = edge.a == queue[i];
        const std::uint32_t next = forward ? edge.b : edge.a;
        if (seen[next]) continue;
        seen[next] = true;
        const TolerancedLink& link = network.links[grouped.linkOf[number]];
        const std::int64_t printed = edge.low + (link.nominal - link.low);
        positions[next] = positions[queue[i]] + (forward ? printed : -printed);
        queue.push_back(next);
      }
    }
  }
  return positions;
}

Result<Ranges> rangesFrom(const Part& part, const ToleranceNetwork& network,
                          std::string_view from) {
  const Result<std::uint32_t> start = nodeAlong(part, network, from);
  if (!start) return start.error();
  const GroupedNetwork grouped = groupRigidly(network, Basic::edge);
  Ranges ranges;
  if (!grouped.impossible.empty()) {
    const TolerancedLink& link = network.links[grouped.impossible.front()];
    ranges.contradiction.push_back(labelOf(part, link.source));
    return ranges;
  }
  const std::uint32_t source = grouped.group[*start];
  const DifferenceGraph graph(grouped.groups, grouped.edges);
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, source);
  const auto positions = graph.feasible(printed);
  if (!positions) {
    ranges.contradiction = labelsOf(part, network, grouped, graph.contradiction());
    return ranges;
  }
  if (!network.relations.empty()) {
    return rangesWithRelations(part, network, grouped, graph, *positions, *start);
  }
  const Reach reach = graph.from(source, *positions);
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const std::uint32_t group = grouped.group[place];
    if (!reach.reached(group)) continue;
    ranges.places.push_back(placeRangeOf(part, network, grouped, reach, printed, *start, place));
  }
  return ranges;
}

PlaceRange placeRangeOf(const Part& part, const ToleranceNetwork& network,
                        const GroupedNetwork& grouped, const Reach& reach,
                        const std::vector<std::int64_t>& printed, std::uint32_t start,
                        std::uint32_t place) {
  const std::uint32_t group = grouped.group[place];
  const std::int64_t shift = grouped.offset[place] - grouped.offset[start];
  PlaceRange one;
  one.id = network.places[place];
  one.nominal = printed[group] - printed[grouped.group[start]] + shift;
  one.span = {reach.low[group] + shift, reach.high[group] + shift};
  const std::size_t most = std::max<std::size_t>(1, kMostMembersNamed / network.places.size());
  const auto by = [&](bool high) {
    return labelsOf(part, network, grouped,
                    DifferenceGraph::waysTo(reach, grouped.edges, group, high, most));
  };
  one.lowBy = by(false);
  one.highBy = by(true);
  return one;
}

Result<std::vector<Unassured>> unassuredReadings(const Part& part, const ToleranceNetwork& network,
                                                 const std::vector<Id>& among) {
  const GroupedNetwork grouped = groupRigidly(network, Basic::edge);
  std::vector<Unassured> found;
  if (!grouped.impossible.empty()) return found;
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, 0);
  for (std::uint32_t i = 0; i < grouped.edges.size(); ++i) {
    const TolerancedLink& link = network.links[grouped.linkOf[i]];
    if (!link.toleranced || link.source.kind != SourceKind::reading) continue;
    if (!part.readings[link.source.index].figure.tolerance) continue;
    const Id& id = part.readings[link.source.index].id;
    if (!among.empty() && std::find(among.begin(), among.end(), id) == among.end()) continue;
    GroupedNetwork others = grouped;
    others.edges.erase(others.edges.begin() + i);
    others.linkOf.erase(others.linkOf.begin() + i);
    const DifferenceEdge& edge = grouped.edges[i];
    const DifferenceGraph graph(others.groups, others.edges);
    const auto positions = graph.feasible(printed);
    if (!positions) continue;
    const Reach reach = graph.from(edge.a, *positions);
    if (!reach.reached(edge.b)) continue;
    if (reach.low[edge.b] >= edge.low && reach.high[edge.b] <= edge.high) continue;
    const std::int64_t shift = link.low - edge.low;
    Unassured one{
        id, {link.low, link.high}, {reach.low[edge.b] + shift, reach.high[edge.b] + shift}, {}, {}};
    one.lowBy = labelsOf(part, network, others,
                         DifferenceGraph::waysTo(reach, others.edges, edge.b, false));
    one.highBy =
        labelsOf(part, network, others, DifferenceGraph::waysTo(reach, others.edges, edge.b, true));
    if (!isOverall(part, one)) continue;
    found.push_back(std::move(one));
  }
  return found;
}

}  // namespace inchwright
