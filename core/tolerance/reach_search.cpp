#include "core/tolerance/reach_search.h"

#include <algorithm>

#include "core/chain/skeleton.h"
#include "core/tolerance/reach_queue.h"

namespace inchwright {
namespace {

/// Added to the edges of the source, so that it is neither peeled off nor absorbed.
constexpr std::uint32_t kPinned = std::uint32_t{1} << 31;

/// A little more than all that a search sets aside, in bytes a node and an edge.
constexpr std::size_t kBytesANode = 128;
constexpr std::size_t kBytesAnEdge = 80;

}  // namespace

ReachSearch::ReachSearch(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
                         std::uint32_t source, std::span<const std::int64_t> positions)
    : nodes_(nodeCount),
      given_(edges),
      source_(source),
      positions_(positions),
      memory_((nodeCount + 1) * kBytesANode + (edges.size() + 1) * kBytesAnEdge) {}

Reach ReachSearch::run() {
  countEdges();
  peelTrees();
  findPairs();
  absorbRuns();
  listWays();
  Reach reach(nodes_);
  reach[source_] = {0, 0, kNone, kNone};
  search(reach);
  unfoldRuns(reach);
  unfoldTrees(reach);
  return reach;
}

void ReachSearch::countEdges() {
  joints_ = room<Joint>(nodes_ + 1);
  std::fill(joints_.begin(), joints_.end(), Joint{});
  edges_ = room<DifferenceEdge>(given_.size());
  std::copy(given_.begin(), given_.end(), edges_.begin());
  for (std::uint32_t number = 0; number < given_.size(); ++number) {
    const DifferenceEdge& edge = given_[number];
    if (edge.a == edge.b) continue;
    for (const std::uint32_t node : {edge.a, edge.b}) {
      ++joints_[node].degree;
      joints_[node].edges ^= number;
    }
  }
  joints_[source_].degree += kPinned;
}

// Takes off nodes with one edge left until none is. The list of nodes to take off becomes that of
// the edges they hung on; a tree without the source leaves one node without any.
void ReachSearch::peelTrees() {
  const std::span<std::uint32_t> queue = room<std::uint32_t>(nodes_ + 1);
  std::uint32_t count = 0;
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    queue[count] = node;
    count += joints_[node].degree == 1;
  }
  std::uint32_t peeled = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const std::uint32_t node = queue[i];
    if (joints_[node].degree != 1) continue;
    const std::uint32_t number = joints_[node].edges;
    DifferenceEdge& edge = edges_[number];
    joints_[node].degree = 0;
    queue[peeled++] = 2 * number + (edge.a == node ? 1 : 0);
    const std::uint32_t parent = farEnd(edge, node);
    edge.b = edge.a;
    --joints_[parent].degree;
    joints_[parent].edges ^= number;
    queue[count] = parent;
    count += joints_[parent].degree == 1;
  }
  leaves_ = queue.first(peeled);
}

void ReachSearch::findPairs() {
  const std::span<std::uint32_t> pairs = room<std::uint32_t>(nodes_ + 1);
  std::uint32_t count = 0;
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    pairs[count] = node;
    count += joints_[node].degree == 2;
  }
  pairs_ = pairs.first(count);
  // Edges that are gone write to the joint beyond the last.
  for (std::uint32_t number = 0; number < edges_.size(); ++number) {
    const DifferenceEdge& edge = edges_[number];
    joints_[isLeft(edge) ? edge.a : nodes_].any = number;
    joints_[isLeft(edge) ? edge.b : nodes_].any = number;
  }
}

void ReachSearch::absorbRuns() {
  const std::span<Absorbed> absorbed = room<Absorbed>(pairs_.size());
  std::uint32_t count = 0;
  for (const std::uint32_t node : pairs_) {
    Joint& joint = joints_[node];
    if (joint.degree != 2) continue;  // the last of a ring that nothing else is on
    const std::uint32_t first = joint.any;
    const std::uint32_t second = joint.edges ^ first;
    DifferenceEdge& kept = edges_[first];
    DifferenceEdge& gone = edges_[second];
    const std::uint32_t before = farEnd(kept, node);
    const std::uint32_t after = farEnd(gone, node);
    const Limits fromBefore = limitsFrom(before, kept);
    const Limits onward = limitsFrom(node, gone);
    absorbed[count++] = {
        node, before, after, first, second, fromBefore, {-onward.high, -onward.low}};
    kept = {before, after, fromBefore.low + onward.low, fromBefore.high + onward.high};
    gone.b = gone.a;
    joint.degree = 0;
    // A ring that hangs on one node bounds nothing there.
    joints_[after].degree -= before == after ? 2 : 0;
    joints_[after].edges ^= first ^ second;
    joints_[after].any = first;
  }
  absorbed_ = absorbed.first(count);
}

