#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/graph/difference_edge.h"

namespace inchwright {

/// How far each node of a difference graph may stray on its own, shared out fairly.
struct Filling {
  /// Ticks either way; empty for a node that no edge limits.
  std::vector<std::optional<Rational>> room;
  /// By node: edges that hold its room where it is.
  std::vector<std::vector<std::uint32_t>> heldBy;
};

/// Gives every node v a room t(v) ≥ 0 such that some centres c exist with
///   c(b) + t(b) − (c(a) − t(a)) ≤ high  and  c(b) − t(b) − (c(a) + t(a)) ≥ low  for every edge,
/// the least room as great as possible, then the next, and so on (lexicographically max–min).
///
/// All rooms grow together until a circle of edges has no slack left: that is the least ratio of
/// its slack to the number of room ends on it, and those nodes stay there while the rest grows on.
/// Exact. Each two-connected block of the graph is searched by itself for its least ratio (W.
/// Dinkelbach, On nonlinear fractional programming, 1967), from which single edges, most of a
/// print, need no search at all.
///
/// `given` holds nodes whose room is settled beforehand, `caps` upper bounds of single nodes.
/// Requires: the edges can hold with no room but the given ones; no two edges join the same nodes.
/// Errors: `outOfRange` when a fraction leaves 128 bits.
Result<Filling> fillEvenly(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
                           const std::vector<std::optional<Rational>>& given,
                           const std::vector<std::optional<Rational>>& caps);

}  // namespace inchwright
