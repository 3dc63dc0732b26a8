#pragma once

#include <optional>

#include "core/chain/elimination.h"
#include "core/chain/skeleton.h"

namespace inchwright {

/// Σ factor · relation + Σ factor · position(node), told in links of the skeleton: each link with
/// the sum of the factors that pass over it on the way from its root, less where it is walked from
/// its `to` to its `from`. What is left at the roots themselves is not told.
///
/// Every link is passed once, whatever hangs below it. Empty when a factor leaves 128 bits.
std::optional<Sparse> pathsOf(const Skeleton& skeleton, const AxisNetwork& network,
                              const Sparse& relations, Sparse nodes = {});

}  // namespace inchwright
