#include "app/canvas/loupe.h"

#include <QImage>
#include <algorithm>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr int kSide = 168;    // pixels
constexpr int kAway = 26;     // pixels from the pointer
constexpr qreal kCloser = 4;  // times as large as on the pane
constexpr qreal kGap = 7;     // pixels about the aim that its cross leaves free

}  // namespace

QRect Loupe::boxFor(QPointF pointer, const QSize& pane) {
  const QPoint at = pointer.toPoint();
  QPoint corner(at.x() + kAway, at.y() - kAway - kSide);
  if (corner.x() + kSide > pane.width()) corner.setX(at.x() - kAway - kSide);
  if (corner.y() < 0) corner.setY(at.y() + kAway);
  return {corner, QSize(kSide, kSide)};
}

void Loupe::paint(QPainter& painter, const PictureLayer& picture, const PrintMap& map,
                  QPointF pointer, QPointF aim, const QSize& pane) {
  const QRect box = boxFor(pointer, pane);
  const QPointF middle = map.toInches(pointer);
  const qreal half = kSide / (2 * kCloser * map.scale());
  const QRectF inches(middle.x() - half, middle.y() - half, 2 * half, 2 * half);
  const qreal ratio = painter.device()->devicePixelRatioF();
  QImage cut = picture.cut(inches, QSize(kSide, kSide) * ratio);
  if (cut.isNull()) return;
  cut.setDevicePixelRatio(ratio);
  const Look& look = Look::now();
  painter.drawImage(box.topLeft(), cut);
  const PrintMap close(map.scale() * kCloser,
                       QPointF(box.center()) + QPointF(0.5, 0.5) -
                           QPointF(middle.x(), -middle.y()) * map.scale() * kCloser);
  const QPointF at = close.toWidget(map.toInches(aim));
  painter.setClipRect(box);
  painter.setPen(QPen(look.blue, kFineLine));
  for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
    painter.drawLine(at + way * kGap, at + way * kSide);
  }
  painter.setClipping(false);
  painter.setPen(QPen(look.pencil, kFirmLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(box.adjusted(0, 0, -1, -1));
}

}  // namespace inchwright::app
