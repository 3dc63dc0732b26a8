#include "core/graph/kept_differences.h"

#include <queue>
#include <unordered_map>

namespace inchwright {

KeptDifferences::KeptDifferences(std::vector<std::int64_t> start)
    : at_(std::move(start)), arcs_(at_.size()) {}

bool KeptDifferences::take(std::span<const DifferenceEdge> edges) {
  std::vector<std::uint32_t> begun;
  const auto add = [&](std::uint32_t from, Arc arc) {
    if (!take(from, arc)) return false;
    arcs_[from].push_back(arc);
    begun.push_back(from);
    return true;
  };
  for (const DifferenceEdge& edge : edges) {
    if (add(edge.a, {edge.b, edge.high}) && add(edge.b, {edge.a, -edge.low})) continue;
    for (auto from = begun.rbegin(); from != begun.rend(); ++from) arcs_[*from].pop_back();
    return false;
  }
  return true;
}

// Moves what has to move for one more arc, that which has to move farthest first. If its own
// beginning would have to, it closes a circle that can't hold, and nothing is moved.
bool KeptDifferences::take(std::uint32_t from, Arc arc) {
  const std::int64_t first = at_[arc.to] - at_[from] - arc.most;
  if (first <= 0) return true;
  if (arc.to == from) return false;
  std::unordered_map<std::uint32_t, std::int64_t> moved;  // where those settled have gone
  std::unordered_map<std::uint32_t, std::int64_t> down{{arc.to, first}};
  std::priority_queue<std::pair<std::int64_t, std::uint32_t>> next;
  next.push({first, arc.to});
  while (!next.empty()) {
    const auto [by, node] = next.top();
    next.pop();
    if (moved.count(node) != 0 || down.at(node) != by) continue;
    const std::int64_t here = at_[node] - by;
    moved.emplace(node, here);
    for (const Arc& one : arcs_[node]) {
      if (moved.count(one.to) != 0) continue;
      const std::int64_t off = at_[one.to] - here - one.most;
      if (off <= 0) continue;
      if (one.to == from) return false;
      std::int64_t& known = down[one.to];
      if (off <= known) continue;
      known = off;
      next.push({off, one.to});
    }
  }
  for (const auto& [node, place] : moved) at_[node] = place;
  return true;
}

}  // namespace inchwright
