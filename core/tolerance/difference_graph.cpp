#include "core/tolerance/difference_graph.h"

#include <algorithm>
#include <functional>
#include <queue>

#include "core/chain/skeleton.h"

namespace inchwright {

DifferenceGraph::DifferenceGraph(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges)
    : nodes_(nodeCount), edges_(edges.begin(), edges.end()), firstArc_(nodeCount + 1, 0) {
  for (const DifferenceEdge& edge : edges_) {
    ++firstArc_[edge.a + 1];
    ++firstArc_[edge.b + 1];
  }
  for (std::uint32_t i = 0; i < nodes_; ++i) firstArc_[i + 1] += firstArc_[i];
  arcs_.resize(2 * edges_.size());
  std::vector<std::uint32_t> next(firstArc_.begin(), firstArc_.end() - 1);
  for (std::uint32_t i = 0; i < edges_.size(); ++i) {
    const DifferenceEdge& edge = edges_[i];
    arcs_[next[edge.a]++] = {edge.b, i, edge.high, -edge.low};
    arcs_[next[edge.b]++] = {edge.a, i, -edge.low, edge.high};
  }
  std::vector<std::uint32_t> degree(nodes_);
  for (std::uint32_t i = 0; i < nodes_; ++i) degree[i] = firstArc_[i + 1] - firstArc_[i];
  peel(degree);
  findRuns(degree);
}

std::span<const DifferenceGraph::Arc> DifferenceGraph::arcsAt(std::uint32_t node) const {
  return {arcs_.data() + firstArc_[node], firstArc_[node + 1] - firstArc_[node]};
}

// Takes off nodes with one edge left until none is; a tree leaves one node without any.
void DifferenceGraph::peel(std::vector<std::uint32_t>& degree) {
  leafOf_.assign(nodes_, kNone);
  for (std::uint32_t start = 0; start < nodes_; ++start) {
    std::uint32_t node = start;
    while (degree[node] == 1 && leafOf_[node] == kNone) {
      leafOf_[node] = static_cast<std::uint32_t>(leaves_.size());
      degree[node] = 0;
      std::uint32_t parent = kNone;
      for (const Arc& arc : arcsAt(node)) {
        if (leafOf_[arc.to] != kNone) continue;
        leaves_.push_back({node, arc});
        parent = arc.to;
        break;
      }
      --degree[parent];
      node = parent;
    }
  }
}

void DifferenceGraph::findRuns(const std::vector<std::uint32_t>& degree) {
  junctionOf_.assign(nodes_, kNone);
  runOf_.assign(nodes_, kNone);
  stepOf_.assign(nodes_, kNone);
  std::vector<bool> edgeDone(edges_.size(), false);
  for (const Leaf& leaf : leaves_) edgeDone[leaf.arc.edge] = true;
  const auto makeJunction = [&](std::uint32_t node) {
    junctionOf_[node] = static_cast<std::uint32_t>(junctions_.size());
    junctions_.push_back(node);
  };
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    if (leafOf_[node] == kNone && degree[node] != 2) makeJunction(node);
  }
  for (std::size_t i = 0; i < junctions_.size(); ++i) {
    for (const Arc& arc : arcsAt(junctions_[i])) walkRun(junctions_[i], arc, edgeDone);
  }
  // A ring of nodes with two edges each has no junction yet: its lowest node becomes one.
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    if (leafOf_[node] != kNone || junctionOf_[node] != kNone || runOf_[node] != kNone) continue;
    makeJunction(node);
    for (const Arc& arc : arcsAt(node)) walkRun(node, arc, edgeDone);
  }

  firstRun_.assign(junctions_.size() + 1, 0);
  for (const Run& run : runs_) {
    ++firstRun_[run.from + 1];
    ++firstRun_[run.to + 1];
  }
  for (std::size_t i = 0; i < junctions_.size(); ++i) firstRun_[i + 1] += firstRun_[i];
  runsAt_.resize(2 * runs_.size());
  std::vector<std::uint32_t> next(firstRun_.begin(), firstRun_.end() - 1);
  for (std::uint32_t i = 0; i < runs_.size(); ++i) {
    runsAt_[next[runs_[i].from]++] = i;
    runsAt_[next[runs_[i].to]++] = i;
  }
}

