#pragma once

#include <QPainterPath>
#include <vector>

#include "app/canvas/drawn_places.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

/// The outline of a place on the pane, in pixels, where it is more than a circle about its centre:
/// the whole of a slot, the arc of a round. Empty for all others, and where its sizes are not known
/// yet.
QPainterPath outlineOf(const DrawnPlace& place, const PrintMap& map);

/// The lines on which the holes of rows stand, end to end; pixels.
std::vector<QLineF> rowLines(const DrawnFace& drawn, const PrintMap& map);

/// A straight line torn across, in pixels: where a loop does not close.
QPainterPath torn(const QLineF& line);

}  // namespace inchwright::app
