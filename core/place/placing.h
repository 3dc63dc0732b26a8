#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "core/base/result.h"
#include "core/chain/axis_system.h"
#include "core/chain/position.h"
#include "core/geometry/path.h"
#include "core/part/job.h"
#include "core/place/plane.h"

namespace inchwright {

/// A place, or a group that moves as one, with more than one answer.
struct SeveralAnswers {
  Id place;               ///< the first of the group by its id
  std::vector<Id> about;  ///< all that move with it, itself among them
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  bool isTaken = false;  ///< by the tracing; else it is in doubt, and not placed
  /// Of `place`, along both axes, from the outer sides at the lower ends; the one taken first.
  std::vector<std::array<Length, 2>> answers;

  bool operator==(const SeveralAnswers&) const = default;
};

/// What one reading would have to be for a contradiction to close.
struct WouldBe {
  std::uint32_t reading = 0;      ///< index into Part::readings
  Length length;                  ///< of a distance
  std::optional<double> degrees;  ///< of an angle instead
  bool closesAll = false;         ///< with it every spare reading agrees
  /// What the spare readings then still have against it: half the squares of how far they miss, in
  /// three times what they may, each up to 8.
  double misfit = 0;

  bool operator==(const WouldBe&) const = default;
};

/// Placed readings that don't meet.
struct CentresClash {
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  std::vector<std::uint32_t> members;     ///< indices into Part::readings, ascending
  std::vector<std::uint32_t> understood;  ///< indices into Part::understood that come in
  /// Inches, angles times distance: what the spare one says less what the others make.
  double missesBy = 0;
  std::optional<std::uint32_t> spare;  ///< the reading that only checked; empty: nothing was placed
  std::vector<WouldBe> wouldBe;

  bool operator==(const CentresClash&) const = default;
};

enum class FreeWay : std::uint8_t {
  swings,    ///< about `about`, at its distance
  slides,    ///< along a straight way: through `about`, or along a line
  together,  ///< with others that hang on each other: no simple way
};

/// How a place that its readings hold half can still move.
struct FreePlace {
  Id place;
  FreeWay way = FreeWay::together;
  Id about;

  bool operator==(const FreePlace&) const = default;
};

/// A place that an error in a reading moves many times over.
struct WeakPlace {
  Id place;
  std::uint32_t reading = 0;
  double factor = 0;  ///< inches an inch

  bool operator==(const WeakPlace&) const = default;
};

/// All that is placed of a part, by chains and beyond them.
struct PlacedPart {
  /// By axis and node of the axis systems; what was placed numerically says so and is in group 0.
  std::array<std::vector<Position>, 3> positions;
  /// Lines, and circles by centre and radius, in inches from the systems' origins along the part's
  /// own axes: by axis pair (xy, xz, yz) and id.
  std::array<std::map<Id, PlaneLine>, 3> lines;
  std::array<std::map<Id, PlaneCircle>, 3> circles;
  std::vector<SeveralAnswers> answers;
  std::vector<CentresClash> clashes;
  std::vector<FreePlace> free;
  std::vector<WeakPlace> weak;
  std::set<std::uint32_t> used;     ///< readings that placed or checked something here
  std::set<std::uint32_t> checked;  ///< of all readings, those that a spare one here checks
  double residual = 0;              ///< inches, the greatest

  bool operator==(const PlacedPart&) const = default;
};

struct PlacePartOptions {
  bool findContradictions = true;  ///< what each reading would have to be
  PlaneOptions plane;
};

/// The two axes of each plane, in the order of `PlacedPart::lines`.
inline constexpr std::array<std::array<Axis, 2>, 3> kPlanes{
    {{Axis::x, Axis::y}, {Axis::x, Axis::z}, {Axis::y, Axis::z}}};

/// Places numerically what the chains leave loose and centre distances, angles and tangents settle,
/// plane by plane, and what then follows exactly from it, as often as it takes.
///
/// `positions` are the chains' own. A part without such readings comes back as it was, at no cost.
/// Requires: `checkPart(part)` is fine; the systems are its own. Errors: `outOfRange` when a
/// position leaves the exact range.
Result<PlacedPart> placePart(const Part& part, const std::array<AxisSystem, 3>& systems,
                             const std::array<std::vector<Position>, 3>& positions,
                             const PlacePartOptions& options = {});

/// A part's systems, and all that they and what goes beyond them place.
struct WholePlaced {
  std::array<AxisSystem, 3> systems;
  PlacedPart placed;
};

/// Chains first, then what they leave loose, of a part that nothing is solved of yet.
/// Requires: `checkPart(part)` is fine. Errors: as `systemsOf`, `solveAxis` and `placePart`.
Result<WholePlaced> placeWhole(const Part& part, const PlacePartOptions& options = {});

}  // namespace inchwright
