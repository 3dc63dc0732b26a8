#pragma once

#include <optional>
#include <vector>

#include "core/geometry/homography.h"
#include "core/part/picture.h"

namespace inchwright {

/// The points a picture is squared up by, as the squaring up takes them.
std::vector<KnownPoint> knownPoints(const std::vector<SquaringPoint>& points);

/// That by its points a picture would come out as none that was taken of a print: what is traced on
/// it would lie elsewhere, and the tracing would speak against figures that are right.
struct CrookedPicture {
  bool mirrored = false;  ///< left and right are exchanged; then the rest says nothing
  double lean = 0;        ///< degrees by which its upright lines lean over its level ones
  double stretch = 1;     ///< how many times as long one way as the other

  bool operator==(const CrookedPicture&) const = default;
};

/// Told of a picture that comes mirrored, leans by over 30 degrees or is stretched over 1.7 times
/// (common practice, no source: a photo from the side stays under half of that). Empty for one that
/// may be, and for one that can't be squared up by its points at all, which is told elsewhere.
///
///     corners of a rectangle of which left and right are exchanged -> mirrored
std::optional<CrookedPicture> crookedBy(const std::vector<SquaringPoint>& points);

}  // namespace inchwright
