#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// The most places a part may have; beyond it `checkPart` refuses with `tooLarge`.
inline constexpr std::size_t kMostPlaces = 2'000'000;

/// The axes along which a place has a position, as a set.
class AxisSet {
 public:
  constexpr AxisSet() = default;
  constexpr void add(Axis axis) { bits_ = static_cast<std::uint8_t>(bits_ | bit(axis)); }
  constexpr bool has(Axis axis) const { return (bits_ & bit(axis)) != 0; }
  /// How many axes both have.
  constexpr int shared(AxisSet other) const {
    int count = 0;
    for (Axis axis : kAxes) count += has(axis) && other.has(axis) ? 1 : 0;
    return count;
  }

 private:
  static constexpr std::uint8_t bit(Axis axis) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(axis));
  }
  std::uint8_t bits_ = 0;
};

/// Every id that readings, understandings and setups may name, looked up in constant time.
///
/// Holds pointers into the part it was made from: that has to outlive it, unchanged.
class PlaceIndex {
 public:
  struct Entry {
    const Feature* feature = nullptr;
    AxisSet axes;           ///< empty for a line or an arc
    bool isFeature = true;  ///< else one hole of a ring or row, or the end of a slot
  };

  /// Errors: `badDocument` for an id that is empty, malformed or there twice, `tooLarge`; the
  /// place is a JSON pointer relative to the part.
  static Result<PlaceIndex> of(const Part& part);

  /// Null when nothing bears the id.
  const Entry* find(const Id& id) const;

 private:
  std::unordered_map<Id, Entry> entries_;
};

/// Whether an id can be lettered, typed and found again: 1 to 64 bytes, no control characters, no
/// blank at either end.
bool isSoundId(std::string_view id);

}  // namespace inchwright
