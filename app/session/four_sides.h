#pragma once

#include <QRectF>
#include <array>
#include <optional>

#include "app/session/activity.h"

namespace inchwright::app {

/// The rectangle of the four corners that the picture of a bare part was squared up by.
struct FourSides {
  QRectF box;  ///< inches in the axes of the face
  /// How wide and how deep it is as the print letters it, where that was said of its corners.
  std::array<std::optional<Lettered>, 2> overall;
};

/// Empty when they make none, or a side is there already.
std::optional<FourSides> fourSides(const Hands& hands);

/// Traces the sides, and reads what was said of them from one side to the other.
bool traceFourSides(Hands& hands);

/// The sides of a face as they are customarily met: left, right, then the other two.
std::array<Side, 4> sidesOf(Face face);
/// The edge of that side; null when it is not traced yet.
const Feature* edgeOf(const Part& part, Side side);
/// An edge for that side with the next free name; `at` along its axis, inches.
Feature edgeFor(const Part& part, Side side, double at);
/// The first side of the face that is not traced yet.
std::optional<Side> nextSide(const Part& part, Face face);

}  // namespace inchwright::app
