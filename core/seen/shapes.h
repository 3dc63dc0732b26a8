#pragma once

#include <vector>

#include "core/seen/circles.h"
#include "core/seen/drawn_features.h"

namespace inchwright::seen {

/// Slots: two sides of one length beside one another, with half a circle round each end and a
/// centre line between. What is a circle is none.
std::vector<FeatureOffer> slotsOf(const View& view, bool plumb, const Outlines& outlines,
                                  const std::vector<Circle>& circles, const Frame& frame,
                                  const Stop& stop = Stop());

/// Rings: three holes or more of one size, evenly spaced on a circle that is drawn in dashes.
std::vector<FeatureOffer> ringsOf(const std::vector<Circle>& holes, const Grey& cover,
                                  const Outlines& outlines, const Frame& frame, double inch,
                                  const Stop& stop = Stop());

}  // namespace inchwright::seen
