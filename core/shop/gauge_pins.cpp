#include "core/shop/gauge_pins.h"

#include <algorithm>
#include <array>
#include <string>

namespace inchwright {
namespace {

constexpr std::array<std::string_view, 5> kClasses{"XX", "X", "Y", "Z", "ZZ"};

struct PinRow {
  std::int64_t upTo;  ///< thousandths of an inch, this one included
  std::array<std::int64_t, 5> millionths;
};

constexpr std::array<PinRow, 4> kPinRows{{
    {825, {20, 40, 70, 100, 200}},
    {1510, {30, 60, 90, 120, 240}},
    {2510, {40, 80, 120, 160, 320}},
    {4510, {50, 100, 150, 200, 400}},
}};

bool alike(std::string_view name, std::string_view written) {
  return std::equal(name.begin(), name.end(), written.begin(), written.end(),
                    [](char a, char b) { return a == b || a + ('a' - 'A') == b; });
}

}  // namespace

Result<Length> gaugePinTolerance(std::string_view pinClass, Length size) {
  std::size_t column = 0;
  while (column < kClasses.size() && !alike(kClasses[column], pinClass)) ++column;
  if (column == kClasses.size()) {
    return Error{ErrorCode::badText,
                 "“" + std::string(pinClass) + "” is no class of gauge pins: XX, X, Y, Z or ZZ"};
  }
  for (const PinRow& row : kPinRows) {
    if (size.ticks() <= 0 || size.ticks() > row.upTo * (Length::kTicksPerInch / 1000)) continue;
    return Length::ticks(row.millionths[column] * (Length::kTicksPerInch / 1'000'000));
  }
  return Error{ErrorCode::notFound, "classes of gauge pins are known for sizes up to 4.510 in"};
}

}  // namespace inchwright
