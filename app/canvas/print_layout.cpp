#include "app/canvas/print_layout.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/base/look.h"
#include "app/session/desk.h"
#include "app/session/plausible.h"

namespace inchwright::app {
namespace {

constexpr qreal kReach = 9;           // pixels: how near a click must fall
constexpr qreal kSmallPrint = 30;     // pixels an inch: below it nobody reads figures off the print
constexpr qreal kPrintsShare = 0.65;  // of the scale it would have without dimension lines

std::size_t readingsOf(const Part& part, Face face) {
  const auto axes = axesIn(face);
  return static_cast<std::size_t>(
      std::count_if(part.readings.begin(), part.readings.end(), [&](const Reading& one) {
        return one.kind == ReadingKind::along && (one.axis == axes[0] || one.axis == axes[1]);
      }));
}

qreal distanceTo(const DrawnPlace& place, const PrintMap& map, QPointF at) {
  const QPointF centre = map.toWidget(place.at);
  if (place.across) {
    return place.alongViewX ? std::abs(at.x() - centre.x()) : std::abs(at.y() - centre.y());
  }
  QPointF far = at - centre;
  if (!place.half.isNull()) {
    // From the nearest point of a slot's run.
    const QPointF half = map.toWidget(place.at + place.half) - centre;
    const qreal share = QPointF::dotProduct(far, half) / QPointF::dotProduct(half, half);
    far -= std::clamp(share, -1.0, 1.0) * half;
  }
  const qreal apart = std::hypot(far.x(), far.y());
  const bool pitchCircle = place.isPitchCircle();
  // Anywhere in a hole is the hole; of a pitch circle only its centre and its line are.
  const qreal radius = place.radius * map.scale();
  return pitchCircle ? std::min(apart, std::abs(apart - radius)) : std::max(apart - radius, 0.0);
}

std::pair<double, qreal> madeFor(const PrintMap& map) {
  return {map.scale(), QFontMetricsF(figures(1.0)).height()};
}

}  // namespace

PrintLayout::PrintLayout() {
  drawn_.bounds = QRectF(0, 0, 4, 3);
}

PrintLayout::PrintLayout(const Desk& desk, bool overPicture, double squaringError,
                         const PrintMap& map)
    : PrintLayout() {
  squaringError_ = squaringError;
  if (desk.hasPart()) {
    drawn_ = drawFace(desk.part(), desk.solution(), desk.face(), overPicture);
    readings_ = readingsOf(desk.part(), desk.face());
  }
  letter(desk, map);
}

PrintLayout::PrintLayout(PrintLayout&& before, const Desk& desk, const PrintMap& map)
    : drawn_(std::move(before.drawn_)),
      squaringError_(before.squaringError_),
      readings_(before.readings_) {
  letter(desk, map);
}

void PrintLayout::letter(const Desk& desk, const PrintMap& map) {
  made_ = madeFor(map);
  lettering_ = letteringFor(drawn_, readings_, map);
  if (!desk.hasPart()) return;
  lines_ = dimensionLines(desk.part(), desk.solution(), drawn_,
                          TracingEvidence(desk.part(), squaringError_),
                          lettering_.character / map.scale());
}

bool PrintLayout::suits(const PrintMap& map) const {
  return made_ == madeFor(map);
}

QRectF PrintLayout::figureBox(const DimensionLine& line, const PrintMap& map,
                              const QRectF& pane) const {
  return letteringOn(runOf(line, drawn_, map, lettering_), line, map, lettering_, pane);
}

PrintLayout::Hit PrintLayout::hit(QPointF at, const PrintMap& map, const QRectF& pane) const {
  for (const DimensionLine& line : lines_) {
    if (figureBox(line, map, pane).contains(at)) return {{}, line.reading};
  }
  Hit found;
  qreal nearest = kReach;
  bool edge = false;
  for (const DrawnPlace& place : drawn_.places) {
    const qreal distance = distanceTo(place, map, at);
    // A hole lies on top of the edges that cross it.
    const bool better = distance < nearest || (edge && !place.across && distance <= kReach / 2);
    if (!better || (place.across && !found.place.empty() && !edge)) continue;
    nearest = distance;
    edge = place.across.has_value();
    found.place = place.id;
  }
  return found;
}

PrintMap PrintLayout::fitted(const QRectF& content, const QSizeF& pane, qreal margin,
                             qreal covered) const {
  const PrintMap whole = PrintMap::fitting(content, pane, margin);
  int below = 0, beside = 0;
  for (const DimensionLine& line : lines_) {
    if (line.place) continue;
    int& most = line.alongViewX ? below : beside;
    most = std::max(most, line.level + 1);
  }
  const QRectF& view = drawn_.bounds;
  const qreal left = roomBeside(beside, lettering_);
  const qreal low = roomBelow(below, lettering_);
  const qreal wide = std::max(content.right() - view.left(), 1e-3);
  const qreal high = std::max(content.bottom() - view.top(), 1e-3);
  const qreal room =
      std::min((pane.width() - margin - left) / wide, (pane.height() - margin - low) / high);
  // Where even all of it is small, my figures wait beyond the edge rather than make it smaller.
  const qreal least = whole.scale() < kSmallPrint ? whole.scale() : kPrintsShare * whole.scale();
  const qreal scale = std::clamp(room, least, whole.scale());
  // From the near left corner of the view: what lies to each side of it.
  const qreal before = std::max((view.left() - content.left()) * scale + margin, left);
  const qreal under = std::max((view.top() - content.top()) * scale + margin, low);
  const qreal spareX = pane.width() - before - wide * scale - margin;
  const qreal gap = std::min(spareX, std::max(spareX / 2, covered));
  const qreal spareY = pane.height() - under - high * scale - margin;
  const QPointF corner(before + gap, margin + high * scale + std::max(0.0, spareY / 2));
  return {scale, {corner.x() - view.left() * scale, corner.y() + view.top() * scale}};
}

}  // namespace inchwright::app
