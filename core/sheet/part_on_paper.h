#pragma once

#include "core/plan/drawn_part.h"
#include "core/sheet/bounds.h"

namespace inchwright {

/// Where a picture lies on paper: from its own millimetres (y away) to those of the page (y down).
struct PartOnPaper {
  PaperBox region;  ///< the paper the picture may use
  PaperBox work;    ///< the part and its stock, on paper
  double scale = 1;
  double left = 0;  ///< picture coordinates of the work's left and far ends
  double far = 0;
  bool zeroInside = true;  ///< whether zero lies near enough to be drawn in its place

  PlanePoint at(const PlanePoint& point) const {
    return {work.left + (point.x - left) * scale, work.top + (far - point.y) * scale};
  }
};

/// Fits the picture into `width` by at most `mostHeight`, with room around it for jaw, stop,
/// arrows and the names of edges; `hand` scales that room.
PartOnPaper laidOnPaper(const DrawnPart& picture, double width, double mostHeight, double hand);

}  // namespace inchwright
