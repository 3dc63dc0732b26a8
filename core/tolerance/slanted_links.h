#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/solution/solution.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// What a toleranced reading across both axes lets its two places stray along one of them, so that
/// it holds for whatever they stray along the other: a centre distance, or the angle of two places,
/// takes an equal share of |cos| and |sin| along both; one that runs along an axis, all of it there
/// and a tenth for what it strays across. 5/8 ±.002 at 60°: ±.002 / 1.366 either way
/// along X and Y.
struct SlantedLinks {
  std::vector<TolerancedLink> links;  ///< by node of the network
  /// Toleranced readings that place something and can't be shared out so: angles from another line
  /// or pair, distances square off a line. Indices into Part::readings, ascending.
  std::vector<std::uint32_t> others;
};

/// The shares along the axis of a network. What the places stray square to the reading is taken
/// off, so the reading holds to the second order as well; a reading that does not hold where things
/// were placed, or is closer than that leaves, comes as a link that no room fits.
/// Requires: `solution` is of `part`. Errors: `outOfRange`.
Result<SlantedLinks> slantedLinks(const Part& part, const Solution& solution,
                                  const ToleranceNetwork& network);

}  // namespace inchwright
