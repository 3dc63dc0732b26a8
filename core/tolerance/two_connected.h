#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/tolerance/grouped_network.h"

namespace inchwright {

/// The edges of a graph by two-connected block (J. Hopcroft and R. Tarjan, Algorithm 447, 1973):
/// every circle lies within one of them. Linear.
std::vector<std::vector<std::uint32_t>> twoConnectedBlocks(std::uint32_t nodeCount,
                                                           std::span<const DifferenceEdge> edges);

}  // namespace inchwright
