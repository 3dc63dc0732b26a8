#pragma once

#include <vector>

#include "core/chain/clash.h"
#include "core/part/job.h"

namespace inchwright {

/// A decimal that stands for a fraction: `.563` for 9/16.
struct MeantFraction {
  Id reading;
  Length meant;

  bool operator==(const MeantFraction&) const = default;
};

/// A loop that misses by no more than half a last place for each of its decimals.
struct Rounding {
  Clash loop;
  /// Read so together, they close it; empty where no fractions do.
  std::vector<MeantFraction> fractions;

  bool operator==(const Rounding&) const = default;
};

/// For every decimal of the loop that is not one already, the 64th that rounds to what is lettered;
/// empty unless the loop then closes. Eight `.563` against `4.500`: 9/16 each.
Rounding roundingOf(const Part& part, const Clash& loop);

}  // namespace inchwright