void DifferenceGraph::walkRun(std::uint32_t junction, const Arc& first,
                              std::vector<bool>& edgeDone) {
  if (edgeDone[first.edge] || first.to == junction) return;
  Run run;
  run.begin = static_cast<std::uint32_t>(steps_.size());
  run.from = junctionOf_[junction];
  Arc arc = first;
  for (;;) {
    edgeDone[arc.edge] = true;
    run.up += arc.up;
    run.down += arc.down;
    if (junctionOf_[arc.to] == kNone) {
      runOf_[arc.to] = static_cast<std::uint32_t>(runs_.size());
      stepOf_[arc.to] = static_cast<std::uint32_t>(steps_.size());
    }
    steps_.push_back(arc);
    if (junctionOf_[arc.to] != kNone) break;
    for (const Arc& next : arcsAt(arc.to)) {
      if (edgeDone[next.edge]) continue;
      arc = next;
      break;
    }
  }
  run.end = static_cast<std::uint32_t>(steps_.size());
  run.to = junctionOf_[arc.to];
  runs_.push_back(run);
}

/// One sweep over the graph, for the high ends or, with every arc turned round, the low ones.
struct DifferenceGraph::Sweep {
  const DifferenceGraph& graph;
  std::span<const std::int64_t> positions;
  bool isHigh;
  std::vector<std::int64_t>& distance;
  std::vector<std::uint32_t>& by;

  std::int64_t forward(const Arc& arc) const { return isHigh ? arc.up : arc.down; }
  std::int64_t backward(const Arc& arc) const { return isHigh ? arc.down : arc.up; }
  bool reached(std::uint32_t node) const { return distance[node] != Reach::kUnreached; }
  void lower(std::uint32_t node, std::int64_t value, std::uint32_t edge) {
    if (value >= distance[node]) return;
    distance[node] = value;
    by[node] = edge;
  }

  void run(std::uint32_t source);
  void seedRun(std::uint32_t source);
  void searchJunctions(const std::vector<std::uint32_t>& seeds);
  void fillRuns();
  void relaxRun(std::uint32_t from, const Run& run,
                std::vector<std::pair<std::int64_t, std::uint32_t>>& heap);
};

void DifferenceGraph::Sweep::run(std::uint32_t source) {
  distance.assign(graph.nodes_, Reach::kUnreached);
  by.assign(graph.nodes_, kNone);
  distance[source] = 0;
  std::uint32_t node = source;
  while (graph.leafOf_[node] != kNone) {
    const Arc& arc = graph.leaves_[graph.leafOf_[node]].arc;
    lower(arc.to, distance[node] + forward(arc), arc.edge);
    node = arc.to;
  }
  std::vector<std::uint32_t> seeds;
  if (graph.junctionOf_[node] != kNone) {
    seeds.push_back(graph.junctionOf_[node]);
  } else {
    seedRun(node);
    const Run& run = graph.runs_[graph.runOf_[node]];
    seeds = {run.from, run.to};
  }
  searchJunctions(seeds);
  fillRuns();
  for (std::size_t i = graph.leaves_.size(); i-- > 0;) {
    const Leaf& leaf = graph.leaves_[i];
    if (!reached(leaf.arc.to) || reached(leaf.node)) continue;
    lower(leaf.node, distance[leaf.arc.to] + backward(leaf.arc), leaf.arc.edge);
  }
}

