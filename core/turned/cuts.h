#pragma once

#include <vector>

#include "core/turned/lathe_readout.h"

namespace inchwright {

/// The cuts of a lathe setup in order. `toCut` are the stretches it reaches and that are not yet
/// cut; `freeEdge` is faced, `chuckEdge` is where it may be parted off.
std::vector<Cut> cutsOf(const Part& part, const Lathe& lathe, const Setup& setup,
                        const TurnedShape& shape, const std::vector<const TurnedStretch*>& toCut,
                        const LatheReadout& readout, const Id& freeEdge, const Id& chuckEdge);

}  // namespace inchwright
