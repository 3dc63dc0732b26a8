#pragma once

#include <algorithm>
#include <string_view>

namespace inchwright {

/// Whether a text has no byte beyond ASCII, as most names have none: `A1`, not `Å1`.
inline bool isAscii(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) { return (c & 0x80) != 0; });
}

/// Whether a byte is one of the digits 0 to 9, whatever the locale.
constexpr bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// The capital of one of the letters a to z; any other byte as it is: `a` → `A`, `1` → `1`.
constexpr char upperAscii(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

}  // namespace inchwright
