#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

inline constexpr std::uint32_t kNone = 0xffffffff;

/// A closed walk over links: each with +1 where it is walked from `from` to `to`, else −1.
using Loop = std::vector<std::pair<std::uint32_t, int>>;

/// Disjoint sets of numbers, by union-find.
class Sets {
 public:
  explicit Sets(std::size_t count);
  /// The lowest member of the set.
  std::uint32_t find(std::uint32_t one);
  /// Joins the sets of both; yields the joint one, named by its lowest member.
  std::uint32_t unite(std::uint32_t a, std::uint32_t b);

 private:
  std::vector<std::uint32_t> parent_;
};

/// The links that settle positions: of those in order, each that joins what earlier ones did not.
/// They form a forest, rooted at the lowest node of each tree. Linear in nodes and links.
class Skeleton {
 public:
  Skeleton(std::uint32_t nodeCount, std::span<const AxisLink> links);

  bool holds(std::uint32_t link) const { return inTree_[link]; }
  std::uint32_t parent(std::uint32_t node) const { return parent_[node]; }
  std::uint32_t depth(std::uint32_t node) const { return depth_[node]; }
  /// The link that joins a node to its parent; kNone at a root.
  std::uint32_t linkAbove(std::uint32_t node) const { return linkAbove_[node]; }
  /// +1 when that link runs from the parent to the node, else −1.
  int signAbove(std::uint32_t node) const;
  /// Tree links at a node.
  std::span<const std::uint32_t> linksAt(std::uint32_t node) const;
  std::uint32_t otherEnd(std::uint32_t link, std::uint32_t node) const;

  /// The loop that a link outside the forest closes over it, beginning with that link.
  Loop loopOver(std::uint32_t spare) const;

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
      for (const std::uint32_t link : linksAt(step.node)) {
        if (link != step.link) queue.push_back({otherEnd(link, step.node), step.node, link});
      }
    }
  }

 private:
  std::span<const AxisLink> links_;
  std::vector<bool> inTree_;
  std::vector<std::uint32_t> firstAt_;  ///< into incident_, one more than there are nodes
  std::vector<std::uint32_t> incident_;
  std::vector<std::uint32_t> parent_;
  std::vector<std::uint32_t> depth_;
  std::vector<std::uint32_t> linkAbove_;
};

}  // namespace inchwright
