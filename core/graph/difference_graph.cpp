#include "core/graph/difference_graph.h"

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

}  // namespace inchwright
