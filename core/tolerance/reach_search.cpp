#include "core/tolerance/reach_search.h"

#include <algorithm>

#include "core/graph/forest.h"
#include "core/tolerance/reach_front.h"

namespace inchwright {
namespace {

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
  joints_ = room<Joint>(nodes_);
  std::fill(joints_.begin(), joints_.end(), Joint{});
  edges_ = room<DifferenceEdge>(given_.size());
  std::copy(given_.begin(), given_.end(), edges_.begin());
  for (std::uint32_t number = 0; number < given_.size(); ++number) {
    const DifferenceEdge& edge = given_[number];
    if (edge.a == edge.b) continue;
    joints_[edge.a].add(number);
    joints_[edge.b].add(number);
  }
  joints_[source_].pin();
}

// Takes off nodes with one edge left until none is. The list of nodes to take off becomes that of
// the edges they hung on; a tree without the source leaves one node without any.
void ReachSearch::peelTrees() {
  const std::span<std::uint32_t> queue = room<std::uint32_t>(nodes_ + 1);
  std::uint32_t count = 0;
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    queue[count] = node;
    count += joints_[node].degree() == 1;
  }
  std::uint32_t peeled = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const std::uint32_t node = queue[i];
    if (joints_[node].degree() != 1) continue;
    const std::uint32_t number = joints_[node].edges();
    DifferenceEdge& edge = edges_[number];
    joints_[node] = {};
    queue[peeled++] = 2 * number + (edge.a == node ? 1 : 0);
    const std::uint32_t parent = farEnd(edge, node);
    edge.b = edge.a;
    joints_[parent].remove(number);
    queue[count] = parent;
    count += joints_[parent].degree() == 1;
  }
  leaves_ = queue.first(peeled);
}

// A node that is left over keeps more than two edges, unless rings hang on it.
void ReachSearch::findPairs() {
  pairs_ = room<std::uint32_t>(nodes_ + 1);
  kernel_ = room<std::uint32_t>(nodes_ + 1);
  std::uint32_t pairs = 0;
  std::uint32_t others = 0;
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    const std::uint32_t degree = joints_[node].degree();
    pairs_[pairs] = node;
    pairs += degree == 2;
    kernel_[others] = node;
    others += degree > 2;
  }
  pairs_ = pairs_.first(pairs);
  kernel_ = kernel_.first(others);
  edgeAt_ = room<std::uint32_t>(nodes_ + 1);
  for (std::uint32_t number = 0; number < edges_.size(); ++number) {
    const DifferenceEdge& edge = edges_[number];
    edgeAt_[isLeft(edge) ? edge.a : nodes_] = number;
    edgeAt_[isLeft(edge) ? edge.b : nodes_] = number;
  }
}

void ReachSearch::absorbRuns() {
  const std::span<Absorbed> absorbed = room<Absorbed>(pairs_.size());
  std::uint32_t count = 0;
  for (const std::uint32_t node : pairs_) {
    Joint& joint = joints_[node];
    if (joint.degree() != 2) continue;  // the last of a ring that nothing else is on
    const std::uint32_t first = edgeAt_[node];
    const std::uint32_t second = joint.edges() ^ first;
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
    joint = {};
    joints_[after].replace(second, first);
    // A ring that hangs on one node bounds nothing there.
    if (before == after) joints_[after].removeRing();
    edgeAt_[after] = first;
  }
  absorbed_ = absorbed.first(count);
}

void ReachSearch::listWays() {
  joints_[source_].unpin();
  firstWay_ = room<std::uint32_t>(kernel_.size() + 1);
  const std::span<std::uint32_t> placeOf = edgeAt_;
  std::uint32_t end = 0;
  for (std::uint32_t place = 0; place < kernel_.size(); ++place) {
    const std::uint32_t degree = joints_[kernel_[place]].degree();
    end += degree;
    mostWays_ = std::max(mostWays_, degree);
    firstWay_[place] = end;
    placeOf[kernel_[place]] = place;
  }
  firstWay_[kernel_.size()] = end;
  const std::span<std::uint32_t> left = room<std::uint32_t>(edges_.size() + 1);
  std::uint32_t count = 0;
  for (std::uint32_t number = 0; number < edges_.size(); ++number) {
    left[count] = number;
    count += isLeft(edges_[number]);
  }
  ways_ = room<ReachWay>(end);
  for (const std::uint32_t number : left.first(count)) {
    const DifferenceEdge& edge = edges_[number];
    const std::int64_t length = positions_[edge.b] - positions_[edge.a];
    const std::int64_t above = edge.high - length;
    const std::int64_t below = length - edge.low;
    const std::uint32_t a = placeOf[edge.a];
    const std::uint32_t b = placeOf[edge.b];
    ways_[--firstWay_[a]] = {b, number, {above, below}};
    ways_[--firstWay_[b]] = {a, number, {below, above}};
  }
}

void ReachSearch::search(Reach& reach) {
  if (joints_[source_].degree() == 0) return;
  const std::span<ReachStop> up = room<ReachStop>(kernel_.size());
  const std::span<ReachStop> down = room<ReachStop>(kernel_.size());
  const std::uint32_t source = edgeAt_[source_];
  ReachFront upFront(0, firstWay_, ways_, up, source);
  ReachFront downFront(1, firstWay_, ways_, down, source);
  if (mostWays_ <= ReachFront::kMostWays) {
    while (upFront.isNarrow() && downFront.isNarrow()) {
      upFront.step();
      downFront.step();
    }
  }
  upFront.finish();
  downFront.finish();
  for (std::size_t place = 0; place < kernel_.size(); ++place) {
    if (up[place].distance == NodeReach::kUnreached) continue;
    const std::uint32_t node = kernel_[place];
    const std::int64_t length = positions_[node] - positions_[source_];
    reach[node] = {length + up[place].distance, length - down[place].distance, up[place].by,
                   down[place].by};
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
