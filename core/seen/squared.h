#pragma once

#include <cstddef>

#include "core/geometry/homography.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// A picture as it was taken, upright: one byte a pixel, 0 black, rows `stride` bytes apart from
/// the top. Not owned.
struct GreyPicture {
  const std::uint8_t* data = nullptr;
  int width = 0;
  int height = 0;
  std::ptrdiff_t stride = 0;
};

/// Where a squared-up raster lies on the face: inches to the right and up, pixels right and down.
struct Frame {
  double perInch = 1;  ///< pixels an inch of the face
  double left = 0;     ///< inches at pixel (0, 0)
  double top = 0;

  PlanePoint inches(double x, double y) const { return {left + x / perInch, top - y / perInch}; }
  PlanePoint pixel(PlanePoint p) const { return {(p.x - left) * perInch, (top - p.y) * perInch}; }
};

/// A picture squared up, and the way back.
struct Squared {
  Grey grey;
  Frame frame;
  Homography toPicture;  ///< pixels of the raster to pixels of the picture
};

/// The most pixels an inch of the face that the picture has near its middle or its corners.
/// 0 where the map makes nothing of the picture.
double densityOf(const GreyPicture& picture, const Homography& pixelToInches);

/// The picture squared up at so many pixels an inch of the face, or fewer where it would come to
/// more than `most` pixels. What lies beyond the picture has the tone of its rim.
/// Requires: densityOf is above 0. An empty raster when stopped.
Squared square(const GreyPicture& picture, const Homography& pixelToInches, double perInch,
               double most, const Stop& stop);

}  // namespace inchwright::seen
