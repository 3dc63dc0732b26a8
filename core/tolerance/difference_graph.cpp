#include "core/tolerance/difference_graph.h"

#include <algorithm>
#include <functional>

#include "core/chain/skeleton.h"

namespace inchwright {

/// Takes the graph apart into leaves, runs and junctions.
class DifferenceGraph::Builder {
 public:
  explicit Builder(DifferenceGraph& graph) : graph_(graph), joints_(graph.nodes_) {
    std::uint32_t number = 0;
    for (const DifferenceEdge& edge : graph_.edges_) {
      const std::uint32_t own = number++;
      if (edge.a == edge.b) continue;
      for (const std::uint32_t node : {edge.a, edge.b}) {
        ++joints_[node].degree;
        joints_[node].edges ^= own;
      }
    }
  }

  void peel();
  void findRuns();

 private:
  /// A node: how many edges it has left, and the exclusive or of their numbers. That is the edge
  /// itself where one is left, and where there are two it leads from either to the other, so that
  /// trees and runs need no lists of edges by node.
  struct Joint {
    static constexpr std::uint32_t kJunction = kNone;

    std::uint32_t degree = 0;  ///< 0 once done with; kJunction once it has a number
    std::uint32_t edges = 0;   ///< of a junction its number
  };

  bool isLeft(const DifferenceEdge& edge) const {
    return edge.a != edge.b && joints_[edge.a].degree != 0 && joints_[edge.b].degree != 0;
  }
  void makeRoom();
  void walkRun(Step step);
  std::uint32_t junctionAt(std::uint32_t node);
  void addWay(std::uint32_t junction, const Way& way) { graph_.ways_[nextWay_[junction]++] = way; }

  DifferenceGraph& graph_;
  std::vector<Joint> joints_;
  std::vector<std::uint32_t> nextWay_;  ///< by junction
};

// Takes off nodes with one edge left until none is; a tree leaves one node without any.
void DifferenceGraph::Builder::peel() {
  graph_.leaves_.reserve(graph_.nodes_);
  for (std::uint32_t start = 0; start < graph_.nodes_; ++start) {
    std::uint32_t node = start;
    while (joints_[node].degree == 1) {
      const std::uint32_t edge = joints_[node].edges;
      const Step step = graph_.stepFrom(node, edge) ^ 1;
      graph_.leaves_.push_back(step);
      joints_[node].degree = 0;
      node = graph_.startOf(step);
      --joints_[node].degree;
      joints_[node].edges ^= edge;
    }
  }
}

void DifferenceGraph::Builder::makeRoom() {
  std::size_t junctions = 0;
  std::size_t ways = 0;
  for (const Joint& joint : joints_) {
    junctions += joint.degree > 2 ? 1 : 0;
    ways += joint.degree > 2 ? joint.degree : 0;
  }
  graph_.junctions_.reserve(junctions);
  graph_.firstWay_.reserve(junctions + 1);
  graph_.firstWay_.push_back(0);
  nextWay_.reserve(junctions);
  graph_.ways_.resize(ways);
}

void DifferenceGraph::Builder::findRuns() {
  makeRoom();
  const std::span<const DifferenceEdge> edges = graph_.edges_;
  const auto count = static_cast<std::uint32_t>(edges.size());
  for (std::uint32_t i = 0; i < count; ++i) {
    if (!isLeft(edges[i])) continue;
    if (joints_[edges[i].a].degree > 2) {
      walkRun(2 * i);
    } else if (joints_[edges[i].b].degree > 2) {
      walkRun(2 * i + 1);
    }
  }
  // A ring of nodes with two edges each has no junction yet: one of them becomes one.
  const auto isInRing = [](const Joint& joint) { return joint.degree == 2; };
  if (std::none_of(joints_.begin(), joints_.end(), isInRing)) return;
  for (std::uint32_t i = 0; i < count; ++i) {
    if (!isLeft(edges[i]) || !isInRing(joints_[edges[i].a])) continue;
    graph_.ways_.resize(graph_.ways_.size() + 2);
    walkRun(2 * i);
  }
}

std::uint32_t DifferenceGraph::Builder::junctionAt(std::uint32_t node) {
  Joint& joint = joints_[node];
  if (joint.degree != Joint::kJunction) {
    nextWay_.push_back(graph_.firstWay_.back());
    graph_.firstWay_.push_back(graph_.firstWay_.back() + joint.degree);
    joint = {Joint::kJunction, static_cast<std::uint32_t>(graph_.junctions_.size())};
    graph_.junctions_.push_back(node);
  }
  return joint.edges;
}

void DifferenceGraph::Builder::walkRun(Step step) {
  const Step first = step;
  const std::uint32_t from = junctionAt(graph_.startOf(step));
  const auto begin = static_cast<std::uint32_t>(graph_.steps_.size());
  Costs costs = {graph_.costOf(step, 0), graph_.costOf(step, 1)};
  std::uint32_t node = graph_.endOf(step);
  while (joints_[node].degree == 2) {
    graph_.steps_.push_back(step);
    joints_[node].degree = 0;
    step = graph_.stepFrom(node, joints_[node].edges ^ (step >> 1));
    costs[0] += graph_.costOf(step, 0);
    costs[1] += graph_.costOf(step, 1);
    node = graph_.endOf(step);
  }
  const std::uint32_t to = junctionAt(node);
  addWay(from, {to, step >> 1, costs});
  addWay(to, {from, first >> 1, {costs[1], costs[0]}});
  if (begin == graph_.steps_.size()) return;
  graph_.steps_.push_back(step);
  graph_.runs_.push_back({begin, static_cast<std::uint32_t>(graph_.steps_.size()), from, to});
}

DifferenceGraph::DifferenceGraph(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges)
    : nodes_(nodeCount), edges_(edges) {
  Builder builder(*this);
  builder.peel();
  builder.findRuns();
}

/// Junctions that wait in a search, to be taken by the least key. In most prints few wait at a
/// time: those are looked through without a branch that could be guessed wrong, and only what is
/// beyond goes into a heap.
class DifferenceGraph::Queue {
 public:
  struct Entry {
    std::int64_t key = INT64_MAX;
    std::uint32_t junction = 0;
    bool operator>(const Entry& other) const { return key > other.key; }
  };