void ReachSearch::listWays() {
  joints_[source_].degree -= kPinned;
  kernel_ = room<std::uint32_t>(nodes_ + 1);
  firstWay_ = room<std::uint32_t>(nodes_ + 1);
  std::uint32_t count = 0;
  std::uint32_t end = 0;
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    end += joints_[node].degree;
    kernel_[count] = node;
    firstWay_[node] = end;
    count += joints_[node].degree != 0;
  }
  firstWay_[nodes_] = end;
  kernel_ = kernel_.first(count);
  const std::span<std::uint32_t> left = room<std::uint32_t>(edges_.size() + 1);
  count = 0;
  for (std::uint32_t number = 0; number < edges_.size(); ++number) {
    left[count] = number;
    count += isLeft(edges_[number]);
  }
  ways_ = room<Way>(end);
  for (const std::uint32_t number : left.first(count)) {
    const DifferenceEdge& edge = edges_[number];
    const std::int64_t length = positions_[edge.b] - positions_[edge.a];
    const std::int64_t above = edge.high - length;
    const std::int64_t below = length - edge.low;
    ways_[--firstWay_[edge.a]] = {edge.b, number, {above, below}};
    ways_[--firstWay_[edge.b]] = {edge.a, number, {below, above}};
  }
}

void ReachSearch::search(Reach& reach) {
  if (joints_[source_].degree == 0) return;
  std::array<std::span<std::int64_t>, 2> distance;
  std::array<std::span<std::uint32_t>, 2> by;
  for (std::size_t side = 0; side < 2; ++side) {
    distance[side] = room<std::int64_t>(nodes_);
    by[side] = room<std::uint32_t>(nodes_);
    searchSide(side, distance[side], by[side]);
  }
  for (const std::uint32_t node : kernel_) {
    if (distance[0][node] == NodeReach::kUnreached) continue;
    const std::int64_t length = positions_[node] - positions_[source_];
    reach[node] = {length + distance[0][node], length - distance[1][node], by[0][node],
                   by[1][node]};
  }
}

// Dijkstra's algorithm over what is left.
void ReachSearch::searchSide(std::size_t side, std::span<std::int64_t> distance,
                             std::span<std::uint32_t> by) {
  std::fill(distance.begin(), distance.end(), NodeReach::kUnreached);
  distance[source_] = 0;
  by[source_] = kNone;
  ReachQueue queue;
  queue.push({0, source_});
  while (!queue.isEmpty()) {
    const ReachQueue::Entry next = queue.pop();
    if (next.key > distance[next.node]) continue;
    for (std::uint32_t i = firstWay_[next.node]; i < firstWay_[next.node + 1]; ++i) {
      const Way& way = ways_[i];
      const std::int64_t value = next.key + way.costs[side];
      if (value >= distance[way.to]) continue;
      distance[way.to] = value;
      by[way.to] = way.edge;
      queue.push({value, way.to});
      __builtin_prefetch(&ways_[firstWay_[way.to]]);
    }
  }
}

// A node between two others lies where both let it. Where one of them was reached through it, it
// was reached from the other, also where zero costs make that as far as the way back.
void ReachSearch::unfoldRuns(Reach& reach) const {
  for (auto one = absorbed_.rbegin(); one != absorbed_.rend(); ++one) {
    const NodeReach& before = reach[one->before];
    NodeReach& after = reach[one->after];
    if (!before.reached()) continue;
    const std::int64_t high = before.high + one->fromBefore.high;
    const std::int64_t low = before.low + one->fromBefore.low;
    const std::int64_t otherHigh = after.high + one->fromAfter.high;
    const std::int64_t otherLow = after.low + one->fromAfter.low;
    const bool highFirst =
        (high < otherHigh) | ((high == otherHigh) & (before.highBy != one->first));
    const bool lowFirst = (low > otherLow) | ((low == otherLow) & (before.lowBy != one->first));
    reach[one->node] = {highFirst ? high : otherHigh, lowFirst ? low : otherLow,
                        highFirst ? one->first : one->second, lowFirst ? one->first : one->second};
    after.highBy = after.highBy == one->first ? one->second : after.highBy;
    after.lowBy = after.lowBy == one->first ? one->second : after.lowBy;
  }
}

void ReachSearch::unfoldTrees(Reach& reach) const {
  for (auto leaf = leaves_.rbegin(); leaf != leaves_.rend(); ++leaf) {
    const std::uint32_t number = *leaf >> 1;
    const DifferenceEdge& edge = given_[number];
    const bool isFirst = (*leaf & 1) != 0;
    const std::uint32_t parent = isFirst ? edge.b : edge.a;
    if (!reach[parent].reached()) continue;
    const Limits limits = limitsFrom(parent, edge);
    reach[isFirst ? edge.a : edge.b] = {reach[parent].high + limits.high,
                                        reach[parent].low + limits.low, number, number};
  }
}

}  // namespace inchwright
