#include "app/machine/tick_box.h"

#include <QPainter>

#include "app/base/look.h"

namespace inchwright::app {

QSize TickBox::sizeHint() const {
  const int side = fontMetrics().height();
  return {fontMetrics().horizontalAdvance(text()) + side * 2, side + 16};
}

void TickBox::paintEvent(QPaintEvent*) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const qreal side = fontMetrics().height() * 0.9;
  const QRectF box(3, (height() - side) / 2, side, side);
  painter.setPen(QPen(hasFocus() ? look.blue : look.pencil, hasFocus() ? 4 : 2));
  painter.drawRect(box);
  if (isChecked()) {
    painter.setPen(QPen(look.blue, side / 8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(QPolygonF{{box.left() + side * 0.2, box.center().y()},
                                   {box.left() + side * 0.42, box.bottom() - side * 0.18},
                                   {box.right() + side * 0.1, box.top() - side * 0.05}});
  }
  painter.setPen(look.pencil);
  painter.drawText(rect().adjusted(static_cast<int>(side * 1.5), 0, 0, 0),
                   Qt::AlignLeft | Qt::AlignVCenter, text());
}

}  // namespace inchwright::app
