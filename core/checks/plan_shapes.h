#pragma once

#include <array>
#include <cstdint>
#include <optional>

#include "core/measure/length.h"

namespace inchwright {

/// A rectangle seen from above, ticks along the face's two axes in the part's own directions; an
/// end that is not there lies infinitely far away.
struct Rectangle {
  std::array<std::optional<std::int64_t>, 2> low;
  std::array<std::optional<std::int64_t>, 2> high;

  bool operator==(const Rectangle&) const = default;
};

using Spot = std::array<std::int64_t, 2>;

/// How far a spot lies from a rectangle, to the nearest tick (exact where it lies beside one side);
/// inside below 0: as far as it is to the nearest side. Requires: some end is there, and |ticks|
/// are below 2^61. Of a jaw from 0 to 1 in: 1/4 in for a spot 1 1/4 in along, −1/4 in for one at
/// 3/4 in.
std::int64_t distanceTo(const Rectangle& rectangle, const Spot& spot);

/// The straight distance of two spots, to the nearest tick; exact along an axis.
std::int64_t distanceBetween(const Spot& a, const Spot& b);

/// The rectangle about which a cut of this length along an axis has to keep as far away as its
/// beginning has to from this one: a slot is then looked at as a hole.
Rectangle grownBack(const Rectangle& rectangle, std::size_t axis, std::int64_t length);

}  // namespace inchwright
