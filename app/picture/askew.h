#pragma once

#include <QImage>
#include <optional>
#include <vector>

namespace inchwright::app {

/// A long straight line of a picture, nearly level or nearly upright. Pixels of the picture from
/// its top left corner, y down.
struct LongLine {
  bool upright = false;
  double lean = 0;   ///< radians anticlockwise, as seen, from level or from upright
  double at = 0;     ///< y of its middle, of an upright one x
  double along = 0;  ///< x of its middle, of an upright one y
  double length = 0;
};

/// The long straight lines of a picture: borders, edges of the part, long dimension lines. At most
/// some dozens, the longest first; none where nothing runs for a sixth of the picture. Found on the
/// picture made small, in some 50 ms however large it is.
///
/// Only a witness of how the picture was taken: nothing is measured by it.
std::vector<LongLine> longLines(const QImage& image);

/// How far a picture is from a flat one, by the directions of its long lines. Of a scan all three
/// are 0 but for its noise; a photo from an angle has lines that run together in the distance.
struct Askew {
  double levels = 0;    ///< radians by which level lines differ from the top to the bottom
  double uprights = 0;  ///< and upright ones from left to right
  double square = 0;    ///< radians by which the two sorts miss a right angle

  /// Two points square it up to a hundredth of its size or so.
  bool isFlat() const;
  /// Its lines run together: three points don't put that right either.
  bool runsTogether() const;
  /// Radians, of the worst of the three.
  double worst() const;

  bool operator==(const Askew&) const = default;
};

/// Empty where there are too few long lines to tell.
std::optional<Askew> askewOf(const QImage& image);

/// How far places may lie from where a squared-up picture shows them, in inches, as its own lines
/// tell: those that should run level or upright, and lean. Empty where there are too few.
std::optional<double> leanOf(const QImage& squared, double pixelsPerInch);

}  // namespace inchwright::app
