#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace inchwright {

/// The edges of a graph by node, each in the order of its number: of the edges 0–1, 1–2 and 0–2
/// node 1 has 0 and 1. An edge from a node to itself stands there once. Linear.
class EdgesAt {
 public:
  /// `ends(number)` is a pair of nodes, each below `nodeCount`.
  template <class Ends>
  EdgesAt(std::uint32_t nodeCount, std::size_t edgeCount, Ends ends) : first_(nodeCount + 1) {
    const auto each = [&](auto visit) {
      for (std::uint32_t edge = 0; edge < edgeCount; ++edge) {
        const std::pair<std::uint32_t, std::uint32_t> at = ends(edge);
        visit(at.first, edge);
        if (at.second != at.first) visit(at.second, edge);
      }
    };
    each([&](std::uint32_t node, std::uint32_t) { ++first_[node + 1]; });
    for (std::uint32_t node = 0; node < nodeCount; ++node) first_[node + 1] += first_[node];
    edges_.resize(first_.back());
    std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
    each([&](std::uint32_t node, std::uint32_t edge) { edges_[next[node]++] = edge; });
  }

  std::span<const std::uint32_t> operator[](std::uint32_t node) const {
    return {edges_.data() + first_[node], first_[node + 1] - first_[node]};
  }

 private:
  std::vector<std::uint32_t> first_;
  std::vector<std::uint32_t> edges_;
};

}  // namespace inchwright
