#include "core/chain/closure.h"

#include <algorithm>
#include <bit>
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
// After so many links, few at first, it is asked whether looking at both ends still serves most.
constexpr std::size_t kLinksAtFirst = 16;
constexpr std::size_t kLinksALook = 64;

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

  // Looks at both ends of a link and no further: hangs the higher end where the lower one hangs if
  // it still stands alone, or sees that the link holds as it is. Zero then; another number when it
  // takes a climb.
  //
  // In masks, since a branch could not be predicted; and where it writes follows from the link
  // alone, so that one link need not wait for the one before.
  Sum look(std::int64_t lower, std::int64_t higher, Sum gap) const {
    const std::uint32_t wantedParent = parent[lower];
    const Sum wantedOffset = offset[lower] + gap;
    const std::uint32_t above = parent[higher];
    const Sum stays = offset[higher];
    // A node never hangs below a higher one: the difference is negative unless it stands alone.
    const std::int64_t keeps = (std::int64_t{above} - higher) >> 63;
    const std::uint32_t strays = (wantedParent ^ above) & static_cast<std::uint32_t>(keeps);
    const Sum differs = (wantedOffset ^ stays) & static_cast<Sum>(keeps);
    parent[higher] = wantedParent ^ strays;
    offset[higher] = wantedOffset ^ differs;
    return differs | strays;
  }

  bool holds(const Link& link) const {
    return parent[link.from] == parent[link.to] &&
           offset[link.from] + static_cast<Sum>(link.ticks) == offset[link.to];
  }

  // Every node comes to hang on its root: parents are settled before their children. Yields how
  // many roots there are.
  template <bool kPrefetch>
  std::uint32_t settle(std::uint32_t count) const {
    std::uint32_t roots = 0;
    for (std::uint32_t i = 0; i < count; ++i) {
      if (kPrefetch && i + kNodesAhead < count) prefetch(parent[i + kNodesAhead]);
      const std::uint32_t above = parent[i];
      roots += above == i ? 1 : 0;
      // A root stays as it is.
      offset[i] += offset[above];
      parent[i] = parent[above];
    }
    return roots;
  }
};

enum class Closing { done, badLink, sumsTooLarge, outOfOrder, missTooLarge };

// Whether so many lengths together stay within half the range of Sum: surely when each is less than
// 2^bits in size. Shifted up by as much, such a length has no bit above the next.
template <class Sum>
class Room {
 public:
  explicit Room(std::size_t count)
      : bits_(std::min(8 * int{sizeof(Sum)} - 2 - static_cast<int>(std::bit_width(count)), 63)) {}

  // Of a length, to be gathered by `or`.
  std::uint64_t of(std::int64_t ticks) const {
    return static_cast<std::uint64_t>(ticks) + (std::uint64_t{1} << bits_);
  }
  bool holds(std::uint64_t gathered) const { return bits_ == 63 || gathered >> (bits_ + 1) == 0; }

 private:
  int bits_;
};

// What was taken of the list of links, and what is left over of that.
struct Taken {
  std::size_t count = 0;
  std::uint64_t gathered = 0;
  std::vector<std::uint32_t> others;  // those that need a climb
};

