#pragma once

#include "core/sheet/label_placer.h"
#include "core/sheet/picture_frame.h"

namespace inchwright {

/// The smallest radius a hole is drawn with, mm on paper, so that it can be seen.
inline constexpr double kLeastRadius = 0.45;

/// Draws the work itself: stock hatched, outline, inner edges, slots, rounds, holes and points.
void drawWork(Sketch& sketch, const PartPicture& picture, const PictureFrame& frame,
              LabelPlacer& placer);

/// The radius a hole takes on paper, its seat included.
double radiusOnPaper(const PictureCircle& circle, const PictureFrame& frame);

}  // namespace inchwright
