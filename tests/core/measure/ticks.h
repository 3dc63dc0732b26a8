#pragma once

#include <cstdint>

#include "core/measure/length.h"

namespace inchwright {

// Ticks by hand, apart from the code under test: 1 in = 2 540 000 000 ticks (25.4 mm exactly,
// Federal Register, 1 July 1959), so 1/64 in, 0.0001 in and 0.001 mm are whole numbers of them.
constexpr std::int64_t in64(std::int64_t count) {
  return count * 39'687'500;
}
constexpr std::int64_t in128(std::int64_t count) {
  return count * 19'843'750;
}
constexpr std::int64_t tenths(std::int64_t tenThousandths) {
  return tenThousandths * 254'000;
}
constexpr std::int64_t microns(std::int64_t count) {
  return count * 100'000;
}

}  // namespace inchwright
