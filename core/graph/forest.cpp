#include "core/graph/forest.h"

#include <algorithm>
#include <utility>

namespace inchwright {

// Until a node is taken off as a leaf, `depth` counts what it is tied to, and `parent` and
// `linkAbove` are all of that combined by exclusive or: with a single tie left, the one it hangs
// by. So leaf after leaf is taken off, until roots alone are left, with no list of ties at all.
inline void Forest::Node::tie(std::uint32_t other, std::uint32_t link) {
  ++depth;
  parent ^= other;
  linkAbove ^= link;
}

inline void Forest::Node::untie(std::uint32_t other, std::uint32_t link) {
  --depth;
  parent ^= other;
  linkAbove ^= link;
}

Result<Forest> Forest::of(std::uint32_t nodeCount, std::vector<Link> links) {
  Forest forest;
  forest.links_ = std::move(links);
  forest.nodes_.resize(nodeCount);
  Sets joined(nodeCount);
  for (std::uint32_t i = 0; i < forest.links_.size(); ++i) {
    const auto& [from, to, ticks] = forest.links_[i];
    if (from >= nodeCount || to >= nodeCount) {
      return Error{ErrorCode::badRequest, "a link names a node that is not there", ""};
    }
    if (!joined.join(from, to)) continue;
    forest.nodes_[from].tie(to, i);
    forest.nodes_[to].tie(from, i);
  }
  if (!forest.place(forest.leavesFirst(joined))) {
    return Error{ErrorCode::outOfRange, "a position does not fit the exact range", ""};
  }
  return forest;
}

std::vector<std::uint32_t> Forest::leavesFirst(const Sets& joined) {
  std::vector<std::uint32_t> taken;
  taken.reserve(nodes_.size());
  for (std::uint32_t start = 0; start < nodes_.size(); ++start) {
    if (joined.isLowest(start)) nodes_[start].root = start;
    std::uint32_t leaf = start;
    while (nodes_[leaf].depth == 1 && !joined.isLowest(leaf)) {
      Node& node = nodes_[leaf];
      node.untie(kNone, kNone);
      nodes_[node.parent].untie(leaf, node.linkAbove);
      taken.push_back(std::exchange(leaf, node.parent));
    }
  }
  return taken;
}

// From the roots outwards. False when a position leaves 64 bits.
bool Forest::place(const std::vector<std::uint32_t>& leavesFirst) {
  for (std::size_t i = leavesFirst.size(); i-- > 0;) {
    Node& node = nodes_[leavesFirst[i]];
    const Node& above = nodes_[node.parent];
    const Link& link = links_[node.linkAbove];
    // Which way a link runs is as good as random, so it is turned without a branch.
    const Int128 turned = -Int128{link.from != node.parent};
    const Int128 at = above.position + ((link.ticks ^ turned) - turned);
    node.root = above.root;
    node.depth = above.depth + 1;
    node.position = static_cast<std::int64_t>(at);
    if (node.position != at) return false;
  }
  return true;
}

Int128 Forest::missOf(std::uint32_t link) const {
  const Link& one = links_[link];
  return Int128{one.ticks} - (Int128{position(one.to)} - position(one.from));
}

int Forest::signAbove(std::uint32_t node) const {
  return links_[linkAbove(node)].to == node ? 1 : -1;
}

Loop Forest::loopOver(std::uint32_t spare) const {
  std::uint32_t a = links_[spare].to;
  std::uint32_t b = links_[spare].from;
  Loop loop{{spare, 1}};
  Loop back;
  while (a != b) {
    const bool first = depth(a) >= depth(b);
    std::uint32_t& node = first ? a : b;
    const int sign = signAbove(node);
    (first ? loop : back).push_back({linkAbove(node), first ? -sign : sign});
    node = parent(node);
  }
  loop.insert(loop.end(), back.rbegin(), back.rend());
  return loop;
}

}  // namespace inchwright
