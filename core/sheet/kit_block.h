#pragma once

#include "core/say/kit_words.h"
#include "core/sheet/flow.h"
#include "core/sheet/style.h"

namespace inchwright {

/// What a part's sheet says of the rest of the kit: what came out, with the size that no longer
/// counts struck out and why; what it goes together with, and what to make it to. Without lines
/// there is nothing.
Pieces kitPieces(const std::vector<KitLine>& lines, const Style& style, double width);

}  // namespace inchwright
