#pragma once

#include "core/seen/drawn_features.h"
#include "core/seen/looked_at.h"
#include "core/seen/offer.h"

namespace inchwright::seen {

inline constexpr double kSigma = 0.010;       ///< of a drawn distance, inches of the sheet
inline constexpr double kPicturing = 0.0005;  ///< and of squaring up, inches of the face

/// A box of the raster as one of the picture that holds it.
PictureBox onPicture(const Homography& toPicture, double x0, double y0, double x1, double y1);

/// The dimension lines on a print with what is lettered on them: level and plumb ones, those from
/// hole to hole and the arcs of angles. No figure is given to two of them. Empty when stopped.
/// Example: arrows 1.19 in apart round `1 3/16` give one reading along x with that candidate.
std::vector<ReadingOffer> dimensionLines(const LookedAt& seen, const Outlines& outlines,
                                         const std::vector<Circle>& holes, const Options& options,
                                         const Nets& nets, const Stop& stop);

}  // namespace inchwright::seen
