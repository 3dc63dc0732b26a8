#include "app/canvas/stamps.h"

#include <QCache>
#include <QHash>
#include <QImage>
#include <QPaintDevice>
#include <cmath>

namespace inchwright::app {
namespace {

constexpr int kParts = 4;             // of a pixel: what a stamp is placed by
constexpr qreal kLargestRadius = 24;  // a larger one is drawn
constexpr int kMostKept = 2000;

/// All that two stamps can differ in.
struct StampKey {
  QRgb colour = 0;
  int radius = 0;  ///< 1/8 pixel
  int width = 0;   ///< 1/8 pixel
  QPoint part;     ///< of a pixel, in 1/kParts
  int ratio = 64;  ///< pixels a unit, in 1/64

  bool operator==(const StampKey&) const = default;
};

size_t qHash(const StampKey& key, size_t seed = 0) {
  return qHashMulti(seed, key.colour, key.radius, key.width, key.part.x(), key.part.y(), key.ratio);
}

QImage drawn(int side, QPointF centre, qreal radius, const QColor& colour, qreal width,
             qreal ratio) {
  QImage image(QSize(side, side) * ratio, QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(ratio);
  image.fill(Qt::transparent);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(width > 0 ? QPen(colour, width) : QPen(Qt::NoPen));
  painter.setBrush(width > 0 ? QBrush() : QBrush(colour));
  painter.drawEllipse(centre, radius, radius);
  return image;
}

}  // namespace

void stampCircle(QPainter& painter, QPointF centre, qreal radius, const QColor& colour,
                 qreal width) {
  if (radius > kLargestRadius) {
    painter.save();
    painter.setPen(width > 0 ? QPen(colour, width) : QPen(Qt::NoPen));
    painter.setBrush(width > 0 ? QBrush() : QBrush(colour));
    painter.drawEllipse(centre, radius, radius);
    painter.restore();
    return;
  }
  static QCache<StampKey, QImage> kept(kMostKept);
  const qreal ratio = painter.device()->devicePixelRatio();
  const int half = static_cast<int>(std::ceil(radius + width)) + 1;
  const QPointF corner(std::floor(centre.x()), std::floor(centre.y()));
  const QPoint part(static_cast<int>((centre - corner).x() * kParts),
                    static_cast<int>((centre - corner).y() * kParts));
  const StampKey key{colour.rgba(), qRound(radius * 8), qRound(width * 8), part,
                     qRound(ratio * 64)};
  QImage* stamp = kept.object(key);
  if (stamp == nullptr) {
    const QPointF within(half + (part.x() + 0.5) / kParts, half + (part.y() + 0.5) / kParts);
    stamp = new QImage(drawn(2 * half + 1, within, qRound(radius * 8) / 8.0, colour, width, ratio));
    kept.insert(key, stamp);
  }
  painter.drawImage(corner - QPointF(half, half), *stamp);
}

}  // namespace inchwright::app
