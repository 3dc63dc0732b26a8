#include "app/sheet/triangle_picture.h"

#include <QLineF>
#include <QPainter>
#include <algorithm>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr qreal kSpot = 3;  // pixels

/// Words about a spot, on a patch of paper, moved to stay within the picture.
void letter(QPainter& painter, QPointF about, const QString& text, const QRectF& pane) {
  const QFontMetricsF metrics(painter.font());
  QRectF box(QPointF(), QSizeF(metrics.horizontalAdvance(text) + 4, metrics.height()));
  box.moveCenter(about);
  box.translate(std::min(0.0, pane.right() - box.right()),
                std::min(0.0, pane.bottom() - box.bottom()));
  box.translate(std::max(0.0, pane.left() - box.left()), std::max(0.0, pane.top() - box.top()));
  painter.fillRect(box, Look::now().slip);
  painter.drawText(box, Qt::AlignCenter, text);
}

/// So far on from `at`, away from `other`.
QPointF awayFrom(QPointF other, QPointF at, qreal far) {
  const QLineF way(other, at);
  return way.length() > 0 ? at + (way.p2() - way.p1()) * (far / way.length()) : at;
}

}  // namespace

TrianglePicture::TrianglePicture(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize TrianglePicture::sizeHint() const {
  const int line = QFontMetrics(deskFont(0.85)).lineSpacing();
  return {line * 13, line * 9};
}

void TrianglePicture::show(const HeldTriangle& triangle) {
  triangle_ = triangle;
  QStringList words;
  for (const HeldTriangle::End& end : triangle.ends) {
    words << tr("from %1 %2 at %3").arg(end.name, end.apart, end.angle);
  }
  setAccessibleName(tr("%1 is held %2").arg(triangle.name, words.join(QStringLiteral(", "))));
  setVisible(!triangle.ends.empty());
  update();
}

void TrianglePicture::paintEvent(QPaintEvent*) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(deskFont(0.85));
  const qreal line = QFontMetricsF(painter.font()).height();
  // Inches with y up; the place held is 0, 0.
  QRectF all(-0.01, -0.01, 0.02, 0.02);
  const auto hold = [&all](QPointF at) {
    all |= QRectF(at - QPointF(0.01, 0.01), QSizeF(0.02, 0.02));
  };
  for (const HeldTriangle::End& end : triangle_.ends) hold(end.at);
  for (const QPointF& other : triangle_.others) hold(other);
  const QRectF pane = QRectF(rect()).adjusted(2, 2, -2, -2);
  const QRectF room = pane.adjusted(line * 1.6, line * 1.4, -line * 1.6, -line * 1.4);
  const qreal scale = std::min(room.width() / all.width(), room.height() / all.height());
  const auto shown = [&](QPointF at) {
    const QPointF off = (at - all.center()) * scale;
    return room.center() + QPointF(off.x(), -off.y());
  };
  const QPointF place = shown({0, 0});
  painter.setPen(QPen(look.faint, kFineLine, Qt::DashLine));
  for (const QPointF& other : triangle_.others) {
    for (const HeldTriangle::End& end : triangle_.ends)
      painter.drawLine(shown(end.at), shown(other));
    painter.drawEllipse(shown(other), kSpot * 1.5, kSpot * 1.5);
  }
  QPointF ends;
  for (const HeldTriangle::End& end : triangle_.ends) {
    const QPointF at = shown(end.at);
    ends += at / static_cast<qreal>(triangle_.ends.size());
    painter.setPen(QPen(look.blue, kFirmLine));
    painter.drawLine(at, place);
    painter.setBrush(look.pencil);
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(at, kSpot, kSpot);
    painter.setPen(look.pencil);
    letter(painter, awayFrom(place, at, line * 0.9), end.name, pane);
    const QPointF middle = (at + place) / 2;
    letter(painter, middle - QPointF(0, line * 0.5), end.apart, pane);
    painter.setPen(look.faint);
    letter(painter, middle + QPointF(0, line * 0.5), end.angle, pane);
  }
  painter.setBrush(look.blue);
  painter.setPen(Qt::NoPen);
  painter.drawEllipse(place, kSpot * 1.4, kSpot * 1.4);
  painter.setPen(look.blue);
  letter(painter, awayFrom(ends, place, line * 0.9), triangle_.name, pane);
}

}  // namespace inchwright::app
