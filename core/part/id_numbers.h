#pragma once

#include <bit>
#include <cstdint>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "core/part/id.h"

namespace inchwright {

/// The first eight bytes of an id as a number that orders like them: `A` comes before `B`, and `A`
/// before `A1`.
constexpr std::uint64_t firstBytes(std::string_view id) {
  std::uint64_t bytes = 0;
  const std::size_t count = id.size() < sizeof bytes ? id.size() : sizeof bytes;
  for (std::size_t i = 0; i < count; ++i) bytes = bytes << 8 | static_cast<unsigned char>(id[i]);
  return count == 0 ? 0 : bytes << 8 * (sizeof bytes - count);
}

/// Finds the number of an id in a list of ids, all different, in constant time: `L`, `A`, `B` are
/// 0, 1 and 2. Holds numbers and first bytes only: the list, of `Id` or views of them, is handed in
/// again, unchanged, wherever it lies by then, and is looked at for ids of more than eight bytes.
class IdNumbers {
 public:
  IdNumbers() = default;
  template <class Text>
  explicit IdNumbers(const std::vector<Text>& ids) {
    std::size_t count = 4;
    while (count < 2 * ids.size()) count *= 2;
    slots_.resize(count);
    for (std::uint32_t i = 0; i < ids.size(); ++i) {
      const Slot one = slotFor(ids[i], i);
      slots_[placeOf(ids, ids[i], one)] = one;
    }
  }

  template <class Text>
  std::optional<std::uint32_t> find(const std::vector<Text>& ids, std::string_view id) const {
    if (slots_.empty()) return std::nullopt;
    const std::uint32_t number = slots_[placeOf(ids, id, slotFor(id, kFree))].number;
    return number == kFree ? std::nullopt : std::optional(number);
  }

 private:
  static constexpr std::uint32_t kFree = 0xffffffff;

  struct Slot {
    std::uint64_t first = 0;
    std::uint32_t length = 0;
    std::uint32_t number = kFree;
  };

  static Slot slotFor(std::string_view id, std::uint32_t number) {
    return {firstBytes(id), static_cast<std::uint32_t>(id.size()), number};
  }

  // Where an id stands, or would.
  template <class Text>
  std::size_t placeOf(const std::vector<Text>& ids, std::string_view id, const Slot& one) const {
    const bool isShort = id.size() <= sizeof one.first;
    const auto isOther = [&](const Slot& slot) {
      if (slot.first != one.first || slot.length != one.length) return true;
      return !isShort && ids[slot.number] != id;
    };
    // The highest bits of a product depend on all of its factor (Knuth, Sorting and Searching,
    // 6.4): as many of them as number the slots.
    constexpr std::uint64_t kGolden = 0x9e3779b97f4a7c15;
    const std::size_t last = slots_.size() - 1;
    std::size_t place = isShort ? (one.first * kGolden) >> std::countl_zero(last)
                                : std::hash<std::string_view>()(id) & last;
    while (slots_[place].number != kFree && isOther(slots_[place])) place = (place + 1) & last;
    return place;
  }

  std::vector<Slot> slots_;
};

}  // namespace inchwright
