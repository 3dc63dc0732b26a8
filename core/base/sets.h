#pragma once

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <vector>

namespace inchwright {

/// Disjoint sets of numbers below a count, by union-find; the lowest of a set stands for it. Of
/// five, after 3 with 1 and 4 with 3: 1, 3 and 4 are found as 1.
class Sets {
 public:
  explicit Sets(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), 0u);
  }

  std::uint32_t find(std::uint32_t one) {
    while (parent_[one] != one) one = parent_[one] = parent_[parent_[one]];
    return one;
  }

  /// Joins the sets of both; yields what stands for the joint one.
  std::uint32_t unite(std::uint32_t a, std::uint32_t b) {
    a = find(a);
    b = find(b);
    const std::uint32_t root = std::min(a, b);
    parent_[a] = root;
    parent_[b] = root;
    return root;
  }

 private:
  std::vector<std::uint32_t> parent_;
};

}  // namespace inchwright
