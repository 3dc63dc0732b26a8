#include "core/part/plain_decimal.h"

#include <charconv>
#include <cstddef>

#include "core/base/ascii.h"

namespace inchwright {
namespace {

constexpr std::size_t kLongest = 40;

}  // namespace

std::optional<double> plainDecimal(std::string_view text) {
  if (text.size() > kLongest) return std::nullopt;
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  bool point = false;
  bool digits = false;
  for (std::size_t i = start; i < text.size(); ++i) {
    if (isDigit(text[i])) {
      digits = true;
    } else if (text[i] == '.' && !point) {
      point = true;
    } else {
      return std::nullopt;
    }
  }
  if (!digits) return std::nullopt;
  // So many digits at most are always read, and to their end.
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  return value;
}

}  // namespace inchwright
