#pragma once

#include <span>
#include <vector>

#include "core/place/blocks.h"
#include "core/place/equations.h"

namespace inchwright {

/// Where another answer of a block could lie close to the one at `at`: an answer folds over into
/// another along a way in which the rows hold it least, about where the rows curve back. Such
/// points for the few ways that are held least, where that is no further off than `farthest` in any
/// variable.
///
/// To the second order along each way: starts for a search, not answers. As many rows as variables;
/// empty where a factor can't be had. Cost: one sparse factorisation.
std::vector<std::vector<double>> leastHeld(const Equations& equations, const Block& block,
                                           std::span<const double> at, double farthest);

}  // namespace inchwright
