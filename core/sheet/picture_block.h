#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// The part as it lies on the table: outline, stock still to come off, fixed jaw, stop, zero and
/// the way each readout counts, every hole to scale with its id. At most `mostHeight` high; an
/// empty piece when there is nothing to draw.
Piece picturePiece(const SheetContent& content, double width, double mostHeight);

/// The scale that picture has: paper over part; 0 without one.
double pictureScale(const SheetContent& content, double width, double mostHeight);

}  // namespace inchwright
