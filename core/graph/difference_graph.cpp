#include "core/graph/difference_graph.h"

#include <algorithm>

#include "core/graph/shortest_ways.h"

namespace inchwright {

Reach DifferenceGraph::from(std::uint32_t source,
                            std::span<const std::int64_t> feasiblePositions) const {
  const ShortestWays ways(nodes_, edges_, feasiblePositions);
  const std::vector<ShortestWays::Stop> up = ways.from(source, ShortestWays::End::high);
  const std::vector<ShortestWays::Stop> down = ways.from(source, ShortestWays::End::low);
  Reach reach(nodes_);
  for (std::uint32_t node = 0; node < nodes_; ++node) {
    if (up[node].distance == INT64_MAX) continue;
    const std::int64_t length = feasiblePositions[node] - feasiblePositions[source];
    reach[node] = {length + up[node].distance, length - down[node].distance, up[node].by,
                   down[node].by};
  }
  return reach;
}

std::vector<std::uint32_t> DifferenceGraph::waysTo(const Reach& reach,
                                                   std::span<const DifferenceEdge> edges,
                                                   std::uint32_t node, bool high,
                                                   std::size_t most) {
  // Walked once for their number and once for the edges.
  const auto walk = [&](const auto& visit) {
    std::size_t count = 0;
    for (std::uint32_t here = node; count < most; ++count) {
      const std::uint32_t last = high ? reach[here].highBy : reach[here].lowBy;
      if (last == kNone) break;
      visit(count, last);
      here = edges[last].a == here ? edges[last].b : edges[last].a;
    }
    return count;
  };
  std::vector<std::uint32_t> way(walk([](std::size_t, std::uint32_t) {}));
  walk([&](std::size_t i, std::uint32_t edge) { way[way.size() - 1 - i] = edge; });
  return way;
}

}  // namespace inchwright
