#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace inchwright::reading {

/// What a single character means in a figure, whichever of its typographic forms it comes in.
enum class GlyphKind : std::uint8_t {
  unknown,  ///< a character that has no place in a figure, or bytes that are no UTF-8
  end,
  space,        ///< spaces of every width, tabs, line ends
  digit,        ///< `value` is the digit
  letter,       ///< ASCII letters in lower case, and µ as `u`; `value` is the letter
  point,        ///< . and the raised point ·
  comma,        ///< ,
  slash,        ///< / and the fraction slash
  divide,       ///< ÷
  plus,         ///< +
  dash,         ///< the hyphen and the dashes of all lengths
  minus,        ///< the true minus sign, which never joins a whole and a fraction
  plusMinus,    ///< ±
  times,        ///< × and *
  open,         ///< (
  close,        ///< )
  inchMark,     ///< ″ and the quotation marks that stand for it
  footMark,     ///< ′ and the apostrophes that stand for it
  degree,       ///< °
  diameter,     ///< Ø
  vulgar,       ///< ⅜: `value` over `under`; ⅟ has `under` 0
  raisedDigit,  ///< ³
  loweredDigit  ///< ₁
};

/// One character of the text: what it means and how many bytes it takes.
struct Glyph {
  GlyphKind kind = GlyphKind::end;
  std::uint8_t length = 0;  ///< bytes; 0 only at the end
  std::uint8_t value = 0;
  std::uint8_t under = 0;
  bool capital = false;
};

/// The glyph at byte `at`. Bytes that are no UTF-8 are an unknown glyph of one byte.
Glyph glyphAt(std::string_view text, std::size_t at);

}  // namespace inchwright::reading
