#include "core/tolerance/difference_graph.h"

#include <algorithm>

#include "core/tolerance/reach_search.h"

namespace inchwright {

Reach DifferenceGraph::from(std::uint32_t source,
                            std::span<const std::int64_t> feasiblePositions) const {
  return ReachSearch(nodes_, edges_, source, feasiblePositions).run();
}

std::vector<std::uint32_t> DifferenceGraph::waysTo(const Reach& reach,
                                                   std::span<const DifferenceEdge> edges,
                                                   std::uint32_t node, bool high,
                                                   std::size_t most) {
  const auto lastEdge = [&] { return high ? reach[node].highBy : reach[node].lowBy; };
  std::vector<std::uint32_t> way;
  while (lastEdge() != kNone && way.size() < most) {
    const DifferenceEdge& edge = edges[lastEdge()];
    way.push_back(lastEdge());
    node = edge.a == node ? edge.b : edge.a;
  }
  std::reverse(way.begin(), way.end());
  return way;
}

}  // namespace inchwright
