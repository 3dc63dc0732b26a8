#pragma once

#include <array>
#include <vector>

#include "core/plan/hole_work.h"

namespace inchwright {

/// What a tool takes away at a hole: a cylinder and, at its end, a cone. Inches along the part's
/// own axes; for distances only, never a size.
struct HoleBody {
  std::size_t hole = 0;           ///< index into the holes
  int axis = 2;                   ///< along which it goes in
  int inward = -1;                ///< in the positive direction of that axis or against it
  std::array<double, 3> mouth{};  ///< the centre at the face
  double radius = 0;
  double length = 0;  ///< of the cylinder
  double point = 0;   ///< of the cone beyond it
  /// Where the face or, of a through hole, the far side is not known, its place along its own axis
  /// is not; it is then taken to go on for ever.
  bool endless = false;
  /// A blind one whose face is not known: compared with those of the same face alone.
  bool adrift = false;
};

/// The bodies of all holes that have a centre and a size: the finished hole, a deeper drill under a
/// reamer or tap, a seat. On the finished part.
std::vector<HoleBody> holeBodies(const std::vector<PlannedHole>& holes, const WorkBlock& block);

/// The point of a body that is nearest to another; the body is convex.
std::array<double, 3> nearestIn(const HoleBody& body, const std::array<double, 3>& p);

/// The thickness of metal between two bodies, inches; below 0 where they run into each other, by
/// how much the walls overlap between their axes. Exact but for rounding where the cylinders lie
/// side by side or cross each other; else to a millionth of an inch. Infinite where nobody knows
/// how the two lie along their axes. Two holes of 1/4 in, 3/8 in apart: 0.125.
double wallBetween(const HoleBody& a, const HoleBody& b);

}  // namespace inchwright
