#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// How close to work: the figure, then the places it goes for along X and Y; where to aim instead
/// of at the sheet's own figure; what would ease it. Empty when the sheet is without. One line:
/// `±0.0040  X: A, B · Y: B`.
Pieces closenessPieces(const SheetContent& content, double width);

}  // namespace inchwright
