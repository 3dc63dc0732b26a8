#include "core/tolerance/difference_graph.h"

#include <algorithm>
#include <functional>

#include "core/chain/skeleton.h"

namespace inchwright {

DifferenceGraph::DifferenceGraph(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges)
    : nodes_(nodeCount), edges_(edges), joints_(nodeCount) {
  std::uint32_t number = 0;
  for (const DifferenceEdge& edge : edges_) {
    const std::uint32_t own = number++;
    if (edge.a == edge.b) continue;
    for (const std::uint32_t node : {edge.a, edge.b}) {
      ++joints_[node].degree;
      joints_[node].edges ^= own;
    }
  }
  peel();
  listWays();
}

// Takes off nodes with one edge left until none is; a tree leaves one node without any.
void DifferenceGraph::peel() {
  leaves_.reserve(nodes_);
  for (std::uint32_t start = 0; start < nodes_; ++start) {
    std::uint32_t node = start;
    while (joints_[node].degree == 1) {
      const std::uint32_t edge = joints_[node].edges;
      const Step step = stepFrom(node, edge) ^ 1;
      leaves_.push_back(step);
      joints_[node].degree = 0;
      node = startOf(step);
      --joints_[node].degree;
      joints_[node].edges ^= edge;
    }
  }
}

void DifferenceGraph::listWays() {
  std::uint32_t count = 0;
  for (Joint& joint : joints_) {
    if (joint.degree <= 2) continue;
    joint.edges = count;
    count += joint.degree;
  }
  ways_.resize(count);
  for (std::uint32_t i = 0; i < edges_.size(); ++i) {
    const DifferenceEdge& edge = edges_[i];
    if (!isLeft(edge)) continue;
    Joint& a = joints_[edge.a];
    Joint& b = joints_[edge.b];
    if (a.degree > 2) ways_[a.edges++] = {edge.b, 2 * i, {edge.high, -edge.low}};
    if (b.degree > 2) ways_[b.edges++] = {edge.a, 2 * i + 1, {-edge.low, edge.high}};
  }
}

/// Nodes that wait in a search, to be taken by the least key. In most prints few wait at a
/// time: those are looked through without a branch that could be guessed wrong, and only what is
/// beyond goes into a heap.
class DifferenceGraph::Queue {
 public:
  struct Entry {
    std::int64_t key = INT64_MAX;
    std::uint32_t node = 0;
    bool operator>(const Entry& other) const { return key > other.key; }
  };

  bool isEmpty() const { return count_ == 0 && heap_.empty(); }

  void push(const Entry& entry) {
    if (count_ < kFew) {
      few_[count_++] = entry;
      return;
    }
    heap_.push_back(entry);
    std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
  }

  Entry pop() {
    const std::uint32_t end = (count_ + kStride - 1) / kStride * kStride;
    std::uint32_t least = 0;
    std::int64_t key = few_[0].key;
    for (std::uint32_t i = 1; i < end; ++i) {
      const bool isLess = few_[i].key < key;
      key = isLess ? few_[i].key : key;
      least = isLess ? i : least;
    }
    if (!heap_.empty() && (count_ == 0 || few_[least] > heap_.front())) return popFar();
    const Entry entry = few_[least];
    few_[least] = few_[--count_];
    few_[count_].key = INT64_MAX;
    return entry;
  }

 private:
  static constexpr std::uint32_t kStride = 8;
  static constexpr std::uint32_t kFew = 3 * kStride;

  Entry popFar() {
    std::pop_heap(heap_.begin(), heap_.end(), std::greater<>());
    const Entry entry = heap_.back();
    heap_.pop_back();
    return entry;
  }

  std::array<Entry, kFew> few_ = {};  ///< keys past `count_` are INT64_MAX
  std::uint32_t count_ = 0;
  std::vector<Entry> heap_;
};

/// One sweep over the graph: side 0 for the high ends, or side 1 for the low ones, whose distances
/// are counted downwards.
struct DifferenceGraph::Sweep {
  const DifferenceGraph& graph;
  std::span<const std::int64_t> positions;
  std::uint32_t side;
  std::vector<std::int64_t>& distance;
  std::vector<std::uint32_t>& by;
  Queue queue = {};

