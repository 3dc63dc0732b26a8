#pragma once

#include <string_view>

#include "core/measure/length.h"

namespace inchwright {

/// The included angle of a common twist drill's point, degrees.
inline constexpr int kDrillPointDegrees = 118;

/// How far the point of a drill (or countersink) reaches beyond its full diameter: half the
/// diameter times the cotangent of half the included angle, to the nearest tick. About 0.3 D for
/// 118°.
///
///     pointLength(1/4 in) -> 0.0751 in
///
/// Requires: 0 < includedDegrees < 180; |diameter| below 100 m.
Length pointLength(Length diameter, int includedDegrees = kDrillPointDegrees);

/// How much a drill cuts over its own size in steel and cast iron, on the diameter: the mean and
/// the greatest of a trial with over 2800 holes (US Cutting Tool Institute, in Machinery's Handbook
/// 27 p. 885; that the table exists was found, its figures are from memory). The row of the next
/// larger drill counts; above 1 in that of 1 in.
struct DrillOversize {
  Length mean;
  Length greatest;

  bool operator==(const DrillOversize&) const = default;
};
DrillOversize drillOversize(Length diameter);

/// How far a drilled hole may be from its nominal size where the print says nothing: AND10387, by
/// size; 0.001 in under, 0.004 to 0.012 in over. Above 2 in its last row.
struct DrilledHoleTolerance {
  Length over;
  Length under;

  bool operator==(const DrilledHoleTolerance&) const = default;
};
DrilledHoleTolerance drilledHoleTolerance(Length diameter);

}  // namespace inchwright
