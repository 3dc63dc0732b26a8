#include "core/tolerance/ranges.h"

#include <algorithm>
#include <utility>

#include "core/graph/difference_graph.h"
#include "core/graph/edges_at.h"
#include "core/graph/forest.h"
#include "core/graph/ways_to.h"
#include "core/tolerance/relation_ranges.h"

namespace inchwright {
namespace {

std::vector<Source> sourcesOf(const ToleranceNetwork& network, const GroupedNetwork& grouped,
                              const std::vector<std::uint32_t>& edges) {
  std::vector<Source> sources;
  sources.reserve(edges.size());
  for (const std::uint32_t edge : edges) {
    sources.push_back(network.links[grouped.linkOf[edge]].source);
  }
  return sources;
}

}  // namespace

std::vector<std::int64_t> printedPositions(const ToleranceNetwork& network,
                                           const GroupedNetwork& grouped, std::uint32_t first) {
  const EdgesAt at(grouped.groups, grouped.edges.size(), [&](std::uint32_t number) {
    return std::pair(grouped.edges[number].a, grouped.edges[number].b);
  });
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
        const std::int64_t printed = edge.low + (link.nominal - link.low) * grouped.scale;
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
    ranges.contradiction.push_back(link.source);
    return ranges;
  }
  const std::uint32_t source = grouped.group[*start];
  const DifferenceGraph graph(grouped.groups, grouped.edges);
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, source);
  const auto positions = graph.feasible(printed);
  if (!positions) {
    ranges.contradiction = sourcesOf(network, grouped, graph.contradiction());
    return ranges;
  }
  if (!network.relations.empty()) {
    return rangesWithRelations(part, network, grouped, graph, *positions, *start);
  }
  const Reach reach = graph.from(source, *positions);
  ranges.places = placeRangesOf(network, grouped, reach, printed, *start);
  return ranges;
}

Result<std::vector<Source>> contradictingReadings(const ToleranceNetwork& network) {
  const GroupedNetwork grouped = groupRigidly(network);
  if (!grouped.impossible.empty()) {
    return std::vector<Source>{network.links[grouped.impossible.front()].source};
  }
  const DifferenceGraph graph(grouped.groups, grouped.edges);
  if (graph.feasible(printedPositions(network, grouped, 0))) return std::vector<Source>{};
  return sourcesOf(network, grouped, graph.contradiction());
}

std::vector<PlaceRange> placeRangesOf(const ToleranceNetwork& network,
                                      const GroupedNetwork& grouped, const Reach& reach,
                                      const std::vector<std::int64_t>& printed,
                                      std::uint32_t start) {
  const std::size_t most = std::max<std::size_t>(1, kMostMembersNamed / network.places.size());
  WaysTo low(reach, grouped.edges, false, most);
  WaysTo high(reach, grouped.edges, true, most);
  const std::int64_t from = printed[grouped.group[start]];
  std::vector<PlaceRange> ranges;
  ranges.reserve(network.places.size());
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const std::uint32_t group = grouped.group[place];
    if (!reach[group].reached()) continue;
    const std::int64_t shift = grouped.offset[place] - grouped.offset[start];
    PlaceRange& one = ranges.emplace_back();
    one.id = network.places[place];
    one.nominal = nearestTick(printed[group] - from + shift, grouped.scale);
    one.span = {ticksBelow(reach[group].low + shift, grouped.scale),
                ticksAbove(reach[group].high + shift, grouped.scale)};
    one.lowBy = sourcesOf(network, grouped, low(group));
    one.highBy = sourcesOf(network, grouped, high(group));
  }
  return ranges;
}

}  // namespace inchwright
