#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace inchwright {

/// Nodes that wait in a search, to be taken by the least key. In most prints fewer than ten wait at
/// a time: those lie in no order and are looked through without a branch that could be guessed
/// wrong, and only when they become too many do they go into a heap.
class ReachQueue {
 public:
  struct Entry {
    std::int64_t key = INT64_MAX;
    std::uint32_t node = 0;
    bool operator>(const Entry& other) const { return key > other.key; }
  };

  ReachQueue() { keys_.fill(INT64_MAX); }

  bool isEmpty() const { return count_ == 0 && heap_.empty(); }

  void push(const Entry& entry) {
    if (count_ == kFew) moveToHeap();
    keys_[count_] = entry.key;
    nodes_[count_] = entry.node;
    ++count_;
  }

  /// Requires: it is not empty.
  Entry pop() {
    // Two at a time, so that neither comparison waits for the other.
    std::array<std::int64_t, 2> key{keys_[0], keys_[1]};
    std::array<std::uint32_t, 2> at{0, 1};
    for (std::uint32_t start = 0; start < count_; start += kStride) {
      for (std::uint32_t i = start; i < start + kStride; i += 2) {
        for (std::uint32_t half = 0; half < 2; ++half) {
          const bool isLess = keys_[i + half] < key[half];
          key[half] = isLess ? keys_[i + half] : key[half];
          at[half] = isLess ? i + half : at[half];
        }
      }
    }
    const std::uint32_t least = key[1] < key[0] ? at[1] : at[0];
    const Entry entry{keys_[least], nodes_[least]};
    if (!heap_.empty() && heap_.front().key < entry.key) return popFromHeap();
    --count_;
    keys_[least] = keys_[count_];
    nodes_[least] = nodes_[count_];
    keys_[count_] = INT64_MAX;
    return entry;
  }

 private:
  static constexpr std::uint32_t kStride = 4;
  static constexpr std::uint32_t kFew = 64;

  void moveToHeap() {
    for (std::uint32_t i = 0; i < count_; ++i) {
      heap_.push_back({keys_[i], nodes_[i]});
      std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
      keys_[i] = INT64_MAX;
    }
    count_ = 0;
  }

  Entry popFromHeap() {
    std::pop_heap(heap_.begin(), heap_.end(), std::greater<>());
    const Entry entry = heap_.back();
    heap_.pop_back();
    return entry;
  }

  std::array<std::int64_t, kFew + kStride> keys_;  ///< INT64_MAX from `count_` on
  std::array<std::uint32_t, kFew + kStride> nodes_ = {};
  std::uint32_t count_ = 0;
  std::vector<Entry> heap_;
};

}  // namespace inchwright
