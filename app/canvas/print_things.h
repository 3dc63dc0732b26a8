#pragma once

#include <QRectF>
#include <QString>

#include "app/canvas/print_layout.h"
#include "app/session/work.h"

namespace inchwright::app {

/// Something on the print that can be pointed at, in words.
struct PrintThing {
  Id id;
  bool reading = false;
  bool chosen = false;
  QString name;    ///< `hole A`, `reading r1, L to A: 3/8`
  QString status;  ///< placed, loose, in dispute …
  QRectF box;      ///< on the widget
};

/// All of them: the places first, then the readings.
int thingCount(const PrintLayout& layout);
/// Requires 0 ≤ index < thingCount().
PrintThing thingAt(int index, const PrintLayout& layout, const PrintMap& map, const QRectF& pane,
                   const Work& work);

}  // namespace inchwright::app
