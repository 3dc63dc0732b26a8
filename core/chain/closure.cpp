#include "core/chain/closure.h"

#include <limits>

#include "core/base/rational.h"

namespace inchwright {
namespace {

// A node of the weighted union-find forest: position(node) = position(parent) + offset.
template <class Offset>
struct Node {
  std::uint32_t parent;
  Offset offset;
};

template <class Offset>
class Forest {
 public:
  explicit Forest(std::uint32_t count) : nodes_(count) {
    for (std::uint32_t i = 0; i < count; ++i) nodes_[i] = {i, 0};
  }

  // The root of a node; `offset` becomes position(node) − position(root). Halves the path.
  std::uint32_t find(std::uint32_t node, Offset& offset) {
    Offset sum = 0;
    for (;;) {
      Node<Offset>& here = nodes_[node];
      if (here.parent == node) break;
      const Node<Offset>& above = nodes_[here.parent];
      here.offset += above.offset;
      here.parent = above.parent;
      sum += here.offset;
      node = here.parent;
    }
    offset = sum;
    return node;
  }

  Node<Offset>& operator[](std::uint32_t i) { return nodes_[i]; }

 private:
  std::vector<Node<Offset>> nodes_;
};

Error outOfRange() {
  return {ErrorCode::outOfRange, "a position does not fit the exact range", ""};
}

template <class Offset>
Result<Closure> close(std::uint32_t nodeCount, std::span<const Link> links) {
  Forest<Offset> forest(nodeCount);
  Closure closure;
  for (std::uint32_t i = 0; i < links.size(); ++i) {
    const Link& link = links[i];
    if (link.from >= nodeCount || link.to >= nodeCount) {
      return Error{ErrorCode::badRequest, "a link names a node that is not there", ""};
    }
    Offset from = 0;
    Offset to = 0;
    const std::uint32_t fromRoot = forest.find(link.from, from);
    const std::uint32_t toRoot = forest.find(link.to, to);
    const Offset gap = from + link.ticks - to;
    if (fromRoot == toRoot) {
      ++closure.spares;
      if (gap == 0) continue;
      const auto miss = static_cast<std::int64_t>(gap);
      if (miss != gap) return outOfRange();
      closure.misses.push_back({i, miss});
    } else if (fromRoot < toRoot) {
      forest[toRoot] = {fromRoot, gap};
    } else {
      forest[fromRoot] = {toRoot, -gap};
    }
  }
  // Parents have lower numbers, so one pass in order settles every node; the root of a component
  // is its first-numbered node.
  closure.position.resize(nodeCount);
  closure.component.resize(nodeCount);
  for (std::uint32_t i = 0; i < nodeCount; ++i) {
    const Node<Offset>& node = forest[i];
    if (node.parent == i) {
      closure.component[i] = i;
      continue;
    }
    Node<Offset>& here = forest[i];
    here.offset += forest[here.parent].offset;
    closure.component[i] = closure.component[here.parent];
    closure.position[i] = static_cast<std::int64_t>(here.offset);
    if (closure.position[i] != here.offset) return outOfRange();
  }
  return closure;
}

// Whether no sum over any of the links can leave 64 bits.
bool sumsFit(std::span<const Link> links) {
  Int128 total = 0;
  for (const Link& link : links) total += link.ticks < 0 ? -Int128{link.ticks} : Int128{link.ticks};
  return total <= std::numeric_limits<std::int64_t>::max();
}

}  // namespace

Result<Closure> closeLinks(std::uint32_t nodeCount, std::span<const Link> links) {
  // When the lengths together stay within 64 bits, so does every sum on the way and nothing need
  // be checked; else wide sums are, which is slower and practically never needed.
  return sumsFit(links) ? close<std::int64_t>(nodeCount, links) : close<Int128>(nodeCount, links);
}

}  // namespace inchwright
