#pragma once

#include <vector>

#include "core/seen/glyph.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// One glyph, as far as ink that hangs together is one.
struct Piece {
  Box box;   ///< in the cut it was found in
  Grey ink;  ///< the cover, without what belongs to its neighbours
};

/// What a cut of lettering falls into: the bars of stacked fractions, and the rest.
struct Pieces {
  std::vector<Piece> glyphs;
  std::vector<Box> bars;
};

/// Falls a cut apart where it is covered by less than `above`. A bar has ink above and below it
/// and is about as wide as that; it is taken out before the rest is looked at, so that figures
/// that touch it come free. Pieces too wide for one glyph are cut where they are thinnest.
Pieces piecesOf(const Grey& cut, std::uint8_t above, double inch);

}  // namespace inchwright::seen
