#pragma once

#include <array>
#include <vector>

#include "core/chain/axis_system.h"
#include "core/chain/position.h"
#include "core/part/job.h"

namespace inchwright {

/// Places the rounds in corners of edges that are no outer sides, such as those of a pocket: on
/// which hand of each edge they lie follows from the way in which an outline runs along it. Those
/// that are placed already stay; where an edge or a neighbour is loose, so do they.
///
/// `positions` are by the places of each axis' network.
///
///     a pocket's left wall at 1/2, its front wall at 1/4, R 1/8 between → centre at 5/8, 3/8
void placeOutlineCorners(const Part& part, const std::array<AxisSystem, 3>& systems,
                         std::array<std::vector<Position>, 3>& positions);

}  // namespace inchwright
