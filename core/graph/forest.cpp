#include "core/graph/forest.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace inchwright {

Sets::Sets(std::size_t count) : parent_(count) {
  std::iota(parent_.begin(), parent_.end(), 0u);
}

std::uint32_t Sets::find(std::uint32_t one) {
  while (parent_[one] != one) {
    parent_[one] = parent_[parent_[one]];
    one = parent_[one];
  }
  return one;
}

std::uint32_t Sets::unite(std::uint32_t a, std::uint32_t b) {
  a = find(a);
  b = find(b);
  const std::uint32_t root = std::min(a, b);
  parent_[a] = root;
  parent_[b] = root;
  return root;
}

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
  forest.incident_.resize(forest.firstAt_.back());
  for (std::size_t i = links.size(); i-- > 0;) {
    if (!forest.inTree_[i]) continue;
    forest.incident_[--forest.firstAt_[links[i].from]] = static_cast<std::uint32_t>(i);
    forest.incident_[--forest.firstAt_[links[i].to]] = static_cast<std::uint32_t>(i);
  }
  forest.links_ = std::move(links);
  forest.root_.assign(nodeCount, kNone);
  forest.position_.resize(nodeCount);
  forest.parent_.assign(nodeCount, kNone);
  forest.depth_.resize(nodeCount);
  forest.linkAbove_.assign(nodeCount, kNone);
  for (std::uint32_t node = 0; node < nodeCount; ++node) {
    if (forest.root_[node] == kNone && !forest.growFrom(node)) {
      return Error{ErrorCode::outOfRange, "a position does not fit the exact range", ""};
    }
  }
  return forest;
}

bool Forest::growFrom(std::uint32_t root) {
  bool fits = true;
  walkFrom(root, [&](std::uint32_t node, std::uint32_t from, std::uint32_t link) {
    root_[node] = root;
    if (link == kNone) return;
    parent_[node] = from;
    linkAbove_[node] = link;
    depth_[node] = depth_[from] + 1;
    const Int128 at = Int128{position_[from]} + Int128{signAbove(node)} * links_[link].ticks;
    position_[node] = static_cast<std::int64_t>(at);
    fits = fits && position_[node] == at;
  });
  return fits;
}

Int128 Forest::missOf(std::uint32_t link) const {
  const Link& one = links_[link];
  return Int128{one.ticks} - (Int128{position_[one.to]} - position_[one.from]);
}

int Forest::signAbove(std::uint32_t node) const {
  return links_[linkAbove_[node]].to == node ? 1 : -1;
}

std::span<const std::uint32_t> Forest::linksAt(std::uint32_t node) const {
  return std::span(incident_).subspan(firstAt_[node], firstAt_[node + 1] - firstAt_[node]);
}

std::uint32_t Forest::otherEnd(std::uint32_t link, std::uint32_t node) const {
  return links_[link].from == node ? links_[link].to : links_[link].from;
}

Loop Forest::loopOver(std::uint32_t spare) const {
  std::uint32_t a = links_[spare].to;
  std::uint32_t b = links_[spare].from;
  Loop loop{{spare, 1}};
  Loop back;
  while (a != b) {
    const bool first = depth_[a] >= depth_[b];
    std::uint32_t& node = first ? a : b;
    const int sign = signAbove(node);
    (first ? loop : back).push_back({linkAbove_[node], first ? -sign : sign});
    node = parent_[node];
  }
  loop.insert(loop.end(), back.rbegin(), back.rend());
  return loop;
}

}  // namespace inchwright
