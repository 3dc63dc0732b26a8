#include "core/tolerance/ranges.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/chain/label.h"
#include "core/graph/forest.h"
#include "core/tolerance/difference_graph.h"
#include "core/tolerance/relation_ranges.h"
#include "core/tolerance/two_connected.h"

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

// A toleranced reading of the print, and one of `among` unless that is empty.
bool isAskedFor(const Part& part, const TolerancedLink& link, const std::vector<Id>& among) {
  if (!link.toleranced || link.source.kind != SourceKind::reading) return false;
  const Reading& reading = part.readings[link.source.index];
  if (!reading.figure.tolerance) return false;
  return among.empty() || std::binary_search(among.begin(), among.end(), reading.id);
}

// A reading that the others of its block let go beyond its own limits.
std::optional<Unassured> unassuredIn(const Part& part, const ToleranceNetwork& network,
                                     const GroupedNetwork& grouped,
                                     const std::vector<std::int64_t>& printed,
                                     const std::vector<std::uint32_t>& block, std::uint32_t edge) {
  GroupedNetwork others;
  std::vector<std::int64_t> guess;
  std::map<std::uint32_t, std::uint32_t> numberOf;
  const auto number = [&](std::uint32_t group) {
    const auto [place, isNew] = numberOf.emplace(group, others.groups);
    if (isNew) {
      ++others.groups;
      guess.push_back(printed[group]);
    }
    return place->second;
  };
  for (const std::uint32_t other : block) {
    if (other == edge) continue;
    const DifferenceEdge& limits = grouped.edges[other];
    others.edges.push_back({number(limits.a), number(limits.b), limits.low, limits.high});
    others.linkOf.push_back(grouped.linkOf[other]);
  }
  const DifferenceEdge& own = grouped.edges[edge];
  const std::uint32_t a = number(own.a);
  const std::uint32_t b = number(own.b);
  const DifferenceGraph graph(others.groups, others.edges);
  const auto positions = graph.feasible(guess);
  if (!positions) return std::nullopt;
  const Reach reach = graph.from(a, *positions);
  if (reach[b].low >= own.low && reach[b].high <= own.high) return std::nullopt;
  const TolerancedLink& link = network.links[grouped.linkOf[edge]];
  const std::int64_t shift = link.low - own.low;
  const auto by = [&](bool high) {
    return labelsOf(part, network, others, DifferenceGraph::waysTo(reach, others.edges, b, high));
  };
  return Unassured{part.readings[link.source.index].id,
                   {link.low, link.high},
                   {reach[b].low + shift, reach[b].high + shift},
                   by(false),
                   by(true)};
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
  const GroupedNetwork grouped = groupRigidly(network);
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
    if (!reach[group].reached()) continue;
    ranges.places.push_back(placeRangeOf(part, network, grouped, reach, printed, *start, place));
  }
  return ranges;
}

Result<std::vector<Id>> contradictingReadings(const Part& part, const ToleranceNetwork& network) {
  const GroupedNetwork grouped = groupRigidly(network);
  if (!grouped.impossible.empty()) {
    return std::vector<Id>{labelOf(part, network.links[grouped.impossible.front()].source)};
  }
  const DifferenceGraph graph(grouped.groups, grouped.edges);
  if (graph.feasible(printedPositions(network, grouped, 0))) return std::vector<Id>{};
  return labelsOf(part, network, grouped, graph.contradiction());
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
  one.span = {reach[group].low + shift, reach[group].high + shift};
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
                                                 const std::vector<Id>& asked) {
  std::vector<Id> among = asked;
  std::sort(among.begin(), among.end());
  const GroupedNetwork grouped = groupRigidly(network);
  std::vector<Unassured> found;
  if (!grouped.impossible.empty()) return found;
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, 0);
  // What the others let a reading be is settled within its two-connected block; a reading that is a
  // block by itself, as most of a print, is all there is to hold it.
  std::vector<std::pair<std::uint32_t, Unassured>> byEdge;
  for (const std::vector<std::uint32_t>& block :
       twoConnectedBlocks(grouped.groups, grouped.edges)) {
    if (block.size() < 2) continue;
    for (const std::uint32_t edge : block) {
      const TolerancedLink& link = network.links[grouped.linkOf[edge]];
      if (!isAskedFor(part, link, among)) continue;
      std::optional<Unassured> one = unassuredIn(part, network, grouped, printed, block, edge);
      if (one && isOverall(part, *one)) byEdge.emplace_back(edge, std::move(*one));
    }
  }
  std::sort(byEdge.begin(), byEdge.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [edge, one] : byEdge) found.push_back(std::move(one));
  return found;
}

}  // namespace inchwright
