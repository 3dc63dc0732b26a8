#pragma once

#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/geometry/path.h"

namespace inchwright {

/// The way of a disc's centre that rolls round the inside of a closed path, touching it: followed
/// as the path is, anticlockwise. Into a corner that turns by a straight angle or less it goes as
/// far as both sides let it; round one that stands into the opening it keeps both sides' own way,
/// which leaves the corner sharp.
///
/// Requires: the path is closed and anticlockwise, by > 0; the units are its own. Empty where the
/// disc does not get round: a hollow tighter than it, a neck it does not pass.
///
///     a rectangle of 2 by 1, by 1/8 → its corners at 1/8 and 1 7/8, 1/8 and 7/8
std::optional<std::vector<PathPiece>> insetOf(std::span<const PathPiece> path, double by);

/// Where a level line runs inside a closed path: from and to, in the positive direction of X.
/// A line that only touches has none.
std::vector<std::pair<double, double>> levelRunsInside(std::span<const PathPiece> path, double y);

/// A closed path followed the other way round.
std::vector<PathPiece> turnedRound(std::span<const PathPiece> path);

}  // namespace inchwright
