#include "core/graph/shortest_ways.h"

#include <algorithm>

#include "core/base/checked.h"

namespace inchwright {
namespace {

/// Nodes by their distance, the nearest first, of those as near the one of the lowest number. A
/// heap in which each has four below it: half as many levels as with two, and which of four is the
/// least is told without a branch that could be guessed wrong.
class Waiting {
 public:
  bool empty() const { return heap_.empty(); }

  void push(std::int64_t distance, std::uint32_t node) {
    const Key key = Key{distance} << 32 | node;
    std::size_t at = heap_.size();
    heap_.push_back(key);
    for (; at > 0 && key < heap_[(at - 1) / kBelow]; at = (at - 1) / kBelow) {
      heap_[at] = heap_[(at - 1) / kBelow];
    }
    heap_[at] = key;
  }

  std::pair<std::int64_t, std::uint32_t> pop() {
    const Key nearest = heap_.front(), last = heap_.back();
    heap_.pop_back();
    for (std::size_t at = 0; !heap_.empty();) {
      const std::size_t below = leastBelow(at);
      if (below >= heap_.size() || last <= heap_[below]) {
        heap_[at] = last;
        break;
      }
      heap_[at] = heap_[below];
      at = below;
    }
    return {static_cast<std::int64_t>(nearest >> 32), static_cast<std::uint32_t>(nearest)};
  }

 private:
  using Key = Int128;  ///< distance and node, which compare as one number
  static constexpr std::size_t kBelow = 4;

  /// The least of those below one; beyond the end where none are.
  std::size_t leastBelow(std::size_t at) const {
    const auto less = [this](std::size_t a, std::size_t b) { return heap_[b] < heap_[a] ? b : a; };
    const std::size_t first = kBelow * at + 1;
    if (first + kBelow <= heap_.size()) {
      return less(less(first, first + 1), less(first + 2, first + 3));
    }
    std::size_t least = first;
    for (std::size_t one = first + 1; one < heap_.size(); ++one) least = less(least, one);
    return least;
  }

  std::vector<Key> heap_;
};

}  // namespace

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
  Waiting waiting;
  stops[source].distance = 0;
  reached(source, 0);
  waiting.push(0, source);
  while (!waiting.empty()) {
    const auto [distance, node] = waiting.pop();
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
      waiting.push(there, arc.to);
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
