#pragma once

#include <vector>

#include "core/chain/solution.h"

namespace inchwright {

/// Puts into words what stands in doubt: clashes first, then loose places, assumed
/// understandings, what is kept but not placed, questions, readings read twice, and those that
/// nothing checks. Keys follow from ids alone. Requires: all else in `solution` is filled in.
std::vector<Doubt> doubtsOf(const Part& part, const Solution& solution);

/// What would place a loose place, as a colleague would say it.
/// `fixed` is a placed one to measure from, `kin` those that hang together with it.
std::string adviceFor(const Part& part, const Id& place, Axis axis, const Id& fixed,
                      const std::vector<Id>& kin);

/// A length as the print would letter it: `2 1/16`, with `mm` where it is in millimetres.
std::string spoken(const Rational& ticks, Unit unit);

}  // namespace inchwright
