#pragma once

#include <string>

#include "core/part/axis.h"

namespace inchwright {

struct Part;

/// That a part is the other hand of another one of the job.
struct OppositeOf {
  std::string part;       ///< the name of the part it is the other hand of
  Axis across = Axis::x;  ///< the axis that is turned round: of `x`, left becomes right

  bool operator==(const OppositeOf&) const = default;
};

/// The other hand of a part: `across` turned round, x or y. Ids keep their feature, so `L` of the
/// result is its right side; sides, corners, traces, ring senses and angles follow, readings run
/// the other way between the same two ends, and setups hold it mirrored and cut the same curves.
/// Threads stay right-handed. Pictures, what was made and accepted, and what is in the way of a
/// setup (clamps, parallels) are not carried over. Exact: no figure changes but angles, which are
/// written anew.
Part mirrored(const Part& part, Axis across);

/// An opposite part after the part it follows has been edited: what was as that part had it is as
/// it has it now; what was its own stays.
Part followed(const Part& opposite, const Part& before, const Part& after);

}  // namespace inchwright
