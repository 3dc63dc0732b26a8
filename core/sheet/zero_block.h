#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// How to find zero: a box for each axis with its steps, the presets with their signs standing out:
/// `… set X -0.6000`.
Pieces zeroPieces(const SheetContent& content, double width);

}  // namespace inchwright
