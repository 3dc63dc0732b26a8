#pragma once

#include <array>
#include <cstdint>
#include <span>

#include "core/graph/forest.h"

namespace inchwright {

/// A way from one node to the next as a search sees it: what it adds to the high end of a range
/// and what it takes from the low end, in ticks, neither below zero.
struct ReachWay {
  std::uint32_t to = 0;
  std::uint32_t edge = 0;
  std::array<std::int64_t, 2> costs = {};
};

/// How far a search has come to a node.
struct ReachStop {
  std::int64_t distance = INT64_MAX;  ///< ticks; INT64_MAX until it is reached
  std::uint32_t by = kNone;           ///< the edge over which it was reached
  std::uint32_t slot = kNone;         ///< where it waits, once it is reached
};

/// Dijkstra's algorithm for one end of the ranges, a step at a time, so that both ends can go on
/// in turn and neither waits for the memory of the other.
///
/// On most prints about five nodes wait at a time. Those lie in no order, each once, and are looked
/// through for the nearest; which node is nearest and which way is better are as good as random, so
/// a step has no branch that could be guessed wrong. Where many wait, a heap takes over.
class ReachFront {
 public:
  /// The most ways that a node may have for `step`.
  static constexpr std::uint32_t kMostWays = 64;

  /// `firstWay` has one more entry than there are nodes. `stops`, by node, are filled in. What is
  /// given has to outlive the front.
  ReachFront(std::size_t side, std::span<const std::uint32_t> firstWay,
             std::span<const ReachWay> ways, std::span<ReachStop> stops, std::uint32_t source);

  /// Whether somebody waits, and not too many for `step`.
  bool isNarrow() const { return count_ - 1 < kFew; }

  /// Settles the nearest node. Requires: it is narrow, and no node has more than kMostWays.
  void step();

  /// Settles all that can be reached from where it is.
  void finish();

 private:
  /// How many are looked through at once; none of them waits at more than `count_`.
  static constexpr std::uint32_t kStride = 4;
  static constexpr std::uint32_t kFew = 64;
  /// Where is written what is no better than what was there.
  static constexpr std::uint32_t kNowhere = kFew + kMostWays + kStride;

  std::size_t side_;
  std::span<const std::uint32_t> firstWay_;
  std::span<const ReachWay> ways_;
  std::span<ReachStop> stops_;
  std::uint32_t count_ = 1;
  std::array<std::int64_t, kNowhere + 1> keys_;  ///< INT64_MAX from `count_` on
  std::array<std::uint32_t, kNowhere + 1> nodes_ = {};
};

}  // namespace inchwright
