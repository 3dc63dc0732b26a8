#include "app/machine/fitting.h"

#include <QFontInfo>
#include <QFontMetricsF>
#include <QScreen>
#include <algorithm>

namespace inchwright::app {

QFont forScreen(const QScreen* screen, QFont font) {
  constexpr double kLines = 1080, kAcross = 1100, kLeast = 0.7;
  if (screen == nullptr) return font;
  const QSize size = screen->geometry().size();
  const double fits = std::clamp(size.width() / kAcross, kLeast, 1.0);
  const int pixels = QFontInfo(font).pixelSize();
  font.setPixelSize(std::max(8, qRound(pixels * std::max(fits, size.height() / kLines))));
  return font;
}

QFont fitting(QFont font, const QString& text, QSizeF room) {
  font.setPixelSize(100);
  const QFontMetricsF metrics(font);
  const qreal scale = std::min(room.width() / std::max(1.0, metrics.horizontalAdvance(text)),
                               room.height() / metrics.height());
  font.setPixelSize(std::max(8, static_cast<int>(100 * scale)));
  return font;
}

int mostFor(const QRectF& box) {
  return std::max(44, static_cast<int>(box.height() / 9));
}

QFont fittingLines(QFont font, const QString& text, const QRectF& box, int most) {
  for (int size = most; size > 10; --size) {
    font.setPixelSize(size);
    const QRectF needed = QFontMetricsF(font).boundingRect(
        QRectF(0, 0, box.width(), 1e6), static_cast<int>(Qt::TextWordWrap), text);
    if (needed.height() <= box.height() && needed.width() <= box.width()) break;
  }
  return font;
}

}  // namespace inchwright::app
