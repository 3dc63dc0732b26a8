#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "core/part/id.h"

namespace inchwright {

/// Finds the number of an id in a list of ids, all different, in constant time: `L`, `A`, `B` are
/// 0, 1 and 2. Holds numbers only: the list, of `Id` or views of them, is handed in again,
/// unchanged, wherever it lies by then.
class IdNumbers {
 public:
  IdNumbers() = default;
  template <class Text>
  explicit IdNumbers(const std::vector<Text>& ids) {
    std::size_t count = 4;
    while (count < 2 * ids.size()) count *= 2;
    slots_.assign(count, kFree);
    for (std::uint32_t i = 0; i < ids.size(); ++i) slots_[slotOf(ids, ids[i])] = i;
  }

  template <class Text>
  std::optional<std::uint32_t> find(const std::vector<Text>& ids, std::string_view id) const {
    if (slots_.empty()) return std::nullopt;
    const std::uint32_t number = slots_[slotOf(ids, id)];
    return number == kFree ? std::nullopt : std::optional(number);
  }

 private:
  static constexpr std::uint32_t kFree = 0xffffffff;

  // Where an id stands, or would.
  template <class Text>
  std::size_t slotOf(const std::vector<Text>& ids, std::string_view id) const {
    const std::size_t last = slots_.size() - 1;
    std::size_t slot = std::hash<std::string_view>()(id) & last;
    while (slots_[slot] != kFree && ids[slots_[slot]] != id) slot = (slot + 1) & last;
    return slot;
  }

  std::vector<std::uint32_t> slots_;
};

}  // namespace inchwright
