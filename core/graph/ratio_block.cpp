#include "core/graph/ratio_block.h"

#include <algorithm>
#include <deque>
#include <numeric>

#include "core/base/checked.h"
#include "core/graph/forest.h"

namespace inchwright {
namespace {

// Beyond these the sums of a search could leave 128 bits.
constexpr Int128 kMostParts = Int128{1} << 32;
constexpr Int128 kMostSlack = Int128{1} << 80;

Int128 commonDivisor(Int128 a, Int128 b) {
  while (b != 0) {
    const Int128 rest = a % b;
    a = b;
    b = rest;
  }
  return a < 0 ? -a : a;
}

}  // namespace

RatioBlock::RatioBlock(std::span<const DifferenceEdge> edges, std::vector<std::uint32_t> numbers)
    : numbers_(std::move(numbers)) {
  for (const std::uint32_t number : numbers_) {
    nodes_.push_back(edges[number].a);
    nodes_.push_back(edges[number].b);
  }
  std::sort(nodes_.begin(), nodes_.end());
  nodes_.erase(std::unique(nodes_.begin(), nodes_.end()), nodes_.end());
  const auto own = [&](std::uint32_t node) {
    return static_cast<std::uint32_t>(std::lower_bound(nodes_.begin(), nodes_.end(), node) -
                                      nodes_.begin());
  };
  for (const std::uint32_t number : numbers_) {
    DifferenceEdge edge = edges[number];
    edge.a = own(edge.a);
    edge.b = own(edge.b);
    edges_.push_back(edge);
  }
  for (std::uint32_t i = 0; i < edges_.size(); ++i) {
    arcs_.push_back({edges_[i].a, edges_[i].b, i});
    arcs_.push_back({edges_[i].b, edges_[i].a, i});
  }
  std::stable_sort(arcs_.begin(), arcs_.end(),
                   [](const Arc& a, const Arc& b) { return a.from < b.from; });
  firstArc_.assign(nodes_.size() + 1, 0);
  for (const Arc& arc : arcs_) ++firstArc_[arc.from + 1];
  std::partial_sum(firstArc_.begin(), firstArc_.end(), firstArc_.begin());
  position_.assign(nodes_.size(), 0);
}

// Brings all slacks to whole parts of a tick. False when that leaves the range.
bool RatioBlock::weigh(const std::vector<std::optional<Rational>>& room) {
  parts_ = 1;
  for (const std::uint32_t node : nodes_) {
    if (!room[node]) continue;
    const Int128 below = room[node]->denominator();
    parts_ = parts_ / commonDivisor(parts_, below) * below;
    if (parts_ > kMostParts) return false;
  }
  for (Arc& arc : arcs_) {
    const DifferenceEdge& edge = edges_[arc.edge];
    const Int128 bound = arc.from == edge.a ? Int128{edge.high} : -Int128{edge.low};
    arc.slack = bound * parts_;
    arc.growing = 0;
    for (const std::uint32_t end : {arc.from, arc.to}) {
      const auto& settled = room[nodes_[end]];
      if (settled) {
        const auto parts = multiplyChecked(settled->numerator(), parts_ / settled->denominator());
        if (!parts) return false;
        arc.slack -= *parts;
      } else {
        ++arc.growing;
      }
    }
    if (arc.slack > kMostSlack || arc.slack < -kMostSlack) return false;
  }
  return true;
}

// The least ratio of there-and-back over a single edge.
std::optional<RatioBlock::Ratio> RatioBlock::firstGuess() const {
  std::vector<Int128> sum(edges_.size(), 0);
  std::vector<int> growing(edges_.size(), 0);
  for (const Arc& arc : arcs_) {
    sum[arc.edge] += arc.slack;
    growing[arc.edge] = 2 * arc.growing;
  }
  std::optional<Ratio> least;
  for (std::uint32_t i = 0; i < edges_.size(); ++i) {
    if (growing[i] == 0) continue;
    if (!least || sum[i] * least->growing < least->slack * growing[i]) {
      least = Ratio{sum[i], growing[i]};
    }
  }
  return least;
}

// A circle of arcs that closes below zero, by following where nodes were lowered from.
std::vector<std::uint32_t> RatioBlock::circleOf(const std::vector<std::uint32_t>& cameBy) const {
  std::vector<std::uint32_t> mark(nodes_.size(), kNone);
  for (std::uint32_t start = 0; start < nodes_.size(); ++start) {
    std::uint32_t node = start;
    while (cameBy[node] != kNone && mark[node] == kNone) {
      mark[node] = start;
      node = arcs_[cameBy[node]].from;
    }
    if (cameBy[node] == kNone || mark[node] != start) continue;
    std::vector<std::uint32_t> circle;
    const std::uint32_t first = node;
    do {
      circle.push_back(cameBy[node]);
      node = arcs_[cameBy[node]].from;
    } while (node != first);
    return circle;
  }
  return {};
}

// Bellman–Ford with a queue, from the positions that the last level left.
std::vector<std::uint32_t> RatioBlock::shortCircle(const Ratio& ratio) {
  std::vector<Int128> costs;
  costs.reserve(arcs_.size());
  for (const Arc& arc : arcs_) costs.push_back(cost(arc, ratio));
  std::deque<std::uint32_t> queue;
  std::vector<bool> queued(nodes_.size(), true);
  std::vector<std::uint32_t> cameBy(nodes_.size(), kNone);
  std::fill(position_.begin(), position_.end(), 0);
  for (std::uint32_t node = 0; node < nodes_.size(); ++node) queue.push_back(node);
  std::uint64_t lowered = 0;
  std::uint64_t nextLook = nodes_.size();
  while (!queue.empty()) {
    const std::uint32_t node = queue.front();
    queue.pop_front();
    queued[node] = false;
    for (std::uint32_t i = firstArc_[node]; i < firstArc_[node + 1]; ++i) {
      const std::uint32_t to = arcs_[i].to;
      const Int128 value = position_[node] + costs[i];
      if (position_[to] <= value) continue;
      position_[to] = value;
      cameBy[to] = i;
      if (!queued[to]) queue.push_back(to);
      queued[to] = true;
      if (++lowered < nextLook) continue;
      std::vector<std::uint32_t> circle = circleOf(cameBy);
      if (!circle.empty()) return circle;
      nextLook = lowered + nodes_.size();
    }
  }
  return {};
}

// Strongly connected components of the arcs without slack (R. Tarjan, 1972), as a number by node.
std::vector<std::uint32_t> RatioBlock::circlesWithoutSlack(const Ratio& ratio) const {
  const auto count = static_cast<std::uint32_t>(nodes_.size());
  std::vector<std::uint32_t> entered(count, kNone), lowest(count, kNone), component(count, kNone);
  std::vector<std::uint32_t> open, path, next(firstArc_.begin(), firstArc_.end() - 1);
  std::uint32_t order = 0;
  std::uint32_t components = 0;
  const auto enter = [&](std::uint32_t node) {
    entered[node] = lowest[node] = order++;
    open.push_back(node);
    path.push_back(node);
  };
  for (std::uint32_t root = 0; root < count; ++root) {
    if (entered[root] != kNone) continue;
    enter(root);
    while (!path.empty()) {
      const std::uint32_t node = path.back();
      if (next[node] < firstArc_[node + 1]) {
        const Arc& arc = arcs_[next[node]++];
        if (position_[node] + cost(arc, ratio) != position_[arc.to]) continue;
        if (entered[arc.to] == kNone) {
          enter(arc.to);
        } else if (component[arc.to] == kNone) {
          lowest[node] = std::min(lowest[node], entered[arc.to]);
        }
        continue;
      }
      path.pop_back();
      if (!path.empty()) lowest[path.back()] = std::min(lowest[path.back()], lowest[node]);
      if (lowest[node] != entered[node]) continue;
      std::uint32_t member = kNone;
      do {
        member = open.back();
        open.pop_back();
        component[member] = components;
      } while (member != node);
      ++components;
    }
  }
  return component;
}

RatioBlock::Limit RatioBlock::limitAt(const Ratio& ratio,
                                      const std::vector<std::optional<Rational>>& room) const {
  const std::vector<std::uint32_t> component = circlesWithoutSlack(ratio);
  Limit limit;
  limit.level = *Rational::of(ratio.slack, ratio.growing * parts_);
  std::vector<bool> edgeTaken(edges_.size(), false);
  for (const Arc& arc : arcs_) {
    if (component[arc.from] != component[arc.to] || edgeTaken[arc.edge]) continue;
    if (position_[arc.from] + cost(arc, ratio) != position_[arc.to]) continue;
    edgeTaken[arc.edge] = true;
    limit.edges.push_back(numbers_[arc.edge]);
    for (const std::uint32_t end : {arc.from, arc.to}) {
      if (!room[nodes_[end]]) limit.nodes.push_back(nodes_[end]);
    }
  }
  std::sort(limit.nodes.begin(), limit.nodes.end());
  limit.nodes.erase(std::unique(limit.nodes.begin(), limit.nodes.end()), limit.nodes.end());
  return limit;
}

Result<std::optional<RatioBlock::Limit>> RatioBlock::limit(
    const std::vector<std::optional<Rational>>& room) {
  if (!weigh(room)) {
    return Error{ErrorCode::outOfRange, "the shares of this part leave the exact range", ""};
  }
  std::optional<Ratio> ratio = firstGuess();
  if (!ratio) return std::optional<Limit>();
  if (edges_.size() == 1) {
    Limit limit{*Rational::of(ratio->slack, ratio->growing * parts_), {}, {numbers_[0]}};
    for (const std::uint32_t node : nodes_) {
      if (!room[node]) limit.nodes.push_back(node);
    }
    return std::optional<Limit>(std::move(limit));
  }
  for (;;) {
    const std::vector<std::uint32_t> circle = shortCircle(*ratio);
    if (circle.empty()) return std::optional<Limit>(limitAt(*ratio, room));
    Ratio next{0, 0};
    for (const std::uint32_t i : circle) {
      next.slack += arcs_[i].slack;
      next.growing += arcs_[i].growing;
    }
    if (next.growing == 0) {
      return Error{ErrorCode::unsolvable, "these limits contradict each other", ""};
    }
    ratio = next;
  }
}

}  // namespace inchwright
