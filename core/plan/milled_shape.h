#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "core/geometry/path.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// A face as it is seen at turn 0, in inches from where the part's own axes begin: X to the right,
/// Y up, each with or against the part's own axis. On `bottom` Y is against it.
struct SeenFrame {
  std::array<Axis, 2> axes;
  std::array<int, 2> own;

  explicit SeenFrame(Face face) : axes(axesIn(face)), own(ownDirections(face)) {}
  /// A place that is placed along both axes, to the tick.
  std::optional<PlanePoint> at(const Solution& solution, std::string_view place) const;
  /// Back along one of the part's own axes, to the nearest tick.
  Length along(std::size_t axis, PlanePoint p) const;
};

/// What a slot or a pocket takes out of a face, as finished.
struct MilledShape {
  /// Of a pocket, which the document gives no name, `pocket` or `pocket 2`.
  Id id;
  Face face = Face::top;
  bool isPocket = false;
  /// In inches of the face's `SeenFrame`: of a slot the way of a cutter as wide as it; of a pocket
  /// its wall, anticlockwise. Empty where places are loose or the wall does not close.
  std::vector<PathPiece> way;
  double radius = 0;            ///< half the width of a slot
  std::optional<Length> depth;  ///< empty where it goes through
  std::vector<Id> follows;      ///< of a pocket, piece by piece
  std::vector<Id> meets;        ///< what it is meant to run into
  /// A curved slot whose ends do not lie equally far from its centre: it has no way.
  bool offCircle = false;
  bool disputed = false;     ///< some place that it goes by lies on a loop that does not close
  bool assumed = false;      ///< some place that it goes by rests on an assumption
  bool depthUnsaid = false;  ///< an opening without a depth: taken to go through

  /// How far a place lies from its edge, inches; below 0 inside. Requires: it has a way.
  double edgeFrom(PlanePoint p) const;
  bool isNamedBy(const std::vector<Id>& ids) const;
};

/// All of a part: slots that have a width in the order of the features, then pockets in that of the
/// outlines. A slot 1/4 wide and 1 long: a way of 3/4, a radius of 1/8.
std::vector<MilledShape> milledShapes(const Part& part, const Solution& solution);

/// Where the centre of a curved slot lies: of what it is `about`.
std::optional<PlanePoint> centreOfCurve(const Part& part, const Solution& solution,
                                        const Feature& slot);

}  // namespace inchwright
