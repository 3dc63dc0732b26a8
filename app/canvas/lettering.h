#pragma once

#include <QFont>
#include <QHash>
#include <QLineF>
#include <QRectF>
#include <QString>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

inline constexpr qreal kEdgeOverhang = 18;  ///< pixels an edge's line runs past the view

/// How figures are lettered at a scale: smaller where many readings share a small view.
struct Lettering {
  qreal size = 1;       ///< times the desk's own
  QFont font;           ///< of figures
  qreal height = 0;     ///< pixels
  qreal character = 0;  ///< pixels: every figure is as wide
  qreal spacing = 0;    ///< pixels from one dimension line to the next
};
Lettering letteringFor(const DrawnFace& drawn, std::size_t readings, const PrintMap& map);

/// The widths of texts in one font, remembered: the same names are drawn again at every edit.
class TextWidths {
 public:
  /// Pixels.
  qreal of(const QString& text, const QFont& font);

 private:
  static constexpr qsizetype kMost = 20'000;
  QFont font_;
  QHash<QString, qreal> widths_;
};

/// The room, in pixels, that so many levels of dimension lines take below or beside the view.
qreal roomBelow(int levels, const Lettering& lettering);
qreal roomBeside(int levels, const Lettering& lettering);

/// Where a dimension line lies: its run in widget pixels, left to right or bottom to top.
QLineF runOf(const DimensionLine& line, const DrawnFace& drawn, const PrintMap& map,
             const Lettering& lettering);
/// Where its lettering stands: on the print's own figure where that is known, else above the middle
/// of what of its run lies within `pane`.
QRectF letteringOn(const QLineF& run, const DimensionLine& line, const PrintMap& map,
                   const Lettering& lettering, const QRectF& pane);

}  // namespace inchwright::app
