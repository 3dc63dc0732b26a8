#pragma once

#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/chain/axis_system.h"
#include "core/chain/clash.h"

namespace inchwright {

/// What follows along one axis.
struct AxisOutcome {
  std::vector<Position> positions;  ///< by place of the network
  std::vector<Clash> clashes;       ///< fewest members first
  /// Loops that miss by no more than the rounding of their decimals takes; likewise.
  std::vector<Clash> roundings;
  /// Of the readings along the axis, each with its index into Part::readings.
  std::vector<std::pair<std::uint32_t, ReadingStatus>> status;
};

/// Checks one axis: which circuits miss, and what that throws doubt on. L to A 3/8, A to R 1 1/8,
/// L to R 1 3/4: one clash that misses by 1/4, and A disputed.
///
/// Links and relations are taken in order; each either settles something or is spare and closes a
/// circuit with earlier ones. What shares a circuit, however far, is one block: inside a block
/// every member checks every other, so a miss anywhere in it throws doubt on all of it. A place is
/// disputed when it lies in such a block, or when the way to it from the origin of its group
/// leads through one.
///
/// A circuit that passes through a ring's rounded geometry closes when it misses by no more than
/// half a tick for each rounded member and half of the last decimal place for each reading; one
/// of readings alone that misses by no more than that is a rounding, which disputes nothing.
/// Errors: `outOfRange`.
Result<AxisOutcome> solveAxis(const Part& part, const AxisSystem& system);

}  // namespace inchwright
