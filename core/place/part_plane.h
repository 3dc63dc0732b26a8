#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/chain/axis_system.h"
#include "core/chain/network.h"
#include "core/part/job.h"
#include "core/place/plane.h"

namespace inchwright {

/// A circle of a plane by its quantities.
struct PlacedCircle {
  std::uint32_t x = 0;
  std::uint32_t y = 0;
  std::uint32_t radius = 0;
};

/// What a part says of the plane of two of its axes beyond chains: centre distances, angles,
/// tangents, lines and arcs, as equations over where loose groups lie. Along the part's own axes,
/// in inches from the origins of the two systems; an angle that is lettered as the bottom is seen
/// has been turned over.
struct PartPlane {
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  PlaneProblem problem;
  std::vector<Source> sources;  ///< by row
  /// Of both axes: which variable of the problem a variable of the system is.
  std::array<std::map<std::uint32_t, std::uint32_t>, 2> variables;
  std::map<Id, std::uint32_t> points;  ///< places, by their number in the problem
  std::vector<Id> pointIds;            ///< by number
  std::map<Id, std::uint32_t> lines;   ///< lines and edges
  std::map<Id, PlacedCircle> circles;
  std::map<std::uint32_t, std::uint32_t> figures;  ///< by index of the reading: its correction

  bool isEmpty() const { return problem.rows.empty(); }
};

struct PartPlaneOptions {
  /// Whether the corrections of readings along the axes come in as figures too: for tolerances and
  /// contradictions, which cross from the ones to the others.
  bool withChains = false;
};

/// `positions` are those of the systems' places as far as they are placed, by axis.
/// Requires: `checkPart(part)` is fine.
PartPlane planeOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                  const std::array<std::vector<Position>, 3>& positions, std::array<Axis, 2> axes,
                  const PartPlaneOptions& options = {});

/// How far a spare reading may miss and still agree: half its last lettered place, as inches (an
/// angle: as radians). `5/8`: 1/128 in. `.625`: .0005 in. `55`: a quarter of a degree.
double agreesWithin(const Reading& reading);

}  // namespace inchwright