// The source lies inside a run: on from it both ways, up to the junctions.
void DifferenceGraph::Sweep::seedRun(std::uint32_t source) {
  const Run& run = graph.runs_[graph.runOf_[source]];
  std::int64_t sum = distance[source];
  const std::uint32_t at = graph.stepOf_[source];
  for (std::uint32_t i = at + 1; i < run.end; ++i) {
    sum += forward(graph.steps_[i]);
    lower(graph.steps_[i].to, sum, graph.steps_[i].edge);
  }
  sum = distance[source];
  for (std::uint32_t i = at + 1; i-- > run.begin;) {
    sum += backward(graph.steps_[i]);
    const std::uint32_t node = i == run.begin ? graph.junctions_[run.from] : graph.steps_[i - 1].to;
    lower(node, sum, graph.steps_[i].edge);
  }
}

void DifferenceGraph::Sweep::relaxRun(std::uint32_t from, const Run& run,
                                      std::vector<std::pair<std::int64_t, std::uint32_t>>& heap) {
  const std::uint32_t here = graph.junctions_[from];
  const bool ahead = run.from == from;
  const std::uint32_t to = ahead ? run.to : run.from;
  const std::uint32_t there = graph.junctions_[to];
  const std::int64_t cost = ahead == isHigh ? run.up : run.down;
  const std::int64_t value = distance[here] + cost;
  if (value >= distance[there]) return;
  const std::uint32_t last = ahead ? run.end - 1 : run.begin;
  lower(there, value, graph.steps_[last].edge);
  heap.push_back({isHigh ? value - positions[there] : value + positions[there], to});
  std::push_heap(heap.begin(), heap.end(), std::greater<>());
}

// Dijkstra over the junctions, with positions taken off so that no cost is below zero.
void DifferenceGraph::Sweep::searchJunctions(const std::vector<std::uint32_t>& seeds) {
  const auto key = [&](std::uint32_t node) {
    return isHigh ? distance[node] - positions[node] : distance[node] + positions[node];
  };
  std::vector<std::pair<std::int64_t, std::uint32_t>> heap;
  for (const std::uint32_t seed : seeds) heap.push_back({key(graph.junctions_[seed]), seed});
  std::make_heap(heap.begin(), heap.end(), std::greater<>());
  while (!heap.empty()) {
    std::pop_heap(heap.begin(), heap.end(), std::greater<>());
    const auto [reachedAt, junction] = heap.back();
    heap.pop_back();
    if (reachedAt != key(graph.junctions_[junction])) continue;
    for (std::uint32_t i = graph.firstRun_[junction]; i < graph.firstRun_[junction + 1]; ++i) {
      relaxRun(junction, graph.runs_[graph.runsAt_[i]], heap);
    }
  }
}

// Nodes inside a run are reached from whichever of its ends is nearer. The end that the way to the
// other one came from goes first, so that ties never turn two nodes' ways against each other.
void DifferenceGraph::Sweep::fillRuns() {
  for (const Run& run : graph.runs_) {
    const std::uint32_t first = graph.junctions_[run.from];
    const std::uint32_t last = graph.junctions_[run.to];
    if (!reached(first)) continue;
    const auto ahead = [&] {
      std::int64_t sum = distance[first];
      for (std::uint32_t i = run.begin; i + 1 < run.end; ++i) {
        sum += forward(graph.steps_[i]);
        lower(graph.steps_[i].to, sum, graph.steps_[i].edge);
      }
    };
    const auto back = [&] {
      std::int64_t sum = distance[last];
      for (std::uint32_t i = run.end - 1; i > run.begin; --i) {
        sum += backward(graph.steps_[i]);
        lower(graph.steps_[i - 1].to, sum, graph.steps_[i].edge);
      }
    };
    const bool cameBack = by[first] == graph.steps_[run.begin].edge;
    if (cameBack) back();
    ahead();
    if (!cameBack) back();
  }
}

Reach DifferenceGraph::from(std::uint32_t source,
                            std::span<const std::int64_t> feasiblePositions) const {
  Reach reach;
  Sweep{*this, feasiblePositions, true, reach.high, reach.highBy}.run(source);
  Sweep{*this, feasiblePositions, false, reach.low, reach.lowBy}.run(source);
  for (std::int64_t& low : reach.low) low = low == Reach::kUnreached ? low : -low;
  return reach;
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
