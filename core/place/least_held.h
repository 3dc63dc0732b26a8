#pragma once

#include <span>
#include <vector>

#include "core/place/blocks.h"
#include "core/place/equations.h"

namespace inchwright {

/// How a block is held in the ways in which its rows hold it least.
struct LeastHeld {
  /// Where another answer could lie close by: an answer folds over into another along such a way,
  /// about where the rows curve back.
  std::vector<std::vector<double>> starts;
  /// The least singular value of the slopes, of the greatest or a little more; 0 where it is not
  /// known.
  double hold = 0;
};

/// Looks from an answer at `at` for the few ways that are held least, and in each for where the
/// rows curve back, if that is no further off than `farthest` in any variable.
///
/// To the second order along each way: starts for a search, not answers. As many rows as variables;
/// nothing where a factor can't be had. Cost: one sparse factorisation.
LeastHeld leastHeld(const Equations& equations, const Block& block, std::span<const double> at,
                    double farthest);

}  // namespace inchwright
