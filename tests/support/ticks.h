#pragma once

#include "core/measure/length.h"

namespace inchwright::test {

/// In ticks, for figures written out by hand.
inline constexpr std::int64_t kInch = Length::kTicksPerInch;
inline constexpr std::int64_t kThou = kInch / 1000;

}  // namespace inchwright::test
