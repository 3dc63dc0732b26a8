#include "core/chain/skeleton.h"

#include <algorithm>
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

Skeleton::Skeleton(std::uint32_t nodeCount, std::span<const AxisLink> links)
    : links_(links),
      inTree_(links.size()),
      firstAt_(nodeCount + 1),
      parent_(nodeCount, kNone),
      depth_(nodeCount),
      linkAbove_(nodeCount, kNone) {
  Sets joined(nodeCount);
  for (std::size_t i = 0; i < links.size(); ++i) {
    const AxisLink& link = links[i];
    if (joined.find(link.from) == joined.find(link.to)) continue;
    joined.unite(link.from, link.to);
    inTree_[i] = true;
    ++firstAt_[link.from];
    ++firstAt_[link.to];
  }
  std::partial_sum(firstAt_.begin(), firstAt_.end(), firstAt_.begin());
  incident_.resize(firstAt_.back());
  for (std::size_t i = links.size(); i-- > 0;) {
    if (!inTree_[i]) continue;
    incident_[--firstAt_[links[i].from]] = static_cast<std::uint32_t>(i);
    incident_[--firstAt_[links[i].to]] = static_cast<std::uint32_t>(i);
  }
  for (std::uint32_t root = 0; root < nodeCount; ++root) {
    if (joined.find(root) != root) continue;
    walkFrom(root, [&](std::uint32_t node, std::uint32_t from, std::uint32_t link) {
      parent_[node] = from;
      linkAbove_[node] = link;
      depth_[node] = from == kNone ? 0 : depth_[from] + 1;
    });
  }
}

int Skeleton::signAbove(std::uint32_t node) const {
  return links_[linkAbove_[node]].to == node ? 1 : -1;
}

std::span<const std::uint32_t> Skeleton::linksAt(std::uint32_t node) const {
  return std::span(incident_).subspan(firstAt_[node], firstAt_[node + 1] - firstAt_[node]);
}

std::uint32_t Skeleton::otherEnd(std::uint32_t link, std::uint32_t node) const {
  return links_[link].from == node ? links_[link].to : links_[link].from;
}

Loop Skeleton::loopOver(std::uint32_t spare) const {
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
