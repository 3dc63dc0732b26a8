#pragma once

#include <vector>

#include "core/chain/axis_system.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Whether nothing has to say where a place lies: the middle of a curved slot, whose ends say all.
bool isWithoutPlace(const Part& part, const AxisNetwork& network, std::size_t place);

/// The places that are in no group with the part, and what each lacks; of one feature's places that
/// hang together only the first, since what places it places them all. `positions` are those of
/// the system. Linear.
std::vector<Loose> looseAlong(const Part& part, const AxisNetwork& network,
                              const std::vector<Position>& positions);

}  // namespace inchwright
