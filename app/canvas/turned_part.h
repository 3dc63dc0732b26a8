#pragma once

#include <QPainter>
#include <QRectF>
#include <array>
#include <vector>

#include "core/part/axis.h"

namespace inchwright::app {

class Desk;

/// The part as a block seen from one of its corners, to show which of its faces is meant.
///
/// For drawing only: how long it is along each axis is as known from its edges, or made up.
struct TurnedPart {
  /// Where a plane lies between the outermost ones of its axis, from 0 to 1.
  struct Plane {
    Axis axis = Axis::x;
    double share = 0;

    bool operator==(const Plane&) const = default;
  };
  std::array<double, 3> size{1, 0.7, 0.4};  ///< along X, Y and Z; the longest is 1
  std::vector<Plane> lit;                   ///< of edges that are chosen

  bool operator==(const TurnedPart&) const = default;
};

/// The current part, with the chosen edges lit.
TurnedPart turnedPart(const Desk& desk);

/// Draws it within a box, turned so that `face` is seen, with that face in blue pencil.
void paintTurned(QPainter& painter, const QRectF& box, const TurnedPart& part, Face face);

}  // namespace inchwright::app
