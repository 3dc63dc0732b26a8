#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/solution/solution.h"
#include "core/tolerance/ranges.h"
#include "core/tolerance/stack.h"

namespace inchwright {

/// How a distance hangs on the readings, near where they are.
struct Slopes {
  double nominal = 0;  ///< the distance, ticks
  /// The readings it hangs on, in the part's order, each with its slope for a factor: ticks a tick,
  /// or for an angle ticks a micro-arcsecond. Their sum with these factors is not the nominal.
  std::vector<StackMember> members;
};

/// The slopes of the distance from one place to another, along an axis or straight (`axis` empty:
/// in the plane of the axes that both have), by the figures that place them: through chains, centre
/// distances, angles, and what is understood, whatever comes first. Found by solving the part anew
/// with figures moved by a thou or a hundredth of a degree, so good to about a millionth; slopes of
/// whole and half numbers come out exactly.
///
/// A part solved some 2 log2(readings) times for each reading that comes in. Requires:
/// `checkPart(part)` is fine. Errors: `notFound`; `badRequest` for a place without such a position;
/// `unsolvable` when the two are not placed against each other, or when a thou in a reading makes
/// one jump to another answer; `outOfRange`.
Result<Slopes> slopesBetween(const Part& part, std::optional<Axis> axis, std::string_view from,
                             std::string_view to);

/// Adds to the ranges from a place those of the places that no chain joins to it and that centre
/// distances, angles and the like place: by the slopes of the readings that place them, each
/// anywhere within its limits. Of the first order. Readings to spare are not reckoned with and are
/// named as left out. Requires: `solution` is of `part`; `ranges` are its own along that axis.
/// Errors: as `slopesBetween`, but for places that jump, which are named.
Result<Done> addPlacedRanges(const Part& part, const Solution& solution, Axis axis,
                             std::string_view from, Ranges& ranges);

/// The stack from one place to another along an axis as the print dimensions it: by the chain that
/// joins them (`chainBetween`), exactly; where none does, by the slopes of the readings that place
/// them. Straight (`axis` empty): by the centre distance that is lettered between the two, else by
/// slopes. By slopes the worst case and the root sum square are of the first order;
/// `Stack::secondOrder` says by how much the corners of the worst case come out beyond it, where
/// that is over a tenth of its width.
/// Errors: as `chainBetween`, `slopesBetween` and `stackOf`.
Result<Stack> drawnStack(const Part& part, std::optional<Axis> axis, std::string_view from,
                         std::string_view to, double inflation = kCustomaryInflation);

/// The same along the axis of a network made before.
Result<Stack> drawnStack(const Part& part, const ToleranceNetwork& network, std::string_view from,
                         std::string_view to, double inflation = kCustomaryInflation);

}  // namespace inchwright
