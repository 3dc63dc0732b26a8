#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/checks/checks.h"
#include "core/checks/plan_shapes.h"

namespace inchwright {

/// What is cut at one hole, slot or pocket of the setup's face, as the checks look at it: where,
/// and with which tools how deep. Ticks in the part's own axes. A through hole of 1/4 in reamed: a
/// drill and a reamer, the drill's point 1/32 in below the work.
struct CutPlace {
  struct Tool {
    std::string name;
    std::int64_t radius = 0;
    std::optional<Length> end;  ///< depth of its end from the face as it is now
    Length below;               ///< how far it goes below through work
    bool through = false;
  };
  Id id;
  Spot from{};              ///< the centre; of a slot that of its end at the lower end of its axis
  std::size_t along = 0;    ///< index of the face's axis that a slot runs along
  std::int64_t length = 0;  ///< 0 for a hole
  /// A slot that runs along no axis, or a pocket: in place of these.
  std::optional<MilledShape> shape;
  std::vector<Tool> tools;
  bool through = false;

  /// The tool that reaches furthest to the side; null when none has a size.
  const Tool* widest() const;
  /// How far its way lies from a rectangle, ticks; below 0 inside. Along axes exact, else to a
  /// millionth of an inch.
  std::int64_t distanceFrom(const Rectangle& rectangle) const;
  /// From where to where its way lies along one of the face's axes, ticks.
  std::pair<std::int64_t, std::int64_t> reach(std::size_t axis) const;
};

/// a + b, or a where that is beyond a length.
Length sumOf(Length a, Length b);

/// The cuts of a setup's face that have a place.
std::vector<CutPlace> cutPlaces(const CheckedWork& work);

}  // namespace inchwright
