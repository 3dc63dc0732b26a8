#include "app/machine/place_picture.h"

#include <QPainter>
#include <QPolygonF>
#include <algorithm>

#include "app/base/look.h"

// Qt's keyword would stand in the way of the slots of a part.
#undef slots
#include "core/plan/drawn_part.h"

namespace inchwright::app {
namespace {

constexpr qreal kLeastRadius = 2;  // pixels
constexpr qreal kMark = 9;         // pixels from the rim of the place that is meant to its ring

QPolygonF polygonOf(const std::vector<PlanePoint>& points) {
  QPolygonF polygon;
  for (const PlanePoint& one : points) polygon << QPointF(one.x, -one.y);
  return polygon;
}

/// Where a picture shows a place, and how large its rim is.
std::optional<std::pair<QPointF, qreal>> spotOf(const DrawnPart& picture, const Id& place) {
  const auto spot = [](const PlanePoint& at, double radius) {
    return std::optional(std::pair(QPointF(at.x, -at.y), radius));
  };
  for (const DrawnHole& one : picture.circles) {
    if (one.id == place) return spot(one.centre, std::max(one.diameter, one.seatDiameter) / 2);
  }
  for (const DrawnSlot& one : picture.slots) {
    if (one.id == place || one.id + "1" == place) return spot(one.from, one.width / 2);
    if (one.id + "2" == place) return spot(one.to, one.width / 2);
  }
  for (const DrawnRound& one : picture.rounds) {
    if (one.id == place) return spot(one.centre, one.radius);
  }
  for (const DrawnMark& one : picture.marks) {
    if (one.id == place) return spot(one.at, 0);
  }
  return std::nullopt;
}

}  // namespace

void paintPlacePicture(QPainter& painter, const QRectF& box, const WorkAt& work, const Id& place) {
  const DrawnPart picture = drawnPart(work);
  const QPolygonF outline = polygonOf(picture.outline);
  const QRectF part = outline.boundingRect();
  if (part.isEmpty() || box.isEmpty()) return;
  const Look& look = Look::now();
  const qreal scale = std::min((box.width() - 2 * kMark) / part.width(),
                               (box.height() - 2 * kMark) / part.height());
  const auto onScreen = [&](const QPointF& at) {
    return box.center() + (at - part.center()) * scale;
  };
  painter.save();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(look.pencil, kFineLine));
  QPolygonF drawn;
  for (const QPointF& one : outline) drawn << onScreen(one);
  painter.drawPolygon(drawn);
  for (const DrawnHole& one : picture.circles) {
    const qreal radius = std::max(kLeastRadius, one.diameter / 2 * scale);
    painter.drawEllipse(onScreen({one.centre.x, -one.centre.y}), radius, radius);
  }
  for (const DrawnMilled& one : picture.milled) {
    QPolygonF ring;
    for (const PlanePoint point : one.ring) ring << onScreen({point.x, -point.y});
    painter.drawPolygon(ring);
  }
  for (const DrawnSlot& one : picture.slots) {
    painter.setPen(QPen(look.faint, std::max(1.0, one.width * scale), Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(onScreen({one.from.x, -one.from.y}), onScreen({one.to.x, -one.to.y}));
  }
  if (const auto spot = spotOf(picture, place)) {
    const QPointF at = onScreen(spot->first);
    const qreal radius = std::max(kLeastRadius, spot->second * scale);
    painter.setPen(QPen(look.blue, 3));
    painter.drawEllipse(at, radius + kMark, radius + kMark);
    painter.setBrush(look.blue);
    painter.drawEllipse(at, radius, radius);
  }
  painter.restore();
}

}  // namespace inchwright::app
