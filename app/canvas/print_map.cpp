#include "app/canvas/print_map.h"

#include <algorithm>

namespace inchwright::app {

PrintMap PrintMap::fitting(const QRectF& inches, const QSizeF& room, qreal margin) {
  const qreal width = std::max(room.width() - 2 * margin, 1.0);
  const qreal height = std::max(room.height() - 2 * margin, 1.0);
  const qreal wide = std::max(inches.width(), 1e-3), high = std::max(inches.height(), 1e-3);
  const qreal scale =
      std::clamp(std::min(width / wide, height / high), kSmallestScale, kLargestScale);
  const QPointF middle = inches.center();
  return {scale, {room.width() / 2 - middle.x() * scale, room.height() / 2 + middle.y() * scale}};
}

QPointF PrintMap::toWidget(QPointF inches) const {
  return {origin_.x() + inches.x() * scale_, origin_.y() - inches.y() * scale_};
}

QPointF PrintMap::toInches(QPointF pixels) const {
  return {(pixels.x() - origin_.x()) / scale_, (origin_.y() - pixels.y()) / scale_};
}

QRectF PrintMap::toWidget(const QRectF& inches) const {
  return QRectF(toWidget(inches.topLeft()), toWidget(inches.bottomRight())).normalized();
}

QRectF PrintMap::toInches(const QRectF& pixels) const {
  return QRectF(toInches(pixels.topLeft()), toInches(pixels.bottomRight())).normalized();
}

QTransform PrintMap::transform() const {
  return {scale_, 0, 0, -scale_, origin_.x(), origin_.y()};
}

PrintMap PrintMap::zoomed(qreal factor, QPointF fixed) const {
  const qreal scale = std::clamp(scale_ * factor, kSmallestScale, kLargestScale);
  return {scale, fixed + (origin_ - fixed) * (scale / scale_)};
}

}  // namespace inchwright::app
