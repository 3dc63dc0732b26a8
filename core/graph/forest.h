#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/base/sets.h"

namespace inchwright {

inline constexpr std::uint32_t kNone = 0xffffffff;

/// position(to) − position(from) = ticks, between two numbered nodes.
struct Link {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::int64_t ticks = 0;

  bool operator==(const Link&) const = default;
};

/// A closed walk over links: each with +1 where it is walked from `from` to `to`, else −1.
using Loop = std::vector<std::pair<std::uint32_t, int>>;

/// The links that settle positions: of those in order, each that joins what earlier ones did not.
/// They form trees, each rooted at its lowest node, where the position is 0. The others are spare:
/// each closes a loop, and `missOf` says by how much.
///
/// Links 0→1 of 3, 1→2 of 4, 0→2 of 8: nodes 0 to 2 at 0, 3, 7; the third link is spare and misses
/// by 1. Exact; all but linear in nodes and links.
class Forest {
 public:
  Forest() = default;
  /// Errors: `outOfRange` when a position leaves 64 bits, `badRequest` when a link names a node at
  /// or above `nodeCount`.
  static Result<Forest> of(std::uint32_t nodeCount, std::vector<Link> links);

  std::uint32_t nodeCount() const { return static_cast<std::uint32_t>(nodes_.size()); }
  std::span<const Link> links() const { return links_; }
  bool holds(std::uint32_t link) const {
    return linkAbove(links_[link].from) == link || linkAbove(links_[link].to) == link;
  }
  /// The lowest node of the tree that a node is in.
  std::uint32_t root(std::uint32_t node) const { return nodes_[node].root; }
  /// In ticks from the root.
  std::int64_t position(std::uint32_t node) const { return nodes_[node].position; }
  /// What a link says less what the forest makes of its ends: 0 for those it holds.
  Int128 missOf(std::uint32_t link) const;

  std::uint32_t parent(std::uint32_t node) const { return nodes_[node].parent; }
  std::uint32_t depth(std::uint32_t node) const { return nodes_[node].depth; }
  /// The link that joins a node to its parent; kNone at a root.
  std::uint32_t linkAbove(std::uint32_t node) const { return nodes_[node].linkAbove; }
  /// +1 when that link runs from the parent to the node, else −1.
  int signAbove(std::uint32_t node) const;

  /// The loop that a spare link closes over the forest, beginning with that link.
  Loop loopOver(std::uint32_t spare) const;

  bool operator==(const Forest&) const = default;

 private:
  struct Node {
    std::uint32_t root = kNone;
    std::uint32_t parent = kNone;
    std::uint32_t depth = 0;
    std::uint32_t linkAbove = kNone;
    std::int64_t position = 0;

    void tie(std::uint32_t other, std::uint32_t link);
    void untie(std::uint32_t other, std::uint32_t link);
    bool operator==(const Node&) const = default;
  };

  std::vector<std::uint32_t> leavesFirst(const Sets& joined);
  bool place(const std::vector<std::uint32_t>& leavesFirst);

  std::vector<Link> links_;
  std::vector<Node> nodes_;
};

}  // namespace inchwright