  bool isEmpty() const { return count_ == 0 && heap_.empty(); }

  /// Takes the entry when `really`.
  void push(const Entry& entry, bool really) {
    if (count_ == kFew) {
      if (really) pushFar(entry);
      return;
    }
    few_[count_] = {really ? entry.key : INT64_MAX, entry.junction};
    count_ += really ? 1 : 0;
  }

  Entry pop() {
    const std::uint32_t end = (count_ + kStride - 1) / kStride * kStride;
    std::uint32_t least = 0;
    for (std::uint32_t i = 1; i < end; ++i) least = few_[i].key < few_[least].key ? i : least;
    if (!heap_.empty() && (count_ == 0 || few_[least] > heap_.front())) return popFar();
    const Entry entry = few_[least];
    few_[least] = few_[--count_];
    few_[count_].key = INT64_MAX;
    return entry;
  }

 private:
  static constexpr std::uint32_t kStride = 8;
  static constexpr std::uint32_t kFew = 3 * kStride;

  void pushFar(const Entry& entry) {
    heap_.push_back(entry);
    std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
  }
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

/// Both sweeps over the graph: side 0 for the high ends and side 1 for the low ones, whose
/// distances are counted downwards.
struct DifferenceGraph::Sweep {
  /// A junction during the search.
  struct Spot {
    std::int64_t distance = Reach::kUnreached;
    std::int64_t position = 0;  ///< taken off distances so that no way costs less than nothing
    std::uint32_t by = kNone;
  };

  const DifferenceGraph& graph;
  std::span<const std::int64_t> positions;
  std::array<std::vector<std::int64_t>, 2> distance;
  std::array<std::vector<std::uint32_t>, 2> by;
  const Run* seeded = nullptr;  ///< the one with the source inside

  Sweep(const DifferenceGraph& theGraph, std::span<const std::int64_t> thePositions)
      : graph(theGraph), positions(thePositions) {
    for (const std::uint32_t side : {0, 1}) {
      distance[side].assign(graph.nodes_, Reach::kUnreached);
      by[side].assign(graph.nodes_, kNone);
    }
  }

  bool reached(std::uint32_t node, std::uint32_t side = 1) const {
    return distance[side][node] != Reach::kUnreached;
  }
  // Lowers the end of a step to what it costs from its start; with `tie` 1 also when it is there
  // already.
  void go(std::uint32_t side, Step step, std::int64_t tie = 0) {
    const std::uint32_t node = graph.endOf(step);
    const std::int64_t value = distance[side][graph.startOf(step)] + graph.costOf(step, side);
    const bool isLess = value - tie < distance[side][node];
    distance[side][node] = isLess ? value : distance[side][node];
    by[side][node] = isLess ? step >> 1 : by[side][node];
  }

