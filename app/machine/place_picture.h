#pragma once

#include <QRectF>

#include "core/part/id.h"

class QPainter;

namespace inchwright {
struct WorkAt;
}

namespace inchwright::app {

/// The part small, as it lies on the table, with one place marked: to see at a glance which hole is
/// meant. For finding only; nothing can be read off it.
void paintPlacePicture(QPainter& painter, const QRectF& box, const WorkAt& work, const Id& place);

}  // namespace inchwright::app
