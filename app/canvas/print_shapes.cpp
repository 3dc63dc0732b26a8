#include "app/canvas/print_shapes.h"

#include <cmath>
#include <numbers>

namespace inchwright::app {
namespace {

constexpr double kHalfTurn = 180;  // degrees, as QPainterPath counts them

QPainterPath slotAbout(const DrawnPlace& place, const PrintMap& map) {
  const QPointF one = map.toWidget(place.at + place.half);
  const QPointF other = map.toWidget(place.at - place.half);
  const qreal radius = place.radius * map.scale();
  const QLineF run(other, one);
  // Degrees anticlockwise as seen, which is how both QLineF and the path count.
  const qreal angle = run.angle();
  const auto about = [radius](QPointF at) {
    return QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius);
  };
  QPainterPath path;
  path.arcMoveTo(about(one), angle - kHalfTurn / 2);
  path.arcTo(about(one), angle - kHalfTurn / 2, kHalfTurn);
  path.arcTo(about(other), angle + kHalfTurn / 2, kHalfTurn);
  path.closeSubpath();
  return path;
}

QPainterPath arcOf(const DrawnPlace& place, const PrintMap& map) {
  const qreal radius = place.radius * map.scale();
  QPointF centre = map.toWidget(place.at);
  // On the pane Y runs down.
  if (place.onRim) centre -= radius * QPointF(place.bulges.x(), -place.bulges.y());
  const bool corner = place.bulges.x() != 0 && place.bulges.y() != 0;
  const double middle =
      std::atan2(place.bulges.y(), place.bulges.x()) * kHalfTurn / std::numbers::pi;
  const double span = corner ? kHalfTurn / 2 : kHalfTurn;
  const QRectF box(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius);
  QPainterPath path;
  path.arcMoveTo(box, middle - span / 2);
  path.arcTo(box, middle - span / 2, span);
  return path;
}

}  // namespace

QPainterPath outlineOf(const DrawnPlace& place, const PrintMap& map) {
  if (place.radius <= 0) return {};
  if (!place.half.isNull()) return slotAbout(place, map);
  if (!place.bulges.isNull()) return arcOf(place, map);
  return {};
}

std::vector<QLineF> rowLines(const DrawnFace& drawn, const PrintMap& map) {
  std::vector<QLineF> lines;
  const DrawnPlace* first = nullptr;
  const DrawnPlace* last = nullptr;
  const auto close = [&] {
    if (first != last) lines.emplace_back(map.toWidget(first->at), map.toWidget(last->at));
    first = last = nullptr;
  };
  // The holes of a row stand one behind the other in the part's order.
  for (const DrawnPlace& place : drawn.places) {
    const bool inRow = place.isOfRow() && !place.parked;
    if (first != nullptr && (!inRow || place.feature != first->feature)) close();
    if (!inRow) continue;
    if (first == nullptr) first = &place;
    last = &place;
  }
  close();
  return lines;
}

QPainterPath torn(const QLineF& line) {
  constexpr qreal kTear = 5;  // pixels: its teeth
  QPainterPath path(line.p1());
  const QPointF along = line.unitVector().p2() - line.p1();
  const QPointF across(-along.y(), along.x());
  const qreal length = line.length();
  int tooth = 0;
  for (qreal at = kTear; at < length - kTear; at += kTear) {
    path.lineTo(line.p1() + along * at + across * (++tooth % 2 == 0 ? 2.5 : -2.5));
  }
  path.lineTo(line.p2());
  return path;
}

}  // namespace inchwright::app
