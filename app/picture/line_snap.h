#pragma once

#include <QImage>
#include <QPointF>

namespace inchwright::app {

/// The place near `at` where lines of the picture run: on the nearest upright line, the nearest
/// level one, or where both cross, such as a corner or the centre lines of a hole; along a
/// direction without a line it stays as it is. Pixels from the top left corner, and `reach` how far
/// a line may be off; the curves of a small circle are not taken for lines.
///
/// Only a help to a hand that points at a line: nothing is measured by it. Time as reach squared.
QPointF snapToLines(const QImage& image, QPointF at, double reach);

}  // namespace inchwright::app
