#pragma once

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <utility>
#include <vector>

namespace inchwright {

/// Disjoint sets of numbers below a count, by union-find; the lowest of a set stands for it. Of
/// five, after 3 with 1 and 4 with 3: 1, 3 and 4 are found as 1.
class Sets {
 public:
  explicit Sets(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), 0u);
  }

  bool isLowest(std::uint32_t one) const { return parent_[one] == one; }

  std::uint32_t find(std::uint32_t one) {
    while (parent_[one] != one) one = parent_[one] = parent_[parent_[one]];
    return one;
  }

  /// Joins the sets of both; false when they are one already. Quicker than finding both: it climbs
  /// on the side that stands higher, and shortens the way (M. Rem's, in E. W. Dijkstra, A
  /// Discipline of Programming, 1976).
  bool join(std::uint32_t a, std::uint32_t b) {
    while (parent_[a] != parent_[b]) {
      if (parent_[a] < parent_[b]) std::swap(a, b);
      const std::uint32_t above = std::exchange(parent_[a], parent_[b]);
      if (above == a) return true;
      a = above;
    }
    return false;
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
