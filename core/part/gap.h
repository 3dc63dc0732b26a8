#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"
#include "core/part/feature.h"
#include "core/part/mate.h"

namespace inchwright {

/// One step of the way across a gap between parts. It is one of three things:
///
/// - the distance between two places of a part (`part`, `axis`, `from`, `to`);
/// - a length with its tolerance (`length`), such as a bought washer; on the print of `part`, where
///   that is named;
/// - the float of a fit: by its name for a size (`fit`, `size`), by measured ones (`hole`,
///   `shaft`), or of a screw in its clearance hole (`screw`, with the `fit` by its name or the
///   `hole`). It adds nothing to the nominal and may stray half its clearance either way.
struct GapMember {
  std::string name;  ///< what to call a length or a fit; else it is named after what it is
  int sign = 1;      ///< −1 where it takes from the gap
  std::string part;
  std::optional<Axis> axis;
  bool isStraight = false;  ///< axis `centres`: straight from place to place, and no `axis`
  Id from;
  Id to;
  std::optional<Lettered> length;
  std::string fit;
  std::optional<Lettered> size;
  std::optional<SizeOrPlace> hole;
  std::optional<SizeOrPlace> shaft;
  std::string screw;
  Extra extra;

  bool operator==(const GapMember&) const = default;
};

/// A gap between parts of the job that has to come out within limits.
struct Gap {
  std::string name;
  std::optional<Lettered> least;
  std::optional<Lettered> greatest;
  std::vector<GapMember> members;
  Extra extra;

  bool operator==(const Gap&) const = default;
};

}  // namespace inchwright
