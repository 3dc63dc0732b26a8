#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/tolerance/stack.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// Where a place may lie when every toleranced reading of the print is within its limits.
struct PlaceRange {
  Id id;
  /// The print's position less that of the place measured from, along the first chain that joins
  /// them, to the tick.
  std::int64_t nominal = 0;
  Span span;
  /// The members that set the low end, from the place measured from on; of a long way the last
  /// ones, so that there are no more than kMostMembersNamed in all.
  std::vector<Source> lowBy;
  std::vector<Source> highBy;

  bool operator==(const PlaceRange&) const = default;
};

/// A part of up to a thousand places has every member named.
inline constexpr std::size_t kMostMembersNamed = 1'000'000;

/// A reading that the others do not take care of: when all of them are within their limits, what
/// it measures may still come out beyond its own.
struct Unassured {
  Id reading;
  Span allowed;
  Span others;                        ///< what the others alone let it be
  std::vector<Source> lowBy, highBy;  ///< the others that set those ends

  bool operator==(const Unassured&) const = default;
};

struct Ranges {
  /// Places that something joins to the one measured from, in order of ids, itself included.
  std::vector<PlaceRange> places;
  /// Readings that can't all hold together: the smallest set; then there are no ranges.
  std::vector<Source> contradiction;
  /// Middles and equal spaces among these places that the ranges do not reckon with: the true
  /// ranges may be narrower, never wider.
  std::vector<Source> leftOut;
  /// Places that a thou in a reading makes jump elsewhere: no range can be given.
  std::vector<Id> jumping;

  bool operator==(const Ranges&) const = default;
};

/// The exact worst-case position of every place less that of `from`.
///
/// All of it is exact integers. Middles, symmetric places and equal spaces are reckoned with as
/// exact equations by linear programming over exact rationals where no more than
/// `kMostWithRelations` (relation_ranges.h) places are free to move; beyond that they are left out
/// and named.
/// An end that is no whole tick is rounded outwards. Errors: as `nodeAlong`, `outOfRange`.
Result<Ranges> rangesFrom(const Part& part, const ToleranceNetwork& network, std::string_view from);

/// What comes of looking for unassured readings.
struct UnassuredReadings {
  std::vector<Unassured> found;
  /// Readings lie on loops that would take too long to search: not all were looked at.
  bool isCutShort = false;

  bool operator==(const UnassuredReadings&) const = default;
};

/// The readings that a chain of others closes on without assuring them, in the network's order; of
/// `asked` only, where it is not empty. A drawing with such a one is over-dimensioned: parts whose
/// chain is within its tolerances can fail it. Only readings lettered with a tolerance of their own
/// count, and of a loop only one that no other member exceeds in length, which is the overall one.
///
/// Each is searched for within its two-connected block, which contradicts itself or not, and no
/// further than its own other end; what no loop of shorter readings closes on is not searched for.
/// After `kMostLooked` edges it ends.
Result<UnassuredReadings> unassuredReadings(const Part& part, const ToleranceNetwork& network,
                                            const std::vector<Id>& asked = {});
inline constexpr std::uint64_t kMostLooked = 5'000'000;

/// The smallest set of readings whose tolerances contradict each other, middles and equal spaces
/// left out; empty when there is none.
Result<std::vector<Source>> contradictingReadings(const ToleranceNetwork& network);

/// Lettered tolerances of a part that can't all hold.
struct ToleranceFault {
  Axis axis = Axis::x;
  std::vector<Source> contradiction;  ///< readings that no part can meet; else
  Unassured unassured;                ///< one that parts within all the others can fail

  bool operator==(const ToleranceFault&) const = default;
};

/// What is wrong with the tolerances that a print letters beside its figures, by axis: three steps
/// of 1 +.1 in with an overall of 3 +.1 (DOE-HDBK-1016/2-93, Fig. 8), which they can make 3.3. A
/// loop with a member that takes its tolerance from the title block is dimensioned loosely, no
/// more. Contradictions of readings that miss each other anyway are clashes, and left out when
/// `clashing` names one of them. Errors: `outOfRange`.
Result<std::vector<ToleranceFault>> toleranceFaults(const Part& part,
                                                    const std::vector<Id>& clashing);

}  // namespace inchwright
