#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/measure/lettered.h"
#include "core/seen/pieces.h"

namespace inchwright::seen {

/// A cut is read at each: a faint stroke breaks at a high one, close ones run together at a low
/// one.
inline constexpr std::array<std::uint8_t, 4> kThresholds{51, 84, 122, 158};

/// A glyph with what it may be.
struct Mark {
  Box box;
  GlyphOdds odds;
};

/// One way to read a cut of lettering as a whole figure.
struct FigureRead {
  std::string text;  ///< as it would be lettered in one row: `1 3/16`, `(2)`, `.375 ±.002`
  double odds = 0;   ///< natural logarithm of how likely its glyphs are, added up
  int glyphs = 0;    ///< how many were read

  double mean() const { return odds / (glyphs > 0 ? glyphs : 1); }
};

/// Every way to read a cut as a figure that is worth a thought, the likeliest first, each text
/// once. A figure is a whole number, a fraction of a rule (an odd number over 2 … 64) stacked over
/// a bar or on both sides of a slant, both together, or a decimal; in brackets, with R, Ø, °, and a
/// tolerance behind it, or two decimals one above the other as limits. Read at each of
/// kThresholds.
/// `rules` are rows of the cut along which a line was taken out: it may have been the bar of a
/// fraction.
std::vector<FigureRead> readFigure(const Grey& cut, const std::vector<int>& rules, double inch,
                                   Unit unit, const Net& net);

/// The same for marks already told apart.
std::vector<FigureRead> readMarks(std::vector<Mark> marks, const std::vector<Box>& bars,
                                  double inch, Unit unit);

/// Pieces with their odds.
std::vector<Mark> marksOf(const Pieces& pieces, const Net& net);

}  // namespace inchwright::seen
