#include "core/measure/glyphs.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace inchwright::reading {
namespace {

struct Meaning {
  GlyphKind kind;
  std::uint8_t value = 0;
  std::uint8_t under = 0;
};

struct Range {
  char32_t first;
  char32_t last;
  Meaning meaning;  ///< of the first; digits count up from it
};

constexpr Meaning vulgar(std::uint8_t over, std::uint8_t under) {
  return {GlyphKind::vulgar, over, under};
}

/// Characters beyond ASCII, in order, by their names in the Unicode charts: Latin-1, General
/// Punctuation, Superscripts and Subscripts, Number Forms, Mathematical Operators.
constexpr Range kRanges[] = {
    {0x00A0, 0x00A0, {GlyphKind::space}},
    {0x00B0, 0x00B0, {GlyphKind::degree}},
    {0x00B1, 0x00B1, {GlyphKind::plusMinus}},
    {0x00B2, 0x00B3, {GlyphKind::raisedDigit, 2}},
    {0x00B4, 0x00B4, {GlyphKind::footMark}},
    {0x00B5, 0x00B5, {GlyphKind::letter, 'u'}},
    {0x00B7, 0x00B7, {GlyphKind::point}},
    {0x00B9, 0x00B9, {GlyphKind::raisedDigit, 1}},
    {0x00BA, 0x00BA, {GlyphKind::degree}},
    {0x00BC, 0x00BC, vulgar(1, 4)},
    {0x00BD, 0x00BD, vulgar(1, 2)},
    {0x00BE, 0x00BE, vulgar(3, 4)},
    {0x00D7, 0x00D7, {GlyphKind::times}},
    {0x00D8, 0x00D8, {GlyphKind::diameter}},
    {0x00F7, 0x00F7, {GlyphKind::divide}},
    {0x00F8, 0x00F8, {GlyphKind::diameter}},
    {0x02B9, 0x02B9, {GlyphKind::footMark}},
    {0x02BA, 0x02BA, {GlyphKind::inchMark}},
    {0x02DD, 0x02DD, {GlyphKind::inchMark}},
    {0x03A6, 0x03A6, {GlyphKind::diameter}},
    {0x03BC, 0x03BC, {GlyphKind::letter, 'u'}},
    {0x03C6, 0x03C6, {GlyphKind::diameter}},
    {0x03D5, 0x03D5, {GlyphKind::diameter}},
    {0x2000, 0x200A, {GlyphKind::space}},
    {0x2010, 0x2015, {GlyphKind::dash}},
    {0x2018, 0x2019, {GlyphKind::footMark}},
    {0x201B, 0x201B, {GlyphKind::footMark}},
    {0x201C, 0x201D, {GlyphKind::inchMark}},
    {0x201F, 0x201F, {GlyphKind::inchMark}},
    {0x2028, 0x2029, {GlyphKind::space}},
    {0x202F, 0x202F, {GlyphKind::space}},
    {0x2032, 0x2032, {GlyphKind::footMark}},
    {0x2033, 0x2033, {GlyphKind::inchMark}},
    {0x2044, 0x2044, {GlyphKind::slash}},
    {0x205F, 0x205F, {GlyphKind::space}},
    {0x2070, 0x2070, {GlyphKind::raisedDigit, 0}},
    {0x2074, 0x2079, {GlyphKind::raisedDigit, 4}},
    {0x2080, 0x2089, {GlyphKind::loweredDigit, 0}},
    {0x2150, 0x2150, vulgar(1, 7)},
    {0x2151, 0x2151, vulgar(1, 9)},
    {0x2152, 0x2152, vulgar(1, 10)},
    {0x2153, 0x2153, vulgar(1, 3)},
    {0x2154, 0x2154, vulgar(2, 3)},
    {0x2155, 0x2155, vulgar(1, 5)},
    {0x2156, 0x2156, vulgar(2, 5)},
    {0x2157, 0x2157, vulgar(3, 5)},
    {0x2158, 0x2158, vulgar(4, 5)},
    {0x2159, 0x2159, vulgar(1, 6)},
    {0x215A, 0x215A, vulgar(5, 6)},
    {0x215B, 0x215B, vulgar(1, 8)},
    {0x215C, 0x215C, vulgar(3, 8)},
    {0x215D, 0x215D, vulgar(5, 8)},
    {0x215E, 0x215E, vulgar(7, 8)},
    {0x215F, 0x215F, vulgar(1, 0)},
    {0x2189, 0x2189, vulgar(0, 3)},
    {0x2205, 0x2205, {GlyphKind::diameter}},
    {0x2212, 0x2212, {GlyphKind::minus}},
    {0x2215, 0x2215, {GlyphKind::slash}},
    {0x2217, 0x2217, {GlyphKind::times}},
    {0x2300, 0x2300, {GlyphKind::diameter}},
    {0x2715, 0x2716, {GlyphKind::times}},
    {0x3000, 0x3000, {GlyphKind::space}},
    {0xFE63, 0xFE63, {GlyphKind::dash}},
    {0xFF0B, 0xFF0B, {GlyphKind::plus}},
    {0xFF0D, 0xFF0D, {GlyphKind::dash}},
    {0xFF0F, 0xFF0F, {GlyphKind::slash}},
};

constexpr bool inOrder() {
  for (std::size_t i = 1; i < std::size(kRanges); ++i) {
    if (kRanges[i].first <= kRanges[i - 1].last) return false;
  }
  return true;
}
static_assert(inOrder(), "the search below needs the ranges in order");

constexpr std::array<GlyphKind, 128> asciiKinds() {
  std::array<GlyphKind, 128> kinds{};
  for (int c = '0'; c <= '9'; ++c) kinds[c] = GlyphKind::digit;
  for (int c = 'a'; c <= 'z'; ++c) kinds[c] = kinds[c - 'a' + 'A'] = GlyphKind::letter;
  for (const char c : {' ', '\t', '\n', '\r'}) kinds[c] = GlyphKind::space;
  kinds['.'] = GlyphKind::point;
  kinds[','] = GlyphKind::comma;
  kinds['/'] = GlyphKind::slash;
  kinds['+'] = GlyphKind::plus;
  kinds['-'] = GlyphKind::dash;
  kinds['*'] = GlyphKind::times;
  kinds['('] = GlyphKind::open;
  kinds[')'] = GlyphKind::close;
  kinds['"'] = GlyphKind::inchMark;
  kinds['\''] = GlyphKind::footMark;
  return kinds;
}
constexpr std::array<GlyphKind, 128> kAscii = asciiKinds();

Glyph asciiGlyph(unsigned char byte) {
  Glyph glyph{kAscii[byte], 1};
  if (glyph.kind == GlyphKind::digit) glyph.value = static_cast<std::uint8_t>(byte - '0');
  if (glyph.kind == GlyphKind::letter) {
    glyph.capital = byte <= 'Z';
    glyph.value = static_cast<std::uint8_t>(byte | 0x20);
  }
  return glyph;
}

struct Decoded {
  char32_t point = 0;
  std::uint8_t length = 1;
  bool ok = false;
};

/// Two and three byte sequences; no character of a figure needs four.
Decoded decode(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0u;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned lead = byte(0);
  if (lead >= 0xC2 && lead < 0xE0 && follows(1)) {
    return {(lead & 0x1Fu) << 6 | (byte(1) & 0x3Fu), 2, true};
  }
  if (lead >= 0xE0 && lead < 0xF0 && follows(1) && follows(2)) {
    const char32_t point = (lead & 0x0Fu) << 12 | (byte(1) & 0x3Fu) << 6 | (byte(2) & 0x3Fu);
    return {point, 3, point >= 0x800};
  }
  return {};
}

}  // namespace

Glyph glyphAt(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto lead = static_cast<unsigned char>(text[at]);
  if (lead < 0x80) return asciiGlyph(lead);
  const Decoded decoded = decode(text, at);
  if (!decoded.ok) return {GlyphKind::unknown, 1};
  const auto found =
      std::upper_bound(std::begin(kRanges), std::end(kRanges), decoded.point,
                       [](char32_t point, const Range& range) { return point < range.first; });
  if (found == std::begin(kRanges)) return {GlyphKind::unknown, decoded.length};
  const Range& range = *std::prev(found);
  if (decoded.point > range.last) return {GlyphKind::unknown, decoded.length};
  Glyph glyph{range.meaning.kind, decoded.length, range.meaning.value, range.meaning.under};
  if (glyph.kind == GlyphKind::raisedDigit || glyph.kind == GlyphKind::loweredDigit) {
    glyph.value = static_cast<std::uint8_t>(glyph.value + (decoded.point - range.first));
  }
  return glyph;
}

}  // namespace inchwright::reading
