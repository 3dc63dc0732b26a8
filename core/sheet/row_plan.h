#pragma once

#include "core/sheet/content.h"
#include "core/sheet/rows_block.h"

namespace inchwright {

/// Where the columns of the rows stand, mm from the left of the block. One plan holds for all
/// groups, so that points and signs stand below each other down the whole sheet.
struct RowPlan {
  RowShape shape = RowShape::fractionsBeside;
  double figureHeight = 8;
  double idLeft = 0;
  double idWidth = 0;
  double xPoint = 0;     ///< the decimal point of X
  double yPoint = 0;     ///< and of Y; the same as X's when stacked
  double before = 0;     ///< from the left of the sign to the point
  double after = 0;      ///< from the point to the last figure
  double fractions = 0;  ///< the left of the column of fractions; unused when they stand below
  double ticks = 0;      ///< the left of the first tick column
  double tickPitch = 0;
  double pencil = 0;  ///< the left of the room for pencil
  double letter = 0;  ///< the height of the letters X and Y before stacked figures
  double width = 0;   ///< the least the shape needs
};

/// What the shape needs with all ticks of the widest group; `figureHeight` as the style says.
RowPlan planRows(const SheetContent& content, RowShape shape, double figureHeight);

/// The height of the print's own fractions.
inline double fractionHeight(const Style& style) {
  return style.body() * 0.95;
}

inline double tickLabelHeight(const Style& style) {
  return style.cell() * 0.9;
}

/// The regular weight: its strokes are an eighth of the height and keep 3, 5 and 8 apart at the
/// limit of what an eye resolves, where the bold fills in (tests/app/render/ocr_test.cpp).
inline constexpr Typeface kFigureFace = Typeface::regular;

}  // namespace inchwright
