#pragma once

#include "core/sheet/flow.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// A turned part in half section, cut above its axis and seen from outside below it, as it lies in
/// the lathe: the chuck at the left, over what a setup can't reach. Not for measuring. Empty where
/// nothing is placed.
Piece halfSectionPiece(const LatheWork& work, const Setup& setup, double width, double mostHeight);

}  // namespace inchwright
