#include "core/part/made.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<2> kPinSignNames{"plus", "minus"};

}  // namespace

std::string_view nameOf(PinSign sign) {
  return nameIn(kPinSignNames, sign);
}

std::optional<PinSign> pinSignNamed(std::string_view name) {
  return valueNamed<PinSign>(kPinSignNames, name);
}

}  // namespace inchwright
