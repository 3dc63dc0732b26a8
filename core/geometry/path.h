#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/geometry/homography.h"

namespace inchwright {

/// A straight line by its direction (radians, anticlockwise from X) and how far it passes to the
/// left of the origin: its points P have n·P = offset for the normal n = (−sin, cos) to its left.
struct PlaneLine {
  double direction = 0;
  double offset = 0;

  bool operator==(const PlaneLine&) const = default;
};

struct PlaneCircle {
  PlanePoint centre;
  double radius = 0;

  bool operator==(const PlaneCircle&) const = default;
};

/// How far a point lies to the left of a line.
double leftOf(const PlaneLine& line, PlanePoint p);
double distanceBetween(PlanePoint a, PlanePoint b);

// Where two things meet: none, one touching point or two. What misses by up to `within`, or cuts
// less deep than that, touches: the point lies between both then. Parallel and concentric ones
// never meet.
std::vector<PlanePoint> meetings(const PlaneLine& a, const PlaneLine& b);
std::vector<PlanePoint> meetings(const PlaneLine& line, const PlaneCircle& circle, double within);
std::vector<PlanePoint> meetings(const PlaneCircle& a, const PlaneCircle& b, double within);

/// A step of a path: straight, or round a centre.
struct PathPiece {
  PlanePoint start;
  PlanePoint end;
  std::optional<PlaneCircle> circle;  ///< empty where it is straight
  int sense = 1;                      ///< +1 anticlockwise, −1 clockwise about the centre
  bool isWhole = false;               ///< all the way round: start and end say nothing

  bool operator==(const PathPiece&) const = default;
};

/// Radians from start to end of a round piece, above 0; 0 for a straight one.
double sweepOf(const PathPiece& piece);
/// The direction in which a piece leaves its start or comes to its end, as a unit vector.
PlanePoint wayAtStart(const PathPiece& piece);
PlanePoint wayAtEnd(const PathPiece& piece);

// Of a closed path. Areas are above 0 where it is followed anticlockwise.
double areaOf(std::span<const PathPiece> path);
/// The lower left and the upper right corner of the box around it. Requires: not empty.
std::pair<PlanePoint, PlanePoint> extentsOf(std::span<const PathPiece> path);
bool isInside(std::span<const PathPiece> path, PlanePoint p);

/// The point of a piece that is nearest to p.
PlanePoint nearestOn(const PathPiece& piece, PlanePoint p);
/// How far p lies from a piece.
double distanceTo(const PathPiece& piece, PlanePoint p);

}  // namespace inchwright
