#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/checks/put_in_otherwise.h"
#include "core/checks/whole_part.h"
#include "core/geometry/point.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// One thing that holds the work or stands in the way, as seen from the spindle in the frame of a
/// `DrawnPart` (millimetres from zero, x to the right, y away). For drawing only: never a size.
struct HeldThing {
  FindingCode code = FindingCode::parallel;  ///< that of running into it
  std::size_t which = 0;                     ///< of the setup's parallels, clamps or clear_of
  std::optional<Jaw> jaw;                    ///< the jaw itself, or the one a parallel stands at
  PlanePoint low;                            ///< its corners; what goes on for ever is cut off
  PlanePoint high;
  /// Of a parallel: a step of 1 away from its jaw; of a clamp or what is to be kept clear of one
  /// along the first axis of the face, and one along the second; of a jaw 0, 0.
  PlanePoint away;
  PlanePoint up;
  bool met = false;  ///< a tool comes into it

  bool operator==(const HeldThing&) const = default;
};

/// A place of which something was found, and where it is.
struct FoundAt {
  Id place;
  PlanePoint at;

  bool operator==(const FoundAt&) const = default;
};

struct DrawnHolding {
  std::vector<HeldThing> things;
  std::vector<FoundAt> found;  ///< each place once, in the order of the findings

  bool operator==(const DrawnHolding&) const = default;
};

/// How the work is held in a setup, and what was found before cutting.
struct HeldWork {
  DrawnHolding drawn;
  std::vector<Finding> findings;
  std::vector<PieceLeft> pieces;
  std::vector<PutInOtherwise> otherwise;

  bool operator==(const HeldWork&) const = default;
};

/// What holds the work in a setup, and the places of its findings. `checked` is of the same setup.
///
/// A parallel 1/8 thick against the fixed jaw of a plate with zero at its corner → from 0 to 3.175
/// across the jaws, as long as the work.
DrawnHolding drawnHolding(const WorkAt& work, const CheckedSetup& checked);

/// The setup planned and checked with the tools of its job, and drawn.
HeldWork heldWork(const WorkAt& work);

}  // namespace inchwright
