#include "core/sheet/text_measure.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "core/sheet/font_tables.h"

namespace inchwright {
namespace {

constexpr double kUnknownAdvance = 3000;
constexpr std::uint32_t kStray = 0xFFFFFFFF;

unsigned byteAt(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

/// The code point of the character of `length` bytes at `at`; `kStray` for a byte that begins none.
std::uint32_t codePoint(std::string_view text, std::size_t at, std::size_t length) {
  const unsigned lead = byteAt(text, at);
  if (length == 1) return lead < 0x80 ? lead : kStray;
  std::uint32_t code = lead & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) code = code << 6 | (byteAt(text, at + i) & 0x3FU);
  return code;
}

double lookedUpAdvance(std::uint32_t code, Typeface face) {
  const auto runs = advancesOf(face);
  const auto after = std::upper_bound(
      runs.begin(), runs.end(), code,
      [](std::uint32_t value, const AdvanceRun& run) { return value < run.first; });
  if (after == runs.begin()) return kUnknownAdvance;
  const AdvanceRun& run = *(after - 1);
  return code <= run.last ? run.advance : kUnknownAdvance;
}

/// Of the letters and figures that nearly all texts are made of, kept at hand.
struct CommonAdvances {
  static constexpr std::uint32_t kCount = 256;
  std::array<double, kCount> advance;

  explicit CommonAdvances(Typeface face) {
    for (std::uint32_t code = 0; code < kCount; ++code) advance[code] = lookedUpAdvance(code, face);
  }
};

double advanceOf(std::uint32_t code, Typeface face) {
  static const std::array<CommonAdvances, 4> kCommon{
      CommonAdvances(Typeface::regular), CommonAdvances(Typeface::bold),
      CommonAdvances(Typeface::mono), CommonAdvances(Typeface::monoBold)};
  if (code >= CommonAdvances::kCount) return lookedUpAdvance(code, face);
  return kCommon[static_cast<std::size_t>(face)].advance[code];
}

/// Splits one word that is wider than `width` by itself; the last piece may still grow.
void breakWord(std::string_view word, double height, double width, Typeface face,
               std::vector<std::string>& lines) {
  std::string line;
  for (std::size_t at = 0; at < word.size();) {
    const std::size_t length = characterLength(word, at);
    const std::string_view character = word.substr(at, length);
    if (!line.empty() &&
        textWidth(line, height, face) + textWidth(character, height, face) > width) {
      lines.push_back(line);
      line.clear();
    }
    line += character;
    at += length;
  }
  lines.push_back(line);
}

}  // namespace

std::size_t characterLength(std::string_view text, std::size_t at) {
  const unsigned lead = byteAt(text, at);
  const std::size_t length = lead < 0xC2   ? 1
                             : lead < 0xE0 ? 2
                             : lead < 0xF0 ? 3
                             : lead < 0xF5 ? 4
                                           : 1;
  if (at + length > text.size()) return 1;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byteAt(text, at + i) & 0xC0U) != 0x80U) return 1;
  }
  return length;
}

double textWidth(std::string_view text, double height, Typeface face) {
  double units = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = characterLength(text, at);
    units += advanceOf(codePoint(text, at, length), face);
    at += length;
  }
  return units / kFigureHeight * height;
}

std::vector<std::string> wrapText(std::string_view text, double height, double width,
                                  Typeface face) {
  std::vector<std::string> lines;
  bool fresh = true;  // the next word begins a line
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = text.find_first_not_of(' ', at);
    if (start == std::string_view::npos) break;
    const std::size_t end = std::min(text.find(' ', start), text.size());
    const std::string_view word = text.substr(start, end - start);
    at = end;
    if (!fresh) {
      const std::string longer = lines.back() + ' ' + std::string(word);
      if (textWidth(longer, height, face) <= width) {
        lines.back() = longer;
        continue;
      }
    }
    breakWord(word, height, width, face, lines);
    fresh = false;
  }
  return lines;
}

}  // namespace inchwright
