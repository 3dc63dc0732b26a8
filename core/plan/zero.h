#pragma once

#include <optional>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/chain/solution.h"
#include "core/part/job.h"

namespace inchwright {

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
Result<std::optional<FoundZero>> findZero(const Part& part, const Solution& solution,
                                          const Setup& setup, Axis axis);

/// What zero is along an axis when nobody says: the outer side at the axis's lower end, else the
/// first placed place of the part; empty when nothing is placed.
std::optional<ZeroAlong> customaryZero(const Part& part, const Solution& solution, Axis axis);

/// The feature that a place belongs to: itself, or the ring, row or slot it is one of. Null when
/// the part has no such place.
const Feature* featureOfPlace(const Part& part, std::string_view place);

/// The side of the part that a feature is the outermost of, along an axis: an edge with a side, or
/// the outer tangent of a round. Empty for anything else.
std::optional<Side> outerSideOf(const Feature& feature, Axis axis);

/// How far the stock stands beyond a feature, in the positive direction of the axis (negative for
/// the sides at the lower end); 0 where the feature is no outer side.
Length stockBeyond(const Setup& setup, const Feature& feature, Axis axis);

/// The position of a place that is fixed against the part; null when it is loose or not there.
const Position* placedPosition(const Solution& solution, std::string_view place, Axis axis);

}  // namespace inchwright
