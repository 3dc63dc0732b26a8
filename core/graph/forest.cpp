#include "core/graph/forest.h"

#include <algorithm>
#include <limits>

namespace inchwright {

Result<Forest> Forest::of(std::uint32_t nodeCount, std::vector<Link> links) {
  Forest forest;
  Sets joined(nodeCount);
  forest.inTree_.resize(links.size());
  forest.firstAt_.resize(nodeCount + 1);
  for (std::size_t i = 0; i < links.size(); ++i) {
    const Link& link = links[i];
    if (link.from >= nodeCount || link.to >= nodeCount) {
      return Error{ErrorCode::badRequest, "a link names a node that is not there", ""};
    }
    if (joined.find(link.from) == joined.find(link.to)) continue;
    joined.unite(link.from, link.to);
    forest.inTree_[i] = true;
    ++forest.firstAt_[link.from];
    ++forest.firstAt_[link.to];
  }
  std::partial_sum(forest.firstAt_.begin(), forest.firstAt_.end(), forest.firstAt_.begin());
  forest.branches_.resize(forest.firstAt_.back());
  for (std::size_t i = links.size(); i-- > 0;) {
    if (!forest.inTree_[i]) continue;
    const auto number = static_cast<std::uint32_t>(i);
    const auto& [from, to, ticks] = links[i];
    forest.branches_[--forest.firstAt_[from]] = {number, to};
    forest.branches_[--forest.firstAt_[to]] = {number, from};
  }
  forest.links_ = std::move(links);
  forest.nodes_.resize(nodeCount);
  if (!forest.grow()) {
    return Error{ErrorCode::outOfRange, "a position does not fit the exact range", ""};
  }
  return forest;
}

// Each tree from its lowest node, nearer ones first.
bool Forest::grow() {
  std::vector<std::uint32_t> queue;
  queue.reserve(nodes_.size());
  for (std::uint32_t root = 0; root < nodes_.size(); ++root) {
    if (nodes_[root].root != kNone) continue;
    nodes_[root].root = root;
    std::size_t next = queue.size();
    queue.push_back(root);
    for (; next < queue.size(); ++next) {
      const std::uint32_t here = queue[next];
      const Node from = nodes_[here];
      for (const auto& [link, node] : branchesAt(here)) {
        if (link == from.linkAbove) continue;
        const std::int64_t ticks = links_[link].ticks;
        const Int128 at =
            Int128{from.position} + (links_[link].to == node ? ticks : -Int128{ticks});
        const auto position = static_cast<std::int64_t>(at);
        if (position != at) return false;
        nodes_[node] = {root, here, from.depth + 1, link, position};
        queue.push_back(node);
      }
    }
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
