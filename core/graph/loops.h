#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/graph/forest.h"

namespace inchwright {

/// Independent loops of the given links, short ones first.
///
/// In a block of ordinary size (some 600 places) they form a shortest cycle basis (Horton, A
/// polynomial-time algorithm to find the shortest cycle basis of a graph, SIAM J. Comput. 16,
/// 1987): there are as many as can be independent, and each is the shortest that adds something to
/// those before it. In a larger one the search is bounded: loops may be longer than need be, and
/// in a very large one some may be left out. Which of equally long ones are taken depends only on
/// the numbers of nodes and links.
/// Requires: `block` holds link numbers, all joined to each other.
std::vector<Loop> shortLoops(std::span<const Link> links, std::span<const std::uint32_t> block);

}  // namespace inchwright
