#pragma once

#include <optional>

#include "core/chain/network.h"
#include "core/graph/elimination.h"
#include "core/graph/forest.h"

namespace inchwright {

/// Σ factor · relation + Σ factor · position(node), told in links of the forest: each link with
/// the sum of the factors that pass over it on the way from its root, less where it is walked from
/// its `to` to its `from`. What is left at the roots themselves is not told.
///
/// Every link is passed once, whatever hangs below it. Empty when a factor leaves 128 bits.
std::optional<Sparse> pathsOf(const Forest& forest, const AxisNetwork& network,
                              const Sparse& relations, Sparse nodes = {});

}  // namespace inchwright
