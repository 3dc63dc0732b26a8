#pragma once

#include "core/sheet/sketch.h"

namespace inchwright {

/// The zero of this setup: a lozenge with a solid heart. `size` is half its width.
void drawZeroMark(Sketch& sketch, PlanePoint at, double size);

/// A full arrowhead whose tip is at `tip`, pointing along `dx`, `dy` (one of them 0, the other ±1).
void drawArrowHead(Sketch& sketch, PlanePoint tip, double dx, double dy, double length);

/// A torn edge down the left of something in dispute.
void drawTornEdge(Sketch& sketch, double x, double top, double bottom);

/// A triangle on its base, for what to mind.
void drawMindMark(Sketch& sketch, PlanePoint centre, double size);

/// A ring with a question mark, for what is still open.
void drawQueryMark(Sketch& sketch, PlanePoint centre, double size);

/// A box to tick with a pencil; `at` is its top left corner.
void drawTickBox(Sketch& sketch, PlanePoint at, double size);

/// Slanted lines across a box, `pitch` apart.
void drawHatchedBox(Sketch& sketch, const PaperBox& box, double pitch, double width);

}  // namespace inchwright
