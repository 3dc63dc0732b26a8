#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/tolerance/simulation.h"

namespace inchwright {

/// One member as the loop draws it.
struct DrawnMember {
  std::int32_t weight = 0;     ///< of its half width; the widest has 2^23
  std::uint32_t keys[4] = {};  ///< where its random numbers start
};

/// What the runs of one thread came to. Sums are in weights times deviate units.
struct DrawTally {
  static constexpr std::size_t kClasses = 65'536;

  std::int64_t reach = 1;            ///< no sum goes beyond it either way
  int shift = 0;                     ///< class = (sum + reach) >> shift
  std::int64_t lowest = INT64_MIN;   ///< sums below are counted
  std::int64_t highest = INT64_MAX;  ///< sums above are counted
  std::uint64_t below = 0;
  std::uint64_t above = 0;
  std::vector<std::uint32_t> classes;
};

/// How many deviate units make a member's half width.
std::int32_t deviatesPerHalf(Spread spread);
/// The furthest a deviate goes.
std::int32_t furthestDeviate(Spread spread);

/// The normal deviate that is made of the sum of eight uniform 16-bit numbers less its middle, as
/// the loop does it. Never falls as `sum` rises. Requires: |sum| ≤ 4 · 65 535.
std::int32_t normalDeviateOf(std::int32_t sum);

/// Draws the runs from `begin` to `end`. The same for any processor.
void drawRuns(std::span<const DrawnMember> members, Spread spread, std::uint32_t begin,
              std::uint32_t end, bool plainLoop, DrawTally& tally);

}  // namespace inchwright
