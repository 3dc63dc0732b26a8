#include "app/base/sheet_date.h"

#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <ctime>
#include <string_view>

namespace inchwright::app {
namespace {

/// The moment SOURCE_DATE_EPOCH names; false when it is unset or no whole number of seconds.
bool fixedMoment(std::time_t& moment) {
  const char* const text = std::getenv("SOURCE_DATE_EPOCH");
  if (text == nullptr) return false;
  const std::string_view digits(text);
  std::int64_t seconds = 0;
  const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), seconds);
  if (fault != std::errc() || end != digits.data() + digits.size()) return false;
  moment = static_cast<std::time_t>(seconds);
  return true;
}

}  // namespace

std::string sheetDate() {
  std::time_t moment = 0;
  const bool fixed = fixedMoment(moment);
  if (!fixed) moment = std::time(nullptr);
  const std::tm* const day = fixed ? std::gmtime(&moment) : std::localtime(&moment);
  if (day == nullptr) return {};
  char text[32];
  return std::string(text, std::strftime(text, sizeof text, "%Y-%m-%d", day));
}

}  // namespace inchwright::app
