#pragma once

#include <cstdint>
#include <vector>

#include "core/base/rational.h"
#include "core/chain/network.h"

namespace inchwright {

/// One member of a loop, in walking order.
struct LoopMember {
  Source source;
  int sign = 1;      ///< −1 when the loop walks it from `to` to `from`
  Id from;           ///< where this step of the walk begins
  Id to;             ///< and ends
  Rational step;     ///< ticks, signed as walked
  Rational running;  ///< ticks, sum up to and including this member

  bool operator==(const LoopMember&) const = default;
};

/// A loop that does not close, in the order in which a person would add it up: it closes with the
/// reading best called the overall one. 3/8 + 1 3/16 against an overall 1 1/2 has the members
/// +3/8, +1 3/16, −1 1/2 and misses by −1/16 in.
struct Clash {
  Axis axis = Axis::x;
  /// What the loop's last member says less what the others make; ticks. Positive: the print's
  /// closing figure is longer than the chain.
  Rational missesBy;
  std::vector<LoopMember> loop;

  /// The ids of the readings in the loop, in walking order.
  std::vector<Id> readingIds(const Part& part) const;
  bool operator==(const Clash&) const = default;
};

enum class ReadingStatus { agrees, clashes, alone, unused };

}  // namespace inchwright
