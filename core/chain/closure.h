#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"

namespace inchwright {

/// A reading between two nodes, bare: position(to) − position(from) = ticks.
struct Link {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::int64_t ticks = 0;
};

/// A link that closes a loop of others, and misses by `miss` ticks: lettered less summed.
struct Miss {
  std::uint32_t link = 0;
  std::int64_t miss = 0;
};

/// Positions of all nodes, exactly, and every spare link checked.
struct Closure {
  /// In ticks from the first-numbered node of the same component.
  std::vector<std::int64_t> position;
  /// The first-numbered node of each node's component.
  std::vector<std::uint32_t> component;
  std::uint32_t spares = 0;  ///< links that closed a loop
  /// Those whose loop does not close with the links before them, which place; in order. Whether
  /// there are any does not depend on the order of links.
  std::vector<Miss> misses;
};

/// Time and memory linear in nodes and links. Exact; errors: `outOfRange` when a position leaves
/// 64 bits, `badRequest` when a link names a node at or above `nodeCount`.
Result<Closure> closeLinks(std::uint32_t nodeCount, std::span<const Link> links);

}  // namespace inchwright
