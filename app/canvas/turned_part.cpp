#include "app/canvas/turned_part.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "app/base/look.h"
#include "app/session/desk.h"

namespace inchwright::app {
namespace {

using Vector = std::array<double, 3>;

constexpr double kThinnest =
    0.22;  // of the longest side: a sheet of brass is still seen as a block

std::size_t number(Axis axis) {
  return static_cast<std::size_t>(axis);
}

/// The axis a face looks along, and which way.
std::pair<Axis, double> normalOf(Face face) {
  switch (face) {
    case Face::top:
      return {Axis::z, 1};
    case Face::bottom:
      return {Axis::z, -1};
    case Face::front:
      return {Axis::y, -1};
    case Face::back:
      return {Axis::y, 1};
    case Face::left:
      return {Axis::x, -1};
    case Face::right:
      break;
  }
  return {Axis::x, 1};
}

/// The corner one looks from: from the front, the right and above, but for the face that is meant.
Vector cornerFor(Face face) {
  Vector corner{0.5, -0.75, 0.6};
  const auto [axis, way] = normalOf(face);
  corner[number(axis)] = way * std::abs(corner[number(axis)]);
  return corner;
}

/// What a corner of the block falls on as it is seen, before it is fitted to the box.
class Sight {
 public:
  explicit Sight(const Vector& from) {
    // Seen from there with Z upright.
    const double flat = std::hypot(from[0], from[1]);
    const double far = std::hypot(flat, from[2]);
    right_ = {-from[1] / flat, from[0] / flat, 0};
    up_ = {-from[0] * from[2] / flat / far, -from[1] * from[2] / flat / far, flat / far};
  }

  QPointF operator()(const Vector& at) const {
    const auto along = [&](const Vector& way) {
      return at[0] * way[0] + at[1] * way[1] + at[2] * way[2];
    };
    return {along(right_), -along(up_)};
  }

 private:
  Vector right_{}, up_{};
};

/// The four corners of a plane across an axis, at a share of the block's length.
QPolygonF planeOf(const TurnedPart& part, Axis axis, double share, const Sight& sight) {
  const std::size_t across = number(axis), one = (across + 1) % 3, other = (across + 2) % 3;
  QPolygonF corners;
  for (const auto& [a, b] : {std::pair(0, 0), std::pair(1, 0), std::pair(1, 1), std::pair(0, 1)}) {
    Vector at{};
    at[across] = share * part.size[across];
    at[one] = a * part.size[one];
    at[other] = b * part.size[other];
    corners << sight(at);
  }
  return corners;
}

struct Extent {
  double low = 0, high = 0;
};

/// Between the outermost edges across an axis that hang together with `group`, in ticks.
std::optional<Extent> extentAlong(const Desk& desk, Axis axis, int group) {
  std::optional<Extent> all;
  for (const Feature& feature : desk.part().features) {
    if (!feature.is<kind::Edge>() || axisOf(feature) != axis) continue;
    const Position* at = desk.solution().position(feature.id, axis);
    if (at == nullptr || at->group != group) continue;
    const double ticks = at->ticks.toDouble();
    if (!all) all = Extent{ticks, ticks};
    all->low = std::min(all->low, ticks);
    all->high = std::max(all->high, ticks);
  }
  return all && all->high > all->low ? all : std::nullopt;
}

std::optional<TurnedPart::Plane> planeAt(const Desk& desk, const Id& place) {
  const Feature* feature = desk.part().feature(place);
  const auto* edge = feature != nullptr ? feature->as<kind::Edge>() : nullptr;
  if (edge == nullptr) return std::nullopt;
  if (edge->side) return TurnedPart::Plane{edge->axis, outward(*edge->side) > 0 ? 1.0 : 0.0};
  const Position* own = desk.solution().position(place, edge->axis);
  if (own == nullptr) return std::nullopt;
  const auto all = extentAlong(desk, edge->axis, own->group);
  if (!all) return std::nullopt;
  return TurnedPart::Plane{edge->axis, (own->ticks.toDouble() - all->low) / (all->high - all->low)};
}

}  // namespace

TurnedPart turnedPart(const Desk& desk) {
  TurnedPart part;
  if (!desk.hasPart()) return part;
  std::array<std::optional<double>, 3> known;
  double longest = 0;
  for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
    if (const auto all = extentAlong(desk, axis, 0)) {
      known[number(axis)] = all->high - all->low;
      longest = std::max(longest, *known[number(axis)]);
    }
  }
  for (std::size_t i = 0; i < 3; ++i) {
    if (known[i]) part.size[i] = std::max(kThinnest, *known[i] / longest);
  }
  for (const Id& place : desk.selection().places) {
    if (const auto plane = planeAt(desk, place)) part.lit.push_back(*plane);
  }
  return part;
}

void paintTurned(QPainter& painter, const QRectF& box, const TurnedPart& part, Face face) {
  const Look& look = Look::now();
  const Vector from = cornerFor(face);
  const Sight sight(from);
  QPolygonF all;
  for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
    for (const double share : {0.0, 1.0}) all << planeOf(part, axis, share, sight);
  }
  const QRectF seen = all.boundingRect();
  const double scale = std::min(box.width() / seen.width(), box.height() / seen.height());
  QTransform fit;
  fit.translate(box.center().x(), box.center().y());
  fit.scale(scale, scale);
  fit.translate(-seen.center().x(), -seen.center().y());

  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const auto [own, way] = normalOf(face);
  for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
    const double share = from[number(axis)] > 0 ? 1 : 0;
    const QPolygonF plane = fit.map(planeOf(part, axis, share, sight));
    painter.setPen(QPen(look.pencil, 1, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    QColor wash = look.blue;
    wash.setAlpha(axis == own ? 110 : 0);
    painter.setBrush(blended(look.sheet, wash));
    painter.drawPolygon(plane);
  }
  painter.setPen(QPen(look.blue, 2.2));
  painter.setBrush(Qt::NoBrush);
  for (const TurnedPart::Plane& plane : part.lit) {
    painter.drawPolygon(fit.map(planeOf(part, plane.axis, plane.share, sight)));
  }
  painter.restore();
}

}  // namespace inchwright::app
