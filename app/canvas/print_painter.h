#pragma once

#include <QPainter>
#include <optional>
#include <set>
#include <vector>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/lettering.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

/// What the print is drawn from; the view gathers it, the painter only reads.
struct PrintScene {
  const DrawnFace& drawn;
  const std::vector<DimensionLine>& lines;
  const Lettering& lettering;
  QRectF pane;  ///< the whole widget
  std::set<Id> chosenPlaces;
  std::set<Id> chosenReadings;
  Id hovered;
  std::optional<QPointF> pending;  ///< inches in the view
  /// Known places of a picture that is being squared up, in the order they were named.
  std::vector<QPointF> marks = {};
  /// The second, blind reading: figures are not shown, only where they stand.
  bool hideFigures = false;
};

/// Draws traces and dimension lines in a hand of our own: solid pencil where placed, a broken line
/// and a small question mark where loose, a torn line where a loop does not close. A reading that
/// is chosen is drawn within the pane even where its line has no room there.
void paintPrint(QPainter& painter, const PrintScene& scene, const PrintMap& map,
                const QRectF& visible);

}  // namespace inchwright::app
