#include "core/part/lathe.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<2> kCarriageNames{"left", "right"};
constexpr NameTable<2> kCrossNames{"diameter", "radius"};
constexpr NameTable<2> kCornerNames{"left", "right"};

}  // namespace

Length customaryRoughLeaves(Unit unit) {
  return Length::ticks(unit == Unit::inch ? Length::kTicksPerInch / 50
                                          : Length::kTicksPerMillimetre / 2);
}

std::string_view nameOf(CarriageCounts counts) {
  return nameIn(kCarriageNames, counts);
}

std::string_view nameOf(CrossCounts counts) {
  return nameIn(kCrossNames, counts);
}

std::string_view nameOf(ToolCorner corner) {
  return nameIn(kCornerNames, corner);
}

std::optional<CarriageCounts> carriageCountsNamed(std::string_view name) {
  return valueNamed<CarriageCounts>(kCarriageNames, name);
}

std::optional<CrossCounts> crossCountsNamed(std::string_view name) {
  return valueNamed<CrossCounts>(kCrossNames, name);
}

std::optional<ToolCorner> toolCornerNamed(std::string_view name) {
  return valueNamed<ToolCorner>(kCornerNames, name);
}

}  // namespace inchwright
