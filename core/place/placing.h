#pragma once

#include <array>
#include <vector>

#include "core/base/result.h"
#include "core/chain/axis_system.h"
#include "core/chain/positions.h"
#include "core/part/job.h"
#include "core/place/beyond_chains.h"
#include "core/place/plane.h"

namespace inchwright {

/// All that is placed of a part, by chains and beyond them.
struct PlacedPart : BeyondChains {
  /// By axis and node of the axis systems; what was placed numerically says so and is in group 0.
  std::array<std::vector<Position>, 3> positions;

  bool operator==(const PlacedPart&) const = default;
};

struct PlacePartOptions {
  bool findContradictions = true;  ///< what each reading would have to be
  PlaneOptions plane;
};

/// Places numerically what the chains leave loose and centre distances, angles and tangents settle,
/// plane by plane, and what then follows exactly from it, as often as it takes.
///
/// `positions` are the chains' own. A part without such readings comes back as it was, at no cost.
/// Requires: `checkPart(part)` is fine; the systems are its own. Errors: `outOfRange` when a
/// position leaves the exact range.
Result<PlacedPart> placePart(const Part& part, const std::array<AxisSystem, 3>& systems,
                             const std::array<std::vector<Position>, 3>& positions,
                             const PlacePartOptions& options = {});

/// All that is placed of a part, by place and axis, and what was found on the way.
struct WholePlaced {
  Positions positions;
  BeyondChains beyond;
};

/// Chains first, then what they leave loose, of a part that nothing is solved of yet.
/// Requires: `checkPart(part)` is fine. Errors: as `systemsOf`, `solveAxis` and `placePart`.
Result<WholePlaced> placeWhole(const Part& part, const PlacePartOptions& options = {});

}  // namespace inchwright
