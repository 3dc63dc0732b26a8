#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/base/rational.h"
#include "core/base/result.h"

namespace inchwright::reading {

/// A longer text than this is no figure from a print.
inline constexpr std::size_t kLongestText = 256;

enum class TokenKind : std::uint8_t {
  end,
  number,   ///< `375`, `.375`, `1.1875`: value / 10^places
  vulgar,   ///< ⅜: value / under; under is 0 for ⅟
  raised,   ///< a run of raised digits, the top of a fraction
  lowered,  ///< a run of lowered digits, the bottom of one
  slash,
  divide,
  times,
  plus,
  minus,
  plusMinus,
  open,
  close,
  unit,    ///< `unit` says which
  symbol,  ///< `symbol`: radius or diameter
  remark,  ///< `remark`: reference, basic, typical
  also     ///< the word "and" between a whole and its fraction
};

enum class UnitWord : std::uint8_t {
  inch,  ///< also the mark of arc seconds
  foot,  ///< also the mark of arc minutes
  millimetre,
  centimetre,
  thou,
  micrometre,
  degree,
  minute,
  second
};
enum class SymbolWord : std::uint8_t { radius, diameter };
/// `shown` says what the picture shows as well: over all, the stock, its thickness.
enum class RemarkWord : std::uint8_t { reference, basic, typical, centres, shown };

/// Deliberately without initialisers: a text's tokens live in a fixed array that is not cleared.
struct Token {
  TokenKind kind;
  bool spaceBefore;
  bool hasMark;  ///< number: with a decimal mark
  bool comma;    ///< number: that mark is a comma
  bool loose;    ///< times, unit: in letters; minus: the true minus sign, which joins nothing
  bool capital;  ///< times: the letter in capitals
  UnitWord unit;
  SymbolWord symbol;
  RemarkWord remark;
  std::uint8_t under;
  std::uint16_t places;  ///< number: digits after the mark
  std::uint16_t at;      ///< byte offset
  std::uint16_t past;    ///< byte offset of what follows
  Int128 value;

  bool whole() const { return kind == TokenKind::number && !hasMark; }
  bool decimal() const { return kind == TokenKind::number && hasMark; }
};

/// What is wrong and where. The text is a literal.
struct Fault {
  const char* text = nullptr;
  std::size_t at = 0;
  ErrorCode code = ErrorCode::badText;

  /// Keeps the first fault, and is false so that a parser can return it.
  bool set(std::size_t where, const char* what, ErrorCode why = ErrorCode::badText) {
    if (text == nullptr) *this = {what, where, why};
    return false;
  }
  Error error() const { return {code, text, "", at}; }
};

/// The tokens of a text, closed by one of kind `end`.
struct Tokens {
  std::array<Token, kLongestText + 1> list;
  std::size_t count;  ///< without the closing one
};

/// Splits a text of any bytes into tokens. False, with the fault, when something has no place in
/// a figure. No allocation; linear in the text.
bool tokenize(std::string_view text, Tokens& tokens, Fault& fault);

}  // namespace inchwright::reading
