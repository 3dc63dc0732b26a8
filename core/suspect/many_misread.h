#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "core/part/job.h"
#include "core/suspect/correction_cost.h"
#include "core/suspect/missing_block.h"
#include "core/suspect/tracing.h"

namespace inchwright {

/// Many readings read otherwise together, where no few of them explain a block.
struct ManyMisread {
  std::map<std::uint32_t, std::int64_t> longer;  ///< by link: by how many ticks
  std::map<std::uint32_t, int> closes;  ///< by link: of the loops that miss, how many it is on
};

/// Takes the block's short loops, and again and again the one correction that closes most of those
/// that miss and opens fewest of those that close; of equal ones the likelier by figure and
/// tracing. Each step leaves fewer loops open, and a later one may put an earlier one right. What
/// is left open at the end nobody explains.
///
/// Places in a row dimensioned one by one and each from the left edge, two figures misread: each
/// loop of three that holds one misses, and the overall figure is on one of them only.
/// Requires: `block` is one of `space`. Cost: linear in the short loops' members, times those of
/// the loops that a correction touches; given up beyond some tens of millions of steps.
ManyMisread explainMany(const Part& part, const ConditionSpace& space, const MissingBlock& block,
                        CorrectionCost& costs);

}  // namespace inchwright
