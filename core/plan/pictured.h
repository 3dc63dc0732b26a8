#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/chain/solution.h"
#include "core/part/job.h"
#include "core/plan/machine_axes.h"

namespace inchwright {

/// A point of a picture: millimetres from zero, x to the right and y away from the operator, seen
/// from the spindle. For drawing only: never a size.
struct PicturePoint {
  double x = 0;
  double y = 0;

  bool operator==(const PicturePoint&) const = default;
};

/// A hole, or one hole of a ring or row.
struct PictureCircle {
  Id id;
  Id feature;
  PicturePoint centre;
  double diameter = 0;      ///< 0 when the print gives none
  double seatDiameter = 0;  ///< counterbore, countersink, spotface; 0 when there is none
  bool tapped = false;
  bool disputed = false;

  bool operator==(const PictureCircle&) const = default;
};

struct PictureSlot {
  Id id;
  PicturePoint from;  ///< centre of the end at the lower end of the slot's axis
  PicturePoint to;
  double width = 0;

  bool operator==(const PictureSlot&) const = default;
};

/// An outside radius struck about a placed centre. Corner radii are part of the outline.
struct PictureRound {
  Id id;
  PicturePoint centre;
  double radius = 0;

  bool operator==(const PictureRound&) const = default;
};

/// A plane seen edge on, drawn across the outline.
struct PictureEdge {
  Id id;
  PicturePoint from;
  PicturePoint to;
  bool alongX = true;             ///< its coordinate is the machine's X: it is drawn upright
  std::optional<TableSide> side;  ///< when it is an outer side of the part

  bool operator==(const PictureEdge&) const = default;
};

/// A placed point without a size.
struct PictureMark {
  Id id;
  PicturePoint at;

  bool operator==(const PictureMark&) const = default;
};

/// The part as it lies on the table: the machine's frame, NOT flipped by the way a readout counts.
///
/// The outline is bounded by the outer sides where they are placed, and where one is missing by
/// what is drawn and a margin; `missing` names the table sides that were so guessed.
struct PartPicture {
  std::vector<PicturePoint> outline;  ///< finished part, anticlockwise, closed by itself
  std::vector<PicturePoint> stock;    ///< as it is now; empty when nothing is left to come off
  std::vector<TableSide> missing;
  std::vector<PictureCircle> circles;
  std::vector<PictureSlot> slots;
  std::vector<PictureRound> rounds;
  std::vector<PictureEdge> edges;
  std::vector<PictureMark> marks;
  std::optional<TableSide> jaw;   ///< where the fixed jaw is
  std::optional<TableSide> stop;  ///< where the stop is
  PicturePoint zero;              ///< always 0, 0; kept so that a painter need not know it
  bool xCountsRight = true;
  bool yCountsAway = true;

  bool operator==(const PartPicture&) const = default;
};

/// Only features of the setup's face that have both coordinates are pictured. An axis along which
/// nothing is placed is drawn about 0. Errors: as `makeTable`.
Result<PartPicture> pictureOf(const Part& part, const Solution& solution, const Setup& setup,
                              const Machine& machine);

}  // namespace inchwright