  bool reached(std::uint32_t node) const { return distance[node] != Reach::kUnreached; }
  // Positions are taken off distances so that no step costs less than nothing.
  std::int64_t keyOf(std::uint32_t node) const {
    return side == 0 ? distance[node] - positions[node] : distance[node] + positions[node];
  }
  bool lower(std::uint32_t node, std::int64_t value, Step step) {
    if (value >= distance[node]) return false;
    distance[node] = value;
    by[node] = step >> 1;
    return true;
  }

  void run(std::uint32_t source);
  void leaveRun(std::uint32_t source);
  void walkOn(Step step);
  void search();
};

void DifferenceGraph::Sweep::run(std::uint32_t source) {
  distance.assign(graph.nodes_, Reach::kUnreached);
  by.assign(graph.nodes_, kNone);
  distance[source] = 0;
  for (const Step leaf : graph.leaves_) {
    if (graph.endOf(leaf) != source) continue;
    const std::uint32_t parent = graph.startOf(leaf);
    lower(parent, distance[source] + graph.costOf(leaf ^ 1, side), leaf);
    source = parent;
  }
  if (graph.joints_[source].degree == 2) leaveRun(source);
  if (graph.joints_[source].degree > 2) queue.push({keyOf(source), source});
  search();
  for (auto leaf = graph.leaves_.rbegin(); leaf != graph.leaves_.rend(); ++leaf) {
    const std::uint32_t node = graph.endOf(*leaf);
    const std::int64_t parent = distance[graph.startOf(*leaf)];
    if (parent == Reach::kUnreached || reached(node)) continue;
    distance[node] = parent + graph.costOf(*leaf, side);
    by[node] = *leaf >> 1;
  }
}

// The source lies inside a run: on from it both ways.
void DifferenceGraph::Sweep::leaveRun(std::uint32_t source) {
  std::uint32_t edge = 0;
  const auto isThere = [&](const DifferenceEdge& one) {
    return graph.isLeft(one) && (one.a == source || one.b == source);
  };
  while (!isThere(graph.edges_[edge])) ++edge;
  for (const std::uint32_t one : {edge, graph.joints_[source].edges ^ edge}) {
    const Step step = graph.stepFrom(source, one);
    if (lower(graph.endOf(step), distance[source] + graph.costOf(step, side), step)) walkOn(step);
  }
}

// Goes on from the end of a step that was lowered: along the run, as far as that lowers its nodes,
// or into the queue.
void DifferenceGraph::Sweep::walkOn(Step step) {
  std::uint32_t node = graph.endOf(step);
  while (graph.joints_[node].degree == 2) {
    step = graph.stepFrom(node, graph.joints_[node].edges ^ (step >> 1));
    const std::int64_t value = distance[node] + graph.costOf(step, side);
    node = graph.endOf(step);
    if (!lower(node, value, step)) return;
  }
  queue.push({keyOf(node), node});
}

// Dijkstra's algorithm over the nodes with more than two edges.
void DifferenceGraph::Sweep::search() {
  while (!queue.isEmpty()) {
    const Queue::Entry next = queue.pop();
    if (next.key > keyOf(next.node)) continue;
    const std::int64_t here = distance[next.node];
    const Joint& joint = graph.joints_[next.node];
    for (std::uint32_t i = joint.edges - joint.degree; i < joint.edges; ++i) {
      const Way& way = graph.ways_[i];
      if (lower(way.to, here + way.costs[side], way.step)) walkOn(way.step);
    }
  }
}

Reach DifferenceGraph::from(std::uint32_t source,
                            std::span<const std::int64_t> feasiblePositions) const {
  Reach reach;
  Sweep{*this, feasiblePositions, 0, reach.high, reach.highBy}.run(source);
  Sweep{*this, feasiblePositions, 1, reach.low, reach.lowBy}.run(source);
  for (std::int64_t& low : reach.low) low = low == Reach::kUnreached ? low : -low;
  return reach;
}

std::vector<std::uint32_t> DifferenceGraph::waysTo(const Reach& reach,
                                                   std::span<const DifferenceEdge> edges,
                                                   std::uint32_t node, bool high,
                                                   std::size_t most) {
  const std::vector<std::uint32_t>& by = high ? reach.highBy : reach.lowBy;
  std::vector<std::uint32_t> way;
  while (by[node] != kNone && way.size() < most) {
    const std::uint32_t edge = by[node];
    way.push_back(edge);
    node = edges[edge].a == node ? edges[edge].b : edges[edge].a;
  }
  std::reverse(way.begin(), way.end());
  return way;
}

}  // namespace inchwright
