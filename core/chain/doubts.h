#pragma once

#include <string>
#include <vector>

#include "core/chain/solution.h"

namespace inchwright {

/// Puts into words what stands in doubt: clashes first, then loose places, assumed
/// understandings, what is kept but not placed, questions, readings read twice, and those that
/// nothing checks. Keys follow from ids alone. Requires: all else in `solution` is filled in.
std::vector<Doubt> doubtsOf(const Part& part, const Solution& solution);

/// So many ids are named one by one before others are only said to be there.
inline constexpr std::size_t kMostNamed = 4;

/// What would place a loose place of `feature`, as a colleague would say it. `fixed` is a placed
/// one to measure from (or empty), `kin` those of other features that hang together with it, the
/// first few of them at least.
std::string adviceFor(const Part& part, const Feature& feature, const Id& place, Axis axis,
                      const Id& fixed, const std::vector<Id>& kin);

/// A length as the print would letter it: `2 1/16`, with `mm` where it is in millimetres.
std::string spoken(const Rational& ticks, Unit unit);

}  // namespace inchwright
