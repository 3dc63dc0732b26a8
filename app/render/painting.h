#pragma once

#include "core/sheet/draw_list.h"

class QPainter;

namespace inchwright::app {

/// Paints one page with a painter whose unit is the millimetre and whose origin is the page's top
/// left corner. The ground is left as it is. The painter's state is the same afterwards.
/// Requires: a QGuiApplication, and `loadFaces` done.
void paintPage(QPainter& painter, const Page& page);

}  // namespace inchwright::app
