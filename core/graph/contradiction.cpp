#include <algorithm>
#include <deque>

#include "core/base/rational.h"
#include "core/graph/difference_graph.h"

namespace inchwright {
namespace {

constexpr std::int64_t kUnknown = NodeReach::kUnreached;
/// More than all edges together, and so than any way that walks each of them once.
constexpr std::int64_t kLongestWay = std::int64_t{1} << 62;
constexpr std::uint64_t kMostSteps = 400'000'000;

constexpr std::size_t kMostCells = 40'000'000;

/// Ways of so many edges from one node: the best to each node, and the edge it ends on.
struct Layer {
  std::vector<std::int64_t> cost;
  std::vector<std::uint32_t> by;
};

}  // namespace

/// An edge as seen from one of its nodes: x(to) − x(here) ≤ up.
struct DifferenceGraph::Arc {
  std::uint32_t to = 0;
  std::uint32_t edge = 0;
  std::int64_t up = 0;
};

/// All edges by node, for the searches that wander over the whole graph.
class DifferenceGraph::Arcs {
 public:
  explicit Arcs(const DifferenceGraph& graph)
      : first_(graph.nodes_ + 1, 0), arcs_(2 * graph.edges_.size()) {
    for (const DifferenceEdge& edge : graph.edges_) {
      ++first_[edge.a + 1];
      ++first_[edge.b + 1];
    }
    for (std::uint32_t i = 0; i < graph.nodes_; ++i) first_[i + 1] += first_[i];
    std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
    for (Step step = 0; step < arcs_.size(); ++step) {
      arcs_[next[graph.startOf(step)]++] = {graph.endOf(step), step >> 1, graph.costOf(step)};
    }
  }

  std::span<const Arc> at(std::uint32_t node) const {
    return {arcs_.data() + first_[node], first_[node + 1] - first_[node]};
  }

 private:
  std::vector<std::uint32_t> first_;
  std::vector<Arc> arcs_;
};

// Follows the parents from every node until they turn round on themselves.
std::vector<std::uint32_t> DifferenceGraph::circleOf(
    const std::vector<std::uint32_t>& parentEdge) const {
  const auto parent = [&](std::uint32_t node) { return endOf(stepFrom(node, parentEdge[node])); };
  std::vector<std::uint32_t> mark(nodes_, kNone);
  for (std::uint32_t start = 0; start < nodes_; ++start) {
    std::uint32_t node = start;
    while (parentEdge[node] != kNone && mark[node] == kNone) {
      mark[node] = start;
      node = parent(node);
    }
    if (parentEdge[node] == kNone || mark[node] != start) continue;
    std::vector<std::uint32_t> circle;
    const std::uint32_t first = node;
    do {
      circle.push_back(parentEdge[node]);
      node = parent(node);
    } while (node != first);
    std::reverse(circle.begin(), circle.end());
    return circle;
  }
  return {};
}

// Bellman–Ford with a queue, from the edges that `positions` break; yields the circle that
// contradicts itself, or nothing once every edge is satisfied.
std::vector<std::uint32_t> DifferenceGraph::settle(const Arcs& arcs,
                                                   std::vector<std::int64_t>& positions) const {
  // Round a circle that contradicts itself they fall without end, until somebody looks.
  std::vector<Int128> fallen(positions.begin(), positions.end());
  std::deque<std::uint32_t> queue;
  std::vector<bool> queued(nodes_, false);
  std::vector<std::uint32_t> parentEdge(nodes_, kNone);
  const auto enqueue = [&](std::uint32_t node) {
    if (queued[node]) return;
    queued[node] = true;
    queue.push_back(node);
  };
  for (Step step = 0; step < 2 * edges_.size(); ++step) {
    if (!allows(step, positions)) enqueue(startOf(step));
  }
  std::uint64_t lowered = 0;
  std::uint64_t nextLook = nodes_ + 1;
  while (!queue.empty()) {
    const std::uint32_t node = queue.front();
    queue.pop_front();
    queued[node] = false;
    for (const Arc& arc : arcs.at(node)) {
      if (fallen[arc.to] <= fallen[node] + arc.up) continue;
      fallen[arc.to] = fallen[node] + arc.up;
      parentEdge[arc.to] = arc.edge;
      enqueue(arc.to);
      if (++lowered < nextLook) continue;
      const std::vector<std::uint32_t> circle = circleOf(parentEdge);
      if (!circle.empty()) return circle;
      nextLook = lowered + nodes_ + 1;
    }
  }
  std::transform(fallen.begin(), fallen.end(), positions.begin(),
                 [](Int128 one) { return static_cast<std::int64_t>(one); });
  return {};
}

std::optional<std::vector<std::int64_t>> DifferenceGraph::feasible(
    std::vector<std::int64_t> guess) const {
  guess.resize(nodes_, 0);
  Step step = 0;
  while (step < 2 * edges_.size() && allows(step, guess)) ++step;
  if (step == 2 * edges_.size()) return guess;
  if (!settle(Arcs(*this), guess).empty()) return std::nullopt;
  return guess;
}

// The shortest contradicting walk from a node back to itself of fewer than `limit` edges.
std::vector<std::uint32_t> DifferenceGraph::circleFrom(const Arcs& arcs, std::uint32_t start,
                                                       std::size_t limit,
                                                       std::uint64_t& steps) const {
  std::vector<Layer> layers{
      {std::vector<std::int64_t>(nodes_, kUnknown), std::vector<std::uint32_t>(nodes_, kNone)}};
  layers[0].cost[start] = 0;
  std::vector<std::uint32_t> front{start};
  for (std::size_t length = 1; length < limit && !front.empty(); ++length) {
    layers.push_back(
        {std::vector<std::int64_t>(nodes_, kUnknown), std::vector<std::uint32_t>(nodes_, kNone)});
    const Layer& before = layers[length - 1];
    Layer& now = layers[length];
    std::vector<std::uint32_t> next;
    for (const std::uint32_t node : front) {
      for (const Arc& arc : arcs.at(node)) {
        ++steps;
        // A way beyond that winds round a smaller circle, which is found from a node on it.
        const std::int64_t value = std::max(before.cost[node] + arc.up, -kLongestWay);
        if (value > kLongestWay) continue;
        if (now.cost[arc.to] == kUnknown) next.push_back(arc.to);
        if (value >= now.cost[arc.to]) continue;
        now.cost[arc.to] = value;
        now.by[arc.to] = arc.edge;
      }
    }
    if (now.cost[start] < 0) {
      std::vector<std::uint32_t> circle;
      std::uint32_t node = start;
      for (std::size_t i = length; i > 0; --i) {
        const std::uint32_t edge = layers[i].by[node];
        circle.push_back(edge);
        node = endOf(stepFrom(node, edge));
      }
      std::reverse(circle.begin(), circle.end());
      return circle;
    }
    front = std::move(next);
  }
  return {};
}

std::vector<std::uint32_t> DifferenceGraph::contradiction() const {
  std::vector<std::int64_t> positions(nodes_, 0);
  const Arcs arcs(*this);
  std::vector<std::uint32_t> best = settle(arcs, positions);
  if (best.empty() || best.size() * nodes_ > kMostCells) return best;
  std::uint64_t steps = 0;
  for (std::uint32_t start = 0; start < nodes_ && steps < kMostSteps; ++start) {
    std::vector<std::uint32_t> circle = circleFrom(arcs, start, best.size(), steps);
    if (!circle.empty()) best = std::move(circle);
  }
  return best;
}

}  // namespace inchwright
