#pragma once

#include <optional>
#include <vector>

#include "core/place/outline.h"
#include "core/place/placing.h"

namespace inchwright {

/// Where things lie in a face, from what is placed of the part.
FacePlane facePlaneOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                      const PlacedPart& placed, Face face);

/// The outlines of one face: the outer one first, given or following by itself, then the inner
/// ones as given. Empty where there is none.
struct FaceOutlines {
  FacePlane plane;
  std::vector<Outline> outlines;
  std::vector<Wall> walls;  ///< of every hole inside; empty unless the outer one is closed
};

FaceOutlines outlinesOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                        const PlacedPart& placed, Face face);

/// The faces for which the document gives an outline or something is cut from; top where neither.
std::vector<Face> outlinedFaces(const Part& part);

/// The same from nothing but the part, for one face or all outlined ones.
/// Requires: `checkPart(part)` is fine. Errors: as those of placing.
Result<std::vector<FaceOutlines>> outlinesOf(const Part& part, std::optional<Face> face = {});

}  // namespace inchwright
