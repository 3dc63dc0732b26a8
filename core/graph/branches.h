#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/graph/forest.h"

namespace inchwright {

/// The links of a forest by node, to walk its trees from anywhere: of the links 0→1, 1→2 and 0→2
/// node 1 has the first two, and from 2 the walk goes 2, 1, 0. Linear to make.
class Branches {
 public:
  /// A tree link at a node, and the node at its other end.
  struct Branch {
    std::uint32_t link = 0;
    std::uint32_t node = 0;

    bool operator==(const Branch&) const = default;
  };

  explicit Branches(const Forest& forest) : firstAt_(forest.nodeCount() + 1) {
    const std::span<const Link> links = forest.links();
    for (std::uint32_t node = 0; node < forest.nodeCount(); ++node) {
      if (forest.linkAbove(node) == kNone) continue;
      ++firstAt_[node];
      ++firstAt_[forest.parent(node)];
    }
    std::uint32_t end = 0;
    for (std::uint32_t& first : firstAt_) first = end += first;
    branches_.resize(end);
    for (auto link = static_cast<std::uint32_t>(links.size()); link-- > 0;) {
      if (!forest.holds(link)) continue;
      branches_[--firstAt_[links[link].from]] = {link, links[link].to};
      branches_[--firstAt_[links[link].to]] = {link, links[link].from};
    }
  }

  /// In the order of the links.
  std::span<const Branch> at(std::uint32_t node) const {
    return std::span(branches_).subspan(firstAt_[node], firstAt_[node + 1] - firstAt_[node]);
  }

  /// Visits `start` and every node joined to it, nearer ones first: visit(node, from, link), with
  /// kNone twice at the start.
  template <class Visit>
  void walkFrom(std::uint32_t start, Visit visit) const {
    struct Stop {
      std::uint32_t node, from, link;
    };
    std::vector<Stop> queue{{start, kNone, kNone}};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      const Stop step = queue[i];
      visit(step.node, step.from, step.link);
      for (const auto& [link, node] : at(step.node)) {
        if (link != step.link) queue.push_back({node, step.node, link});
      }
    }
  }

 private:
  std::vector<std::uint32_t> firstAt_;  ///< into branches_, one more than there are nodes
  std::vector<Branch> branches_;
};

}  // namespace inchwright
