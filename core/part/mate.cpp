#include "core/part/mate.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<kWaysOut> kWayNames{"shaft",     "bush",  "plug",        "eccentric_bush",
                                        "next_size", "leave", "open_to_size"};

}  // namespace

std::string_view nameOf(WayOut way) {
  return nameIn(kWayNames, way);
}

std::optional<WayOut> wayOutNamed(std::string_view name) {
  return valueNamed<WayOut>(kWayNames, name);
}

}  // namespace inchwright
