#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/geometry/point.h"

namespace inchwright {

/// A projective map of the plane: it squares up a photo or scan of a print.
///
/// Approximate by nature. A picture never gives a size; it only says where things are drawn.
class Homography {
 public:
  Homography() = default;  ///< the identity
  /// Row-major 3 × 3. Requires: not singular.
  explicit Homography(const std::array<double, 9>& matrix) : m_(matrix) {}

  /// Points on the map's horizon have no image; they come out as infinities.
  PlanePoint map(PlanePoint p) const;
  /// Empty-handed maps do not exist here: every Homography can be inverted.
  Homography inverse() const;
  /// first `before`, then this
  Homography after(const Homography& before) const;
  const std::array<double, 9>& matrix() const { return m_; }

 private:
  std::array<double, 9> m_{1, 0, 0, 0, 1, 0, 0, 0, 1};
};

/// A point of the picture (pixels from its top left corner, y down) and where it lies on the print
/// (inches, y up).
struct KnownPoint {
  PlanePoint pixel;
  PlanePoint inches;

  bool operator==(const KnownPoint&) const = default;
};

/// How a picture was squared up, and how well the points agree.
struct SquaredUp {
  Homography pixelToInches;
  std::vector<double> residual;  ///< inches at each known point, in their order
  double largestResidual = 0;    ///< inches; 0 when there is no spare point
};

/// Finds the map from picture to print.
///
/// Two points: level and square assumed, a scale per axis where the points differ enough along
/// both (a scan stretched in one direction), else one scale and the turn. Three: an affine map.
/// Four: the projective map exactly through them. Five or more: the projective map with the least
/// squares of residuals on the print (normalised direct solution, then Gauss–Newton; Hartley and
/// Zisserman, Multiple View Geometry, 2nd ed., 4.1 and 4.4, from memory).
///
/// Errors: `badRequest` for fewer than two points or a point that is no number; `unsolvable` when
/// points coincide, three of four lie in a line, or the outline they make is turned inside out
/// (corners named in the wrong order).
Result<SquaredUp> squareUp(std::span<const KnownPoint> points);

}  // namespace inchwright
