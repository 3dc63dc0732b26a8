#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// A hole, or one hole of a ring or row.
struct DrawnHole {
  Id id;
  Id feature;
  PlanePoint centre;
  double diameter = 0;      ///< 0 when the print gives none
  double seatDiameter = 0;  ///< counterbore, countersink, spotface; 0 when there is none
  bool tapped = false;
  bool disputed = false;

  bool operator==(const DrawnHole&) const = default;
};

struct DrawnSlot {
  Id id;
  PlanePoint from;  ///< centre of the end at the lower end of the slot's axis
  PlanePoint to;
  double width = 0;

  bool operator==(const DrawnSlot&) const = default;
};

/// A pocket or a curved slot: its edge, arcs as runs of short lines, closed by itself.
struct DrawnMilled {
  Id id;
  std::vector<PlanePoint> ring;

  bool operator==(const DrawnMilled&) const = default;
};

/// An outside radius struck about a placed centre. Corner radii are part of the outline.
struct DrawnRound {
  Id id;
  PlanePoint centre;
  double radius = 0;

  bool operator==(const DrawnRound&) const = default;
};

/// A plane seen edge on, drawn across the outline.
struct DrawnEdge {
  Id id;
  PlanePoint from;
  PlanePoint to;
  MachineAxis axis = MachineAxis::x;  ///< of its coordinate: along X it is drawn upright
  std::optional<TableSide> side;      ///< when it is an outer side of the part

  bool operator==(const DrawnEdge&) const = default;
};

/// A placed point without a size.
struct DrawnMark {
  Id id;
  PlanePoint at;

  bool operator==(const DrawnMark&) const = default;
};

/// The part as it lies on the table: millimetres from zero, x to the right and y away from the
/// operator, seen from the spindle; NOT flipped by the way a readout counts. For drawing only:
/// never a size.
///
/// The outline is bounded by the outer sides where they are placed, and where one is missing by
/// what is drawn and a margin; `missing` names the table sides that were so guessed.
struct DrawnPart {
  std::vector<PlanePoint> outline;  ///< finished part, anticlockwise, closed by itself
  std::vector<PlanePoint> stock;    ///< as it is now; empty when nothing is left to come off
  std::vector<TableSide> missing;
  std::vector<DrawnHole> circles;
  std::vector<DrawnSlot> slots;  ///< straight ones
  std::vector<DrawnMilled> milled;
  std::vector<DrawnRound> rounds;
  std::vector<DrawnEdge> edges;
  std::vector<DrawnMark> marks;
  std::optional<TableSide> jaw;   ///< where the fixed jaw is
  std::optional<TableSide> stop;  ///< where the stop is
  PlanePoint zero;                ///< always 0, 0; kept so that a painter need not know it
  bool xCountsRight = true;
  bool yCountsAway = true;

  bool operator==(const DrawnPart&) const = default;
};

/// Only features of the setup's face that have both coordinates are drawn. An axis along which
/// nothing is placed is drawn about 0.
DrawnPart drawnPart(const WorkAt& work);

}  // namespace inchwright