  void run(std::uint32_t source);
  void seedRun(std::uint32_t source);
  void searchJunctions(std::uint32_t side);
  void search(std::vector<Spot>& spots, Queue& queue, std::uint32_t side) const;
  void fillRun(const Run& run);
};

void DifferenceGraph::Sweep::run(std::uint32_t source) {
  distance[0][source] = distance[1][source] = 0;
  for (const Step leaf : graph.leaves_) {
    if (graph.endOf(leaf) != source) continue;
    for (const std::uint32_t side : {0, 1}) go(side, leaf ^ 1);
    source = graph.startOf(leaf);
  }
  seedRun(source);
  for (const std::uint32_t side : {0, 1}) searchJunctions(side);
  for (const Run& run : graph.runs_) {
    if (reached(graph.junctions_[run.from])) fillRun(run);
  }
  for (auto leaf = graph.leaves_.rbegin(); leaf != graph.leaves_.rend(); ++leaf) {
    if (!reached(graph.startOf(*leaf)) || reached(graph.endOf(*leaf))) continue;
    for (const std::uint32_t side : {0, 1}) go(side, *leaf);
  }
}

// Where the source lies inside a run: on from it both ways, up to the junctions.
void DifferenceGraph::Sweep::seedRun(std::uint32_t source) {
  const auto leadsThere = [&](Step step) { return graph.endOf(step) == source; };
  const auto found = std::find_if(graph.steps_.begin(), graph.steps_.end(), leadsThere);
  if (found == graph.steps_.end()) return;
  const auto at = static_cast<std::uint32_t>(found - graph.steps_.begin());
  const auto isBefore = [](std::uint32_t step, const Run& one) { return step < one.end; };
  const Run& run = *std::upper_bound(graph.runs_.begin(), graph.runs_.end(), at, isBefore);
  if (at + 1 == run.end) return;
  seeded = &run;
  for (const std::uint32_t side : {0, 1}) {
    for (std::uint32_t i = at + 1; i < run.end; ++i) go(side, graph.steps_[i]);
    for (std::uint32_t i = at + 1; i-- > run.begin;) go(side, graph.steps_[i] ^ 1);
  }
}

void DifferenceGraph::Sweep::searchJunctions(std::uint32_t side) {
  std::vector<Spot> spots(graph.junctions_.size());
  Queue queue;
  for (std::uint32_t i = 0; i < spots.size(); ++i) {
    const std::uint32_t node = graph.junctions_[i];
    spots[i].position = side == 0 ? positions[node] : -positions[node];
    if (!reached(node, side)) continue;
    spots[i].distance = distance[side][node];
    spots[i].by = by[side][node];
    queue.push({spots[i].distance - spots[i].position, i}, true);
  }
  search(spots, queue, side);
  for (std::uint32_t i = 0; i < spots.size(); ++i) {
    distance[side][graph.junctions_[i]] = spots[i].distance;
    by[side][graph.junctions_[i]] = spots[i].by;
  }
}

// Dijkstra's algorithm.
void DifferenceGraph::Sweep::search(std::vector<Spot>& spots, Queue& queue,
                                    std::uint32_t side) const {
  while (!queue.isEmpty()) {
    const Queue::Entry next = queue.pop();
    const Spot& here = spots[next.junction];
    if (next.key > here.distance - here.position) continue;
    const std::uint32_t end = graph.firstWay_[next.junction + 1];
    for (std::uint32_t i = graph.firstWay_[next.junction]; i < end; ++i) {
      const Way& way = graph.ways_[i];
      Spot& there = spots[way.to];
      const std::int64_t value = here.distance + way.costs[side];
      const bool isLess = value < there.distance;
      there.distance = isLess ? value : there.distance;
      there.by = isLess ? way.lastEdge : there.by;
      queue.push({value - there.position, way.to}, isLess);
    }
  }
}

// Every node of a run is reached from one of its ends. Ties go to the end that the other one was
// reached from, so that no two nodes' ways lead to each other.
void DifferenceGraph::Sweep::fillRun(const Run& run) {
  const std::uint32_t first = graph.junctions_[run.from];
  const auto cameBack = [&](std::uint32_t side) {
    return by[side][first] == graph.steps_[run.begin] >> 1 && &run != seeded;
  };
  const std::int64_t ties[2] = {cameBack(0) ? 1 : 0, cameBack(1) ? 1 : 0};
  for (std::uint32_t i = run.begin; i + 1 < run.end; ++i) {
    for (const std::uint32_t side : {0, 1}) go(side, graph.steps_[i]);
  }
  for (std::uint32_t i = run.end - 1; i > run.begin; --i) {
    for (const std::uint32_t side : {0, 1}) go(side, graph.steps_[i] ^ 1, ties[side]);
  }
}

Reach DifferenceGraph::from(std::uint32_t source,
                            std::span<const std::int64_t> feasiblePositions) const {
  Sweep sweep(*this, feasiblePositions);
  sweep.run(source);
  for (std::int64_t& low : sweep.distance[1]) low = low == Reach::kUnreached ? low : -low;
  return {std::move(sweep.distance[0]), std::move(sweep.distance[1]), std::move(sweep.by[0]),
          std::move(sweep.by[1])};
}

std::vector<std::uint32_t> DifferenceGraph::waysTo(const Reach& reach,
                                                   std::span<const DifferenceEdge> edges,
                                                   std::uint32_t node, bool high) {
  const std::vector<std::uint32_t>& by = high ? reach.highBy : reach.lowBy;
  std::vector<std::uint32_t> way;
  while (by[node] != kNone) {
    const std::uint32_t edge = by[node];
    way.push_back(edge);
    node = edges[edge].a == node ? edges[edge].b : edges[edge].a;
  }
  std::reverse(way.begin(), way.end());
  return way;
}

}  // namespace inchwright
