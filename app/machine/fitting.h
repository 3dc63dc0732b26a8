#pragma once

#include <QFont>
#include <QRectF>
#include <QSizeF>
#include <QString>

class QScreen;

namespace inchwright::app {

/// A font for words beside the figures: smaller where the screen has room for few, larger on one of
/// more than 1080 lines (4K without scaling).
QFont forScreen(const QScreen* screen, QFont font);

/// The largest font in which `text` fits into a width and a height.
QFont fitting(QFont font, const QString& text, QSizeF room);

/// The most pixels for running words in a box: larger on a larger screen.
int mostFor(const QRectF& box);

/// The largest font, up to a size in pixels, in which lines broken between words fit into a box.
QFont fittingLines(QFont font, const QString& text, const QRectF& box, int most);

}  // namespace inchwright::app
