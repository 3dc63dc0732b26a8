#include "core/graph/shortest_ways.h"

#include <algorithm>
#include <queue>

namespace inchwright {

ShortestWays::ShortestWays(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
                           std::span<const std::int64_t> positions)
    : edges_(edges), positions_(positions), first_(nodeCount + 1, 0) {
  for (const DifferenceEdge& edge : edges) {
    ++first_[edge.a];
    ++first_[edge.b];
  }
  std::uint32_t end = 0;
  for (std::uint32_t& first : first_) first = end += first;
  arcs_.resize(end);
  for (std::uint32_t number = 0; number < edges.size(); ++number) {
    const DifferenceEdge& edge = edges[number];
    const std::int64_t length = positions[edge.b] - positions[edge.a];
    const std::int64_t above = edge.high - length, below = length - edge.low;
    arcs_[--first_[edge.a]] = {edge.b, number, {above, below}};
    arcs_[--first_[edge.b]] = {edge.a, number, {below, above}};
  }
}

template <class Reached>
void ShortestWays::search(std::uint32_t source, End end, std::uint32_t until, std::uint32_t without,
                          std::vector<Stop>& stops, const Reached& reached) const {
  using Waiting = std::pair<std::int64_t, std::uint32_t>;
  std::priority_queue<Waiting, std::vector<Waiting>, std::greater<>> queue;
  stops[source].distance = 0;
  reached(source, 0);
  queue.push({0, source});
  while (!queue.empty()) {
    const auto [distance, node] = queue.top();
    queue.pop();
    if (distance != stops[node].distance) continue;
    if (node == until) return;
    const std::uint32_t by = stops[node].by;
    for (std::uint32_t i = first_[node]; i < first_[node + 1]; ++i) {
      const Arc& arc = arcs_[i];
      const std::int64_t there = distance + arc.costs[static_cast<std::size_t>(end)];
      if (arc.edge == by || arc.edge == without) continue;
      if (there >= stops[arc.to].distance) continue;
      if (stops[arc.to].distance == INT64_MAX) reached(arc.to, first_[node + 1] - first_[node]);
      stops[arc.to] = {there, arc.edge};
      queue.push({there, arc.to});
    }
  }
}

std::vector<ShortestWays::Stop> ShortestWays::from(std::uint32_t source, End end) const {
  std::vector<Stop> stops(first_.size() - 1);
  search(source, end, kNone, kNone, stops, [](std::uint32_t, std::uint32_t) {});
  return stops;
}

std::optional<ShortestWays::Way> ShortestWays::between(std::uint32_t from, std::uint32_t to,
                                                       End end, std::uint32_t without) {
  stops_.resize(first_.size() - 1);
  std::vector<std::uint32_t> touched;
  search(from, end, to, without, stops_, [&](std::uint32_t node, std::uint32_t ways) {
    touched.push_back(node);
    looked_ += ways;
  });
  std::optional<Way> way;
  if (stops_[to].distance != INT64_MAX) {
    const std::int64_t beyond = stops_[to].distance;
    way = Way{positions_[to] - positions_[from] + (end == End::high ? beyond : -beyond), {}};
    for (std::uint32_t node = to; stops_[node].by != kNone;) {
      const DifferenceEdge& edge = edges_[stops_[node].by];
      way->edges.push_back(stops_[node].by);
      node = edge.a == node ? edge.b : edge.a;
    }
    std::reverse(way->edges.begin(), way->edges.end());
    looked_ += way->edges.size();
  }
  for (const std::uint32_t node : touched) stops_[node] = {};
  return way;
}

}  // namespace inchwright
