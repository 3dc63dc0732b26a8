#pragma once

#include <QImage>
#include <QRectF>
#include <atomic>
#include <optional>
#include <vector>

#include "app/picture/askew.h"
#include "core/base/result.h"
#include "core/geometry/homography.h"
#include "core/part/crooked_picture.h"
#include "core/part/picture.h"

namespace inchwright::app {

/// How large a picture lies on the desk before it is squared up: so many of its pixels an inch,
/// from its top left corner to the right and, negative, downwards.
inline constexpr double kAsTakenPixelsPerInch = 100;

/// Where a known point lies on the picture as it was taken, upright; inches as above.
QPointF asTaken(const SquaringPoint& point);

/// A place turned about zero by quarter turns, anticlockwise, y up: 1, 0 by 90 is 0, 1.
QPointF turnedBy(QPointF at, int degrees);

/// From pixels of a picture to inches of a face whose zero lies at `zero` on the squared-up print.
/// Errors: `badRequest` where no points say where it lies, and as squareUp.
Result<Homography> pixelsToFace(const std::vector<SquaringPoint>& points, PlanePoint zero);

/// A picture squared up to the print's inches, and halved again and again for far views.
struct SquaredPicture {
  std::vector<QImage> levels;  ///< each half as large as the one before
  double pixelsPerInch = 0;    ///< of levels[0]
  double left = 0;             ///< inches of its top left corner; y up
  double top = 0;
  /// As it was taken: how askew, where its lines tell.
  std::optional<Askew> askew;
  /// Squared up: how far places may lie from where it shows them, in inches, where its lines tell.
  std::optional<double> lean;

  QRectF bounds() const;  ///< inches, y up: top() is the lower edge
};

/// What a long piece of work tells and hears meanwhile; shared between threads.
struct WorkUnderWay {
  std::atomic<int> percent{0};
  std::atomic<bool> cancelled{false};
};

/// The same picture turned about zero by quarter turns, anticlockwise.
SquaredPicture turnedBy(SquaredPicture picture, int degrees);

/// Squares a picture up by its points, on two threads; without points, or when they do not serve,
/// it comes as it was taken (kAsTakenPixelsPerInch, top left corner at 0, 0). Empty when cancelled.
/// About as many pixels as the source has. Requires: `source` has four bytes a pixel.
std::optional<SquaredPicture> squarePicture(QImage source, const std::vector<SquaringPoint>& points,
                                            WorkUnderWay& work);

}  // namespace inchwright::app
