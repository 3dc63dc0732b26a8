#include "app/render/painting.h"

#include <QColor>
#include <QPainter>
#include <QPen>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QString>

#include "app/render/faces.h"
#include "core/sheet/font_tables.h"
#include "core/sheet/text_measure.h"

namespace inchwright::app {
namespace {

QColor colourOf(Ink ink) {
  switch (ink) {
    case Ink::black:
      return {0, 0, 0};
    case Ink::grey:
      return {110, 110, 110};
    case Ink::red:
      return {178, 34, 34};
    case Ink::blue:
      return {32, 78, 150};
    case Ink::white:
      return {255, 255, 255};
    case Ink::pale:
      break;
  }
  return {236, 236, 236};
}

QPen penOf(const Stroke& stroke) {
  QPen pen(colourOf(stroke.ink), stroke.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
  if (!stroke.dash.empty() && stroke.width > 0) {
    QList<qreal> pattern;  // in pen widths
    for (const double length : stroke.dash) pattern.append(length / stroke.width);
    pen.setDashPattern(pattern);
  }
  return pen;
}

template <class Item>
void setInks(QPainter& painter, const Item& item) {
  painter.setPen(item.stroked ? penOf(item.stroke) : QPen(Qt::NoPen));
  painter.setBrush(item.filled ? QBrush(colourOf(item.fill)) : QBrush(Qt::NoBrush));
}

void paint(QPainter& painter, const PolylineItem& item) {
  setInks(painter, item);
  QPolygonF points;
  for (const PaperPoint& point : item.points) points.append({point.x, point.y});
  if (item.closed) {
    painter.drawPolygon(points, Qt::OddEvenFill);
  } else {
    painter.drawPolyline(points);
  }
}

void paint(QPainter& painter, const CircleItem& item) {
  setInks(painter, item);
  const QRectF box(item.centre.x - item.radius, item.centre.y - item.radius, 2 * item.radius,
                   2 * item.radius);
  if (item.sweep >= 360) {
    painter.drawEllipse(box);
  } else {
    painter.drawArc(box, qRound(item.start * 16), qRound(item.sweep * 16));
  }
}

void paint(QPainter& painter, const TextItem& item) {
  const double scale = item.height / (kFigureHeight / 2000 * kFacePixels);
  const double width = textWidth(item.text, item.height, item.face);
  const double start = item.align == TextAlign::left     ? 0
                       : item.align == TextAlign::centre ? -width / 2
                                                         : -width;
  painter.save();
  painter.translate(item.at.x, item.at.y);
  painter.rotate(-item.turn);
  painter.translate(start, 0);
  painter.scale(scale, scale);
  painter.setFont(faceFont(item.face));
  painter.setPen(colourOf(item.ink));
  painter.drawText(QPointF(0, 0), QString::fromStdString(item.text));
  painter.restore();
}

}  // namespace

void paintPage(QPainter& painter, const Page& page) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (const DrawItem& item : page.items) {
    std::visit([&](const auto& one) { paint(painter, one); }, item);
  }
  painter.restore();
}

}  // namespace inchwright::app
