#pragma once

#include <algorithm>
#include <numeric>
#include <vector>

namespace inchwright::seen {

/// Disjoint sets of 0 … count - 1; the least of a set stands for it.
class Sets {
 public:
  explicit Sets(int count) : root_(static_cast<std::size_t>(count)) {
    std::iota(root_.begin(), root_.end(), 0);
  }
  int of(int i) {
    while (root_[i] != i) i = root_[i] = root_[root_[i]];
    return i;
  }
  void join(int a, int b) {
    a = of(a);
    b = of(b);
    root_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<int> root_;
};

}  // namespace inchwright::seen
