#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/sheet/draw_list.h"

namespace inchwright {

/// The width of one line in mm when its figures are `height` mm high: the sum of the advances of
/// the face, which is what the painters use (no kerning, no ligatures). A character the face lacks
/// is taken as one and a half em wide, more than a substitute needs. Never fails: bytes that are no
/// UTF-8 count as one such character each.
double textWidth(std::string_view text, double height, Typeface face = Typeface::regular);

/// Breaks text into lines no wider than `width` at spaces, and inside a word only where the word
/// alone is too wide. No character is lost but the spaces at the breaks. Requires: height > 0.
std::vector<std::string> wrapText(std::string_view text, double height, double width,
                                  Typeface face = Typeface::regular);

/// The number of bytes of the character that begins at `at`; 1 for a stray byte.
std::size_t characterLength(std::string_view text, std::size_t at);

}  // namespace inchwright
