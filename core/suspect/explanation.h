#pragma once

#include <vector>

#include "core/part/job.h"
#include "core/suspect/missing_block.h"
#include "core/suspect/suspect.h"
#include "core/suspect/tracing.h"

namespace inchwright {

/// Readings that, read otherwise together, close all that misses in a block.
struct Explanation {
  std::vector<Correction> corrections;  ///< by link, ascending
  std::vector<Reason> reasons;          ///< by correction; none where nothing joins the figures
  double cost = 0;                      ///< −log of its likelihood, up to a constant of the block
};

/// Explains a block that misses, likeliest first; ties go to the lower link numbers.
///
/// One misreading or two are found whatever they are, by solving the block's conditions for them
/// exactly, and three of them when fewer do not explain it; with a tracing also one or two more
/// that it shows by itself. Among links that are in series, and so explain a miss equally, the best
/// few dozen by figure and tracing are kept.
/// Requires: `network` is in order, `block` one of `space`.
std::vector<Explanation> explain(const Part& part, const AxisNetwork& network,
                                 const ConditionSpace& space, const MissingBlock& block,
                                 const Tracing& tracing);

}  // namespace inchwright
