#pragma once

#include <QLineF>
#include <QPainter>
#include <QRegion>
#include <optional>
#include <set>
#include <vector>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/inked.h"
#include "app/canvas/lettering.h"
#include "app/canvas/print_map.h"
#include "app/canvas/whereabouts.h"

namespace inchwright::app {

/// What the print is drawn from; the view gathers it, the painter only reads.
struct PrintScene {
  const DrawnFace& drawn;
  const std::vector<DimensionLine>& lines;
  const Lettering& lettering;
  TextWidths& widths;  ///< of names
  QRectF pane;         ///< the whole widget
  std::set<Id> chosenPlaces;
  std::set<Id> chosenReadings;
  Id hovered;
  std::optional<QPointF> pending;  ///< inches in the view
  /// Known places of a picture that is being squared up, in the order they were named.
  std::vector<QPointF> marks = {};
  /// What the print offers, in faint pencil: a ring, or a line where the radius is 0.
  struct Offered {
    QLineF line;  ///< inches in the view; of a ring from its middle
    double radius = 0;
    bool lit = false;
  };
  std::vector<Offered> offered = {};
  Whereabouts whereabouts = {};  ///< of the place that is chosen and not placed
  /// The second, blind reading: figures are not shown, only where they stand.
  bool hideFigures = false;
};

/// Draws traces and dimension lines in a hand of our own: solid pencil where placed, a broken line
/// and a small question mark where loose, a torn line where a loop does not close. A reading that
/// is chosen is drawn within the pane even where its line has no room there. Draws what touches
/// `visible`, and returns all there is to draw.
std::vector<Inked> paintPrint(QPainter& painter, const PrintScene& scene, const PrintMap& map,
                              const QRegion& visible);
/// The same without drawing: two of these tell what has changed.
std::vector<Inked> inkOf(const PrintScene& scene, const PrintMap& map);

}  // namespace inchwright::app
