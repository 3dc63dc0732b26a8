#pragma once

#include "core/sheet/label_placer.h"
#include "core/sheet/part_on_paper.h"

namespace inchwright {

/// The smallest radius a hole is drawn with, mm on paper, so that it can be seen.
inline constexpr double kLeastRadius = 0.45;

/// Draws the work itself: stock hatched, outline, inner edges, slots, rounds, holes and points.
void drawWork(Sketch& sketch, const DrawnPart& picture, const PartOnPaper& frame,
              LabelPlacer& placer);

/// Whether a side of the outline, from `a` to `b` on paper, lies where the print places no side;
/// `box` is the box about the outline there.
bool isGuessed(const DrawnPart& picture, const PlanePoint& a, const PlanePoint& b,
               const PaperBox& box);

/// The radius a hole takes on paper, its seat included: 1/4 in at half size, 1.5875 mm.
double radiusOnPaper(const DrawnHole& circle, const PartOnPaper& frame);

}  // namespace inchwright
