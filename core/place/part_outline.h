#pragma once

#include <vector>

#include "core/chain/positions.h"
#include "core/place/beyond_chains.h"
#include "core/place/outline.h"

namespace inchwright {

/// Where things lie in a face, from what is placed of the part.
FacePlane facePlaneOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                      Face face);

/// The outlines of one face: the outer one first, given or following by itself, then the inner
/// ones as given. Empty where there is none.
struct FaceOutlines {
  FacePlane plane;
  std::vector<Outline> outlines;
  std::vector<Wall> walls;  ///< of every hole inside; empty unless the outer one is closed
};

/// `positions` and `beyond` are what was placed of the part: its solution's own.
FaceOutlines outlinesOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                        Face face);

/// The outer outline alone, at less cost, with where it counts from; not closed where it does not
/// come together, and without pieces where there is none.
Outline outerOutlineOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                       Face face);

/// The faces for which the document gives an outline or something is cut from; top where neither.
std::vector<Face> outlinedFaces(const Part& part);

}  // namespace inchwright
