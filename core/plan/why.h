#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/plan/work_at.h"
#include "core/tolerance/stack.h"

namespace inchwright {

/// One step of the sum behind a figure.
struct WhyStep {
  enum class Source {
    reading,     ///< one, whole
    understood,  ///< a middle, equal spaces
    shape,       ///< a row's pitch, a ring's geometry
    zero,        ///< from where zero is to the place the walk begins at
    placed,      ///< by centre distances, angles and the like: `core/place`
  };

  Source source = Source::reading;
  StackMember member;  ///< of zero and placed steps its ends alone
  Rational adds;       ///< ticks, as the readout counts
  Rational running;

  bool operator==(const WhyStep&) const = default;
};

/// The sum behind one coordinate, from the setup's zero.
struct Why {
  Axis axis = Axis::x;  ///< of the part
  Coordinate value;     ///< as the readout will show it
  std::vector<WhyStep> steps;
  bool disputed = false;  ///< the print contradicts itself: another way makes something else

  bool operator==(const Why&) const = default;
};

/// The sum behind a place's coordinate along an axis of the part, reading by reading from zero. The
/// last step's running sum is the exact coordinate. C three readings from the left side, zero on
/// it: `L to A 3/8, A to B 1 3/16, B to C 5/8` → 2.1875. Errors: `notFound` for no such place;
/// `badRequest` where it has none along the axis or the axis does not lie in the setup's face;
/// `unsolvable` for a loose place; `outOfRange`.
Result<Why> whyOf(const WorkAt& work, std::string_view place, Axis axis);

}  // namespace inchwright
