#include "core/chain/closure.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

#include "core/base/rational.h"

namespace inchwright {
namespace {

__extension__ typedef unsigned __int128 UInt128;

// Beyond so many nodes they outgrow the nearer caches, and asking ahead for them pays.
constexpr std::uint32_t kManyNodes = 40'000;
constexpr std::size_t kAhead = 32;
constexpr std::uint32_t kNodesAhead = 16;

Error positionTooFar() {
  return {ErrorCode::outOfRange, "a position does not fit the exact range", ""};
}

// A weighted union-find forest over arrays of the caller's: position(node) = position(parent) +
// offset, modulo the range of Sum. A parent has a lower number than its children and a root has
// the offset 0. Two arrays take less memory traffic than one of pairs would.
template <class Sum>
struct Forest {
  std::uint32_t* parent;
  Sum* offset;

  void prefetch(std::uint32_t node) const {
    __builtin_prefetch(parent + node, 1);
    __builtin_prefetch(offset + node, 1);
  }

  // Moves `node` to its root and yields its old position from there; halves a long path.
  Sum climb(std::uint32_t& node) const {
    std::uint32_t above = parent[node];
    std::uint32_t top = parent[above];
    Sum sum = offset[node];
    if (top != above) {
      sum = 0;
      do {
        const Sum skipped = offset[node] + offset[above];
        offset[node] = skipped;
        parent[node] = top;
        sum += skipped;
        node = top;
        above = parent[node];
        top = parent[above];
      } while (top != above);
      sum += offset[node];
    }
    node = above;
    return sum;
  }

  // Hangs the higher root below the lower one. No branch: which is higher can't be predicted.
  void unite(std::uint32_t from, std::uint32_t to, Sum gap) const {
    const std::uint32_t higher = std::max(from, to);
    const Sum turn = Sum{0} - static_cast<Sum>(from > to);
    parent[higher] = std::min(from, to);
    offset[higher] = (gap ^ turn) - turn;
  }

  // Every node comes to hang on its root: parents are settled before their children.
  template <bool kPrefetch>
  void settle(std::uint32_t count) const {
    for (std::uint32_t i = 0; i < count; ++i) {
      if (kPrefetch && i + kNodesAhead < count) prefetch(parent[i + kNodesAhead]);
      const std::uint32_t above = parent[i];
      if (above == i) continue;
      offset[i] += offset[above];
      parent[i] = parent[above];
    }
  }
};

std::uint64_t magnitude(std::int64_t ticks) {
  const auto bits = static_cast<std::uint64_t>(ticks);
  return ticks < 0 ? 0 - bits : bits;
}

enum class Closing { done, badLink, sumsTooLarge, missTooLarge };

// Sums run modulo the range of Sum. They are right where all lengths together stay within it;
// `sumsTooLarge` says that they may not be.
template <class Sum, bool kPrefetch>
Closing closeOver(const Forest<Sum>& forest, std::uint32_t nodeCount, std::span<const Link> links,
                  Closure& closure) {
  Sum total = 0;
  bool tooLarge = false;
  std::uint32_t spares = 0;
  for (std::size_t i = 0; i < links.size(); ++i) {
    if (kPrefetch && i + kAhead < links.size()) {
      const Link& later = links[i + kAhead];
      // A node out of range asks for nothing that exists, which is harmless.
      forest.prefetch(later.from);
      forest.prefetch(later.to);
    }
    const Link& link = links[i];
    if (link.from >= nodeCount || link.to >= nodeCount) return Closing::badLink;
    total += magnitude(link.ticks);
    tooLarge |= total < magnitude(link.ticks);
    std::uint32_t from = link.from;
    std::uint32_t to = link.to;
    const Sum fromOffset = forest.climb(from);
    const Sum gap = fromOffset + static_cast<Sum>(link.ticks) - forest.climb(to);
    if (from != to) {
      forest.unite(from, to, gap);
      continue;
    }
    ++spares;
    if (gap == 0) continue;
    const auto miss = static_cast<std::int64_t>(gap);
    if (static_cast<Sum>(miss) != gap) return Closing::missTooLarge;
    closure.misses.push_back({static_cast<std::uint32_t>(i), miss});
  }
  if (tooLarge || total > (~Sum{0} >> 1)) return Closing::sumsTooLarge;
  forest.template settle<kPrefetch>(nodeCount);
  closure.spares = spares;
  return Closing::done;
}

template <class Sum>
Closing closeWith(Sum* offset, std::uint32_t nodeCount, std::span<const Link> links,
                  Closure& closure) {
  closure.spares = 0;
  closure.misses.clear();
  std::iota(closure.component.begin(), closure.component.end(), 0u);
  const Forest<Sum> forest{closure.component.data(), offset};
  return nodeCount > kManyNodes ? closeOver<Sum, true>(forest, nodeCount, links, closure)
                                : closeOver<Sum, false>(forest, nodeCount, links, closure);
}

}  // namespace

Result<Closure> closeLinks(std::uint32_t nodeCount, std::span<const Link> links) {
  Closure closure;
  closure.position.resize(nodeCount);
  closure.component.resize(nodeCount);
  // Signed and unsigned integers of one width may share memory; unsigned sums may wrap.
  auto* narrow = reinterpret_cast<std::uint64_t*>(closure.position.data());
  Closing outcome = closeWith(narrow, nodeCount, links, closure);
  if (outcome == Closing::sumsTooLarge) {
    // Rare: the lengths come to more than 92 000 km. 2^32 lengths of 64 bits fit 128.
    std::vector<UInt128> wide(nodeCount);
    outcome = closeWith(wide.data(), nodeCount, links, closure);
    for (std::uint32_t i = 0; i < nodeCount && outcome == Closing::done; ++i) {
      closure.position[i] = static_cast<std::int64_t>(wide[i]);
      if (static_cast<UInt128>(Int128{closure.position[i]}) != wide[i]) return positionTooFar();
    }
  }
  if (outcome == Closing::badLink) {
    return Error{ErrorCode::badRequest, "a link names a node that is not there", ""};
  }
  if (outcome != Closing::done) return positionTooFar();
  return closure;
}

}  // namespace inchwright
