#pragma once

#include <cstdint>

namespace inchwright {

/// low ≤ position(b) − position(a) ≤ high, in ticks: 1 3/16 ±1/64 from 0 to 1 is
/// {0, 1, 2976562500, 3055937500}.
struct DifferenceEdge {
  std::uint32_t a = 0;
  std::uint32_t b = 0;
  std::int64_t low = 0;
  std::int64_t high = 0;

  bool operator==(const DifferenceEdge&) const = default;
};

}  // namespace inchwright
