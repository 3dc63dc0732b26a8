#pragma once

#include <optional>
#include <vector>

#include "core/plan/work_at.h"

namespace inchwright {

/// The tip that finds edges: as the machine's profile names it, else the customary one.
struct FinderTip {
  Length diameter;
  std::optional<Lettered> lettered;  ///< empty when it is assumed

  bool operator==(const FinderTip&) const = default;
};

FinderTip finderTip(const Machine& machine, Unit shown);

/// What is touched or picked up: a side of the work, another plane, or a place.
struct Contact {
  Id place;
  FeatureKind kind = FeatureKind::edge;  ///< of its feature
  bool whole = true;                     ///< the feature itself, not one of its holes or ends
  std::optional<TableSide> side;         ///< an outer side of the work, as it lies
  std::optional<Lettered> stock;         ///< still on that side, as lettered; empty for none

  bool isEdge() const { return kind == FeatureKind::edge; }

  bool operator==(const Contact&) const = default;
};

/// One instruction for finding zero.
struct TouchStep {
  enum class Kind {
    touchSide,   ///< with the tip, from outside
    touchPlane,  ///< a plane inside the work, from whichever side it can be reached
    pickUp,      ///< the middle of a place, with an indicator, plug or pointer
    driveBack,   ///< to half of what the readout shows: the middle of two
    touchTop,    ///< with the tool: Z
    noTop        ///< the print does not say how high the top lies above zero
  };
  enum class Figure { set, shouldRead, shouldReadAbout };

  Kind kind = Kind::touchSide;
  Contact at;
  Figure use = Figure::set;
  Coordinate figure;     ///< what the readout is set to, or should show
  Coordinate beyond;     ///< touchPlane: standing right of it or beyond it; `figure` is the other
  bool sameTip = false;  ///< touchSide: the tip of the step before
  bool ofStock = false;  ///< driveBack: the middle of the work as it is now

  bool operator==(const TouchStep&) const = default;
};

/// How to find zero along one of the machine's axes.
struct TouchOff {
  TableAxis axis;     ///< of Z: without a zero, it is the top of the work as finished
  Length stockOnTop;  ///< of Z: still to come off there
  std::vector<TouchStep> steps;

  bool operator==(const TouchOff&) const = default;
};

/// How to find zero along both axes of the table and in depth, with presets.
///
/// A preset is what the readout must be set to while the tip touches the work as it is now: the
/// spindle stands half the tip outside the side, and the side stands its stock outside the finished
/// one; the sign follows from the way the side faces on the table and the way the readout counts.
/// Presets are exact until shown; what the step cost stands in the coordinate. A 0.200 tip left of
/// the left side, 1/16 still on it, zero at that side: −0.1625.
/// Two sides that face apart, or each other, are halved; of two that do not, one is set and the
/// other proves it, since the tip does not cancel.
/// Errors: `outOfRange`, and those of `findZero` for a zero along the depth.
Result<std::vector<TouchOff>> touchOffs(const WorkAt& work, const FinderTip& tip);

}  // namespace inchwright
