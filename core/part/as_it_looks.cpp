#include "core/part/as_it_looks.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "core/base/ascii.h"

namespace inchwright {
namespace {

/// One character of a text: its code point, and how many bytes it takes. A byte that begins none
/// stands for itself above all code points.
struct Character {
  std::uint32_t code = 0;
  std::size_t length = 1;
};

constexpr std::uint32_t kStrayByte = 0x110000;

Character characterAt(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const std::uint32_t first = byte(at);
  if (first < 0x80) return {first, 1};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC0 || at + length > text.size()) return {kStrayByte + first, 1};
  std::uint32_t code = first & (0x7Fu >> length);
  for (std::size_t i = at + 1; i < at + length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return {kStrayByte + first, 1};
    code = code << 6 | (byte(i) & 0x3Fu);
  }
  return {code, length};
}

bool isUnseen(std::uint32_t code) {
  struct Run {
    std::uint32_t first, last;
  };
  constexpr Run kUnseen[] = {
      {0xA0, 0xA0},     {0xAD, 0xAD},     {0x34F, 0x34F},   {0x115F, 0x1160},
      {0x1680, 0x1680}, {0x180B, 0x180E}, {0x2000, 0x200F}, {0x2028, 0x202F},
      {0x205F, 0x206F}, {0x2800, 0x2800}, {0x3000, 0x3000}, {0x3164, 0x3164},
      {0xFE00, 0xFE0F}, {0xFEFF, 0xFEFF}, {0xFFA0, 0xFFA0}, {0xE0000, 0xE0FFF}};
  return std::any_of(std::begin(kUnseen), std::end(kUnseen),
                     [&](const Run& run) { return code >= run.first && code <= run.last; });
}

/// The plain letter or figure that a character looks like; 0 where it looks like none.
char latinLike(std::uint32_t code) {
  // Of the alphabets of mathematics (U+1D400 on) each has 26 capitals, then 26 small letters; the
  // figures (U+1D7CE on) come by tens.
  if (code >= 0xFF01 && code <= 0xFF5E) return static_cast<char>(code - 0xFF01 + '!');
  if (code >= 0x1D7CE && code <= 0x1D7FF) return static_cast<char>('0' + (code - 0x1D7CE) % 10);
  if (code >= 0x1D400 && code <= 0x1D6A3) {
    const std::uint32_t letter = (code - 0x1D400) % 52;
    return static_cast<char>(letter < 26 ? 'A' + letter : 'a' + letter - 26);
  }
  struct Alike {
    char32_t other;
    char latin;
  };
  constexpr Alike kAlike[] = {
      {U'А', 'A'}, {U'В', 'B'}, {U'С', 'C'}, {U'Е', 'E'}, {U'Н', 'H'}, {U'К', 'K'}, {U'М', 'M'},
      {U'О', 'O'}, {U'Р', 'P'}, {U'Т', 'T'}, {U'Х', 'X'}, {U'Ѕ', 'S'}, {U'І', 'I'}, {U'Ј', 'J'},
      {U'а', 'a'}, {U'с', 'c'}, {U'е', 'e'}, {U'о', 'o'}, {U'р', 'p'}, {U'у', 'y'}, {U'х', 'x'},
      {U'ѕ', 's'}, {U'і', 'i'}, {U'ј', 'j'}, {U'Α', 'A'}, {U'Β', 'B'}, {U'Ε', 'E'}, {U'Ζ', 'Z'},
      {U'Η', 'H'}, {U'Ι', 'I'}, {U'Κ', 'K'}, {U'Μ', 'M'}, {U'Ν', 'N'}, {U'Ο', 'O'}, {U'Ρ', 'P'},
      {U'Τ', 'T'}, {U'Υ', 'Y'}, {U'Χ', 'X'}, {U'ο', 'o'}, {U'ν', 'v'}, {U'ℓ', 'l'}};
  const auto* alike = std::find_if(std::begin(kAlike), std::end(kAlike), [&](const Alike& one) {
    return static_cast<std::uint32_t>(one.other) == code;
  });
  return alike == std::end(kAlike) ? '\0' : alike->latin;
}

}  // namespace

bool holdsUnseen(std::string_view name) {
  if (isAscii(name)) return false;
  for (std::size_t i = 0; i < name.size();) {
    const Character one = characterAt(name, i);
    if (isUnseen(one.code)) return true;
    i += one.length;
  }
  return false;
}

std::string asItLooks(std::string_view name) {
  std::string plain;
  for (std::size_t i = 0; i < name.size();) {
    const Character one = characterAt(name, i);
    if (const char latin = latinLike(one.code)) {
      plain += latin;
    } else if (!isUnseen(one.code)) {
      plain += name.substr(i, one.length);
    }
    i += one.length;
  }
  const auto from = plain.find_first_not_of(' ');
  if (from == std::string::npos) return "";
  return plain.substr(from, plain.find_last_not_of(' ') - from + 1);
}

}  // namespace inchwright
