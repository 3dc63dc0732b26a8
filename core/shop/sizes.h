#pragma once

#include <cstdint>

#include "core/measure/length.h"

namespace inchwright {

// Exact sizes for the tables, in the figures the tables are printed in: `sixtyFourths(76)` is
// 1 3/16 in.

constexpr Length sixtyFourths(std::int64_t count) {
  return Length::ticks(count * (Length::kTicksPerInch / 64));
}
constexpr Length tenThousandths(std::int64_t count) {
  return Length::ticks(count * (Length::kTicksPerInch / 10'000));
}
constexpr Length microns(std::int64_t count) {
  return Length::ticks(count * (Length::kTicksPerMillimetre / 1000));
}

}  // namespace inchwright