// Takes links from the first on, as long as most of them need but a look at both ends, as they do
// where nodes are numbered along the list: half the time of climbing there. Ends early at a link to
// itself or to what is not there.
template <class Sum>
Taken takeByLooking(const Forest<Sum> forest, std::uint32_t nodeCount, std::span<const Link> links,
                    const Room<Sum> room) {
  Taken taken;
  bool ended = false;
  while (!ended && taken.count < links.size()) {
    const std::size_t most = taken.count == 0 ? kLinksAtFirst : kLinksALook;
    const auto stretch = links.subspan(taken.count, std::min(most, links.size() - taken.count));
    std::uint64_t gathered = 0;
    Sum strayed = 0;
    std::size_t i = 0;
    for (; i < stretch.size(); ++i) {
      const std::int64_t from = stretch[i].from;
      const std::int64_t to = stretch[i].to;
      const std::int64_t turn = (to - from) >> 63;
      const std::int64_t swap = (from ^ to) & turn;
      const std::int64_t higher = to ^ swap;
      if (higher >= nodeCount || from == to) break;
      gathered |= room.of(stretch[i].ticks);
      const Sum gap =
          (static_cast<Sum>(stretch[i].ticks) ^ static_cast<Sum>(turn)) - static_cast<Sum>(turn);
      strayed |= forest.look(from ^ swap, higher, gap);
    }
    const std::size_t before = taken.others.size();
    for (std::size_t k = 0; k < i && strayed != 0; ++k) {
      // One that placed and is listed all the same, since its lower end hangs elsewhere by now,
      // closes when it is climbed.
      if (forest.holds(stretch[k])) continue;
      taken.others.push_back(static_cast<std::uint32_t>(taken.count + k));
    }
    taken.gathered |= gathered;
    taken.count += i;
    ended = i < stretch.size() || taken.others.size() - before > most / 4;
  }
  return taken;
}

// Sums run modulo the range of Sum. They are right where all lengths together stay within half of
// it; `sumsTooLarge` says that they may not.
template <class Sum, bool kMany>
Closing closeOver(const Forest<Sum> forest, std::uint32_t nodeCount, std::span<const Link> links,
                  bool inOrder, Closure& closure) {
  const Room<Sum> room(links.size());
  Taken taken;
  if (!inOrder) taken = takeByLooking(forest, nodeCount, links, room);
  bool fits = true;
  const auto climb = [&](std::size_t i) {
    const Link link = links[i];
    std::uint32_t from = link.from;
    std::uint32_t to = link.to;
    const Sum fromOffset = forest.climb(from);
    const Sum gap = fromOffset + static_cast<Sum>(link.ticks) - forest.climb(to);
    if (from != to) {
      forest.unite(from, to, gap);
    } else if (gap != 0) {
      const auto miss = static_cast<std::int64_t>(gap);
      fits = fits && static_cast<Sum>(miss) == gap;
      closure.misses.push_back({static_cast<std::uint32_t>(i), miss});
    }
  };
  for (const std::uint32_t other : taken.others) climb(other);
  std::uint64_t gathered = taken.gathered;
  for (std::size_t i = taken.count; i < links.size(); ++i) {
    if (kMany && i + kAhead < links.size()) {
      const Link& later = links[i + kAhead];
      // A node out of range asks for nothing that exists, which is harmless.
      forest.prefetch(later.from);
      forest.prefetch(later.to);
    }
    if (links[i].from >= nodeCount || links[i].to >= nodeCount) return Closing::badLink;
    gathered |= room.of(links[i].ticks);
    climb(i);
  }
  if (!room.holds(gathered)) return Closing::sumsTooLarge;
  // Others were taken after their turn. What closes is the same in any order, but for what does not
  // the earlier links are to place.
  if (!taken.others.empty() && !closure.misses.empty()) return Closing::outOfOrder;
  if (!fits) return Closing::missTooLarge;
  // Where looking served, nodes lie near those they hang on.
  const bool asksAhead = kMany && taken.count < links.size();
  const std::uint32_t roots = asksAhead ? forest.template settle<true>(nodeCount)
                                        : forest.template settle<false>(nodeCount);
  closure.spares = static_cast<std::uint32_t>(links.size() - (nodeCount - roots));
  return Closing::done;
}

template <class Sum>
Closing closeWith(Sum* offset, std::uint32_t nodeCount, std::span<const Link> links,
                  Closure& closure) {
  const Forest<Sum> forest{closure.component.data(), offset};
  const auto close = [&](bool inOrder) {
    closure.misses.clear();
    std::iota(closure.component.begin(), closure.component.end(), 0u);
    return nodeCount > kManyNodes
               ? closeOver<Sum, true>(forest, nodeCount, links, inOrder, closure)
               : closeOver<Sum, false>(forest, nodeCount, links, inOrder, closure);
  };
  const Closing outcome = close(false);
  if (outcome != Closing::outOfOrder) return outcome;
  std::fill_n(offset, nodeCount, Sum{0});
  return close(true);
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
