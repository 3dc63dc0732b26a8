#pragma once

#include <QColor>
#include <QPainter>

namespace inchwright::app {

/// A disc, or with a `width` the outline of one, by a small picture of it that is kept: a print has
/// hundreds of them alike. Placed to an eighth of a pixel, which no eye sees. Leaves pen and brush
/// as they were.
void stampCircle(QPainter& painter, QPointF centre, qreal radius, const QColor& colour,
                 qreal width = 0);

}  // namespace inchwright::app
