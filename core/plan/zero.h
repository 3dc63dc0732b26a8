#pragma once

#include <optional>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// The position of a place that is fixed against the part; null when it is loose or not there.
const Position* placedPosition(const Solution& solution, std::string_view place, Axis axis);

/// A part in one of its setups on a machine. Refers only: all four outlive it.
struct PartAt {
  const Part& part;
  const Solution& solution;
  const Setup& setup;
  const Machine& machine;

  /// The position of a place that is fixed against the part; null when it is loose or not there.
  const Position* position(std::string_view place, Axis axis) const {
    return placedPosition(solution, place, axis);
  }
  /// The side of the work that a feature is, along an axis: `outerSideOf`, else, where stock is
  /// left on a side that the print gives no edge's name to, the outermost placed edge at that end.
  std::optional<Side> sideOf(const Feature& feature, Axis axis) const;
  /// How far the stock stands beyond a feature, in the positive direction of the axis (negative for
  /// the sides at the lower end); 0 where the feature is no outer side.
  Length stockBeyond(const Feature& feature, Axis axis) const;
};

/// Where a setup's zero is along one axis of the part.
struct FoundZero {
  ZeroAlong asked;       ///< as the setup says, or what was taken for want of it
  bool assumed = false;  ///< the setup says nothing about this axis
  Rational ticks;        ///< in the part's own axes, exact
  bool exact = true;     ///< false when a position it rests on was rounded
  bool disputed = false;
  /// Middle of the stock less middle of the finished part, ticks, in the part's own direction; 0
  /// unless zero is the middle of two places of which one at least is an outer side with stock.
  Rational stockShift;

  bool operator==(const FoundZero&) const = default;
};

/// Zero along an axis. Empty when the setup says nothing and nothing is placed along the axis.
/// Errors: `notFound` for an unknown place, `unsolvable` for a loose one, `badRequest` for one that
/// has no position along the axis or a middle of other than two places, `outOfRange`.
Result<std::optional<FoundZero>> findZero(const PartAt& at, Axis axis);

/// What zero is along an axis when nobody says: the outer side at the axis's lower end, else the
/// first placed place of the part; empty when nothing is placed.
std::optional<ZeroAlong> customaryZero(const Part& part, const Solution& solution, Axis axis);

/// The edge that stands for a side which no edge bears the name of: the outermost placed one at
/// that end. Null when the side is named, or when the outermost is another side or none is placed.
const Feature* standInFor(const PartAt& at, Side side);

/// The feature that a place belongs to: itself, or the ring, row or slot it is one of. Null when
/// the part has no such place.
const Feature* featureOfPlace(const Part& part, std::string_view place);

/// The side of the part that a feature is the outermost of, along an axis: an edge with a side, or
/// the outer tangent of a round. Empty for anything else.
std::optional<Side> outerSideOf(const Feature& feature, Axis axis);

}  // namespace inchwright
