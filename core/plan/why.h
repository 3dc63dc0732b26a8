#pragma once

#include <cstdint>
#include <optional>
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
    placed,      ///< by centre distances, angles and the like: `held` of `Why` tells how
  };

  Source source = Source::reading;
  StackMember member;  ///< of zero and placed steps its ends alone
  Rational adds;       ///< ticks, as the readout counts
  Rational running;
  std::optional<std::size_t> held = {};  ///< index into `Why::held`

  bool operator==(const WhyStep&) const = default;
};

/// A point in the plane of the face, as the readout will show it.
struct ReadoutPoint {
  Coordinate x, y;

  bool operator==(const ReadoutPoint&) const = default;
};

/// How a place that no chain leads to is held: the triangle, solved.
struct WhyHeld {
  /// A place that its readings go out from.
  struct End {
    Id place;
    ReadoutPoint at;
    Length apart;  ///< straight
    double degrees =
        0;  ///< from it to the place held, anticlockwise from the face's own X; 0 to 360

    bool operator==(const End&) const = default;
  };
  /// Where the same readings would put it as well.
  struct Other {
    ReadoutPoint at;
    Length off;  ///< from where it was put

    bool operator==(const Other&) const = default;
  };

  Id place;
  ReadoutPoint at;
  std::vector<Id> readings;
  std::vector<std::uint32_t> understood;  ///< indices into Part::understood
  std::vector<End> ends;
  std::vector<Id> together;   ///< solved at one go with these
  std::vector<Other> others;  ///< where there are any, the tracing chose

  bool operator==(const WhyHeld&) const = default;
};

/// The sum behind one coordinate, from the setup's zero.
struct Why {
  Axis axis = Axis::x;  ///< of the part
  Coordinate value;     ///< as the readout will show it
  std::vector<WhyStep> steps;
  std::vector<WhyHeld> held;  ///< places on the way that no chain leads to, in its order
  bool disputed = false;      ///< the print contradicts itself: another way makes something else

  bool operator==(const Why&) const = default;
};

/// The sum behind a place's coordinate along an axis of the part, reading by reading from zero. The
/// last step's running sum is the exact coordinate. C three readings from the left side, zero on
/// it: `L to A 3/8, A to B 1 3/16, B to C 5/8` → 2.1875. What is held by centre distances, angles
/// or the like is one step from the first place that its readings go out from. Errors: `notFound`
/// for no such place; `badRequest` where it has none along the axis or the axis does not lie in the
/// setup's face; `unsolvable` for a loose place; `outOfRange`.
Result<Why> whyOf(const WorkAt& work, std::string_view place, Axis axis);

}  // namespace inchwright
