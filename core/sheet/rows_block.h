#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// How one row is arranged, from the widest to the narrowest.
enum class RowShape {
  fractionsBeside,  ///< id, X, Y, both fractions above each other, ticks, pencil
  fractionsBelow,   ///< id, X, Y, ticks, pencil; the fractions in small print below
  stacked,          ///< X above Y, each with its fraction
  stackedBare,      ///< X above Y, the fractions in small print below
};

constexpr bool isStacked(RowShape shape) {
  return shape == RowShape::stacked || shape == RowShape::stackedBare;
}
constexpr bool hasFractionsBelow(RowShape shape) {
  return shape == RowShape::fractionsBelow || shape == RowShape::stackedBare;
}

/// The least width that rows of this shape need, mm.
double rowsWidth(const SheetContent& content, RowShape shape);

/// The coordinates in cutting order, group by group, in the first shape that fits the width.
Pieces rowsPieces(const SheetContent& content, double width);

}  // namespace inchwright
