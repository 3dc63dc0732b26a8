#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// A closed walk over links: each with +1 where it is walked from `from` to `to`, else −1.
using Loop = std::vector<std::pair<std::uint32_t, int>>;

/// As many independent loops of the given links as there are, short ones first.
///
/// In a block of ordinary size they form a shortest cycle basis (Horton, A polynomial-time
/// algorithm to find the shortest cycle basis of a graph, SIAM J. Comput. 16, 1987): every loop is
/// the shortest that adds something to those before it. In a very large one only some
/// starting points are tried, and a loop may be longer than need be. Equally long ones are taken
/// in the order of their links' numbers.
/// Requires: `block` holds link numbers, all joined to each other.
std::vector<Loop> shortLoops(std::span<const AxisLink> links, std::span<const std::uint32_t> block);

}  // namespace inchwright
