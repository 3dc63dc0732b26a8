#pragma once

namespace inchwright {

/// Whether a byte is one of the digits 0 to 9, whatever the locale.
constexpr bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace inchwright
