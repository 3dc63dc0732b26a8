#pragma once

#include <QPainter>
#include <QPointF>
#include <QRect>
#include <QSize>

#include "app/canvas/picture_layer.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

/// A glass beside the pointer that shows the picture close up, while one points at its lines: so
/// one sees what is under a hand and where a click will fall. Pixels of the pane.
class Loupe {
 public:
  /// Where it lies for a pointer there: up to the right, or wherever in the pane there is room.
  static QRect boxFor(QPointF pointer, const QSize& pane);

  /// Paints it. `aim` is where the click will fall, drawn to a line near by or not.
  static void paint(QPainter& painter, const PictureLayer& picture, const PrintMap& map,
                    QPointF pointer, QPointF aim, const QSize& pane);
};

}  // namespace inchwright::app
