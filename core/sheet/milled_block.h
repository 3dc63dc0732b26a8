#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// Slots and pockets: with what each is cut and how deep, where the cutter's centre goes run by run
/// in figures as large as those that are driven to once, with a box for each depth, and what to
/// mind and to measure. Nothing where the setup mills none.
Pieces milledPieces(const SheetContent& content, double width);

}  // namespace inchwright
