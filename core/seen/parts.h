#pragma once

#include <cstdint>
#include <vector>

#include "core/seen/plane.h"

namespace inchwright::seen {

/// Ink that hangs together, corner to corner as well.
struct Part {
  Box box;
  int area = 0;  ///< pixels
};

/// The parts of a cover and which pixel belongs to which: its index, or -1.
struct Parts {
  std::vector<Part> list;
  Plane<std::int32_t> of;
};

/// What is covered by more than `above`, in the order of the topmost leftmost pixel.
Parts partsOf(const Grey& cover, std::uint8_t above, const Stop& stop = Stop());

}  // namespace inchwright::seen
