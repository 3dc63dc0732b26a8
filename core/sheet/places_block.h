#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// Places to drive to and look at before cutting, each with a box to tick.
Pieces checkPieces(const SheetContent& content, double width);

/// Where edges and other planes stand on the readout.
Pieces edgePieces(const SheetContent& content, double width);

}  // namespace inchwright
