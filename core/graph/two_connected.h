#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/graph/difference_edge.h"

namespace inchwright {

/// The edges of a graph by two-connected block (J. Hopcroft and R. Tarjan, Algorithm 447, 1973):
/// every circle lies within one of them. Of 0–1, 1–2, 2–0 and 2–3: the first three, and the last by
/// itself. Linear.
std::vector<std::vector<std::uint32_t>> twoConnectedBlocks(std::uint32_t nodeCount,
                                                           std::span<const DifferenceEdge> edges);

}  // namespace inchwright
