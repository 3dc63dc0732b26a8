#pragma once

#include <vector>

#include "core/seen/offers.h"
#include "core/seen/plane.h"
#include "core/seen/squared.h"

namespace inchwright::seen {

/// Rows among the holes that are offered: three or more alike, one behind another on a level or
/// plumb line that is drawn from each to the next, and evenly apart as far as the drawing can tell.
/// Where a note at one of them speaks of as many holes, the row has its size.
///
/// Holes on that line that are not evenly apart are no row, nor are those of a ring. Not yet ready:
/// see `settleRows`.
std::vector<FeatureOffer> rowsOf(const std::vector<FeatureOffer>& features, const Grey& cover,
                                 const Frame& frame, double inch, const Stop& stop = Stop());

/// What dimensions say of rows, `near` being how close, inches of the face, one has to end to what
/// it ends at. Holes that each have a dimension of their own along the line are located by those:
/// no row is offered, and they are left to be offered one by one. A row may be taken by one Enter
/// where its outer holes alone have one and its size is plain: then nothing but even spaces can be
/// meant.
void settleRows(const std::vector<ReadingOffer>& readings, double near,
                std::vector<FeatureOffer>& features);

}  // namespace inchwright::seen
