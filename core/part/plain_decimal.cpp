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
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [stopped, fault] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (fault != std::errc() || stopped != end) return std::nullopt;
  return value;
}

}  // namespace inchwright
