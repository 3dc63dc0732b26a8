#include "core/part/setup.h"

namespace inchwright {

const ZeroAlong* Setup::zeroAlong(Axis axis) const {
  for (const ZeroAlong& one : zero) {
    if (one.axis == axis) return &one;
  }
  return nullptr;
}

Length Setup::stockOn(Side side) const {
  const auto& allowance = stock[static_cast<std::size_t>(side)];
  return allowance ? allowance->value : Length();
}

}  // namespace inchwright
