#pragma once

#include <cstdint>
#include <vector>

#include "core/base/result.h"
#include "core/graph/difference_graph.h"
#include "core/tolerance/grouped_network.h"
#include "core/tolerance/ranges.h"

namespace inchwright {

/// The most groups of places that are free to move against each other for the exact program.
inline constexpr std::uint32_t kMostWithRelations = 48;

/// Positions by the print's own figures, along the first chain found from a group; by group, in
/// the parts of a tick that `grouped` counts in.
std::vector<std::int64_t> printedPositions(const ToleranceNetwork& network,
                                           const GroupedNetwork& grouped, std::uint32_t first);

/// The ranges of all places that a sweep reached, in order of ids.
std::vector<PlaceRange> placeRangesOf(const ToleranceNetwork& network,
                                      const GroupedNetwork& grouped, const Reach& reach,
                                      const std::vector<std::int64_t>& printed,
                                      std::uint32_t start);

/// As `rangesFrom`, with middles, symmetric places and equal spaces reckoned in. Requires:
/// `positions` satisfies every edge of `graph`.
Result<Ranges> rangesWithRelations(const Part& part, const ToleranceNetwork& network,
                                   const GroupedNetwork& grouped, const DifferenceGraph& graph,
                                   const std::vector<std::int64_t>& positions, std::uint32_t start);

}  // namespace inchwright
