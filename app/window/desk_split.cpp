#include "app/window/desk_split.h"

#include <QPainter>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

/// Bare desk with three small dents to take hold of.
class SplitGap : public QSplitterHandle {
 public:
  explicit SplitGap(Qt::Orientation way, QSplitter* parent) : QSplitterHandle(way, parent) {}

 protected:
  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), look.desk);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.onDesk);
    const QPointF middle = QRectF(rect()).center();
    const QPointF next = orientation() == Qt::Horizontal ? QPointF(0, 9) : QPointF(9, 0);
    for (int i = -1; i <= 1; ++i) painter.drawEllipse(middle + i * next, 1.8, 1.8);
  }
};

}  // namespace

DeskSplit::DeskSplit(Qt::Orientation way, QWidget* parent) : QSplitter(way, parent) {
  setHandleWidth(way == Qt::Horizontal ? 11 : 7);
  setChildrenCollapsible(false);
}

QSplitterHandle* DeskSplit::createHandle() {
  return new SplitGap(orientation(), this);
}

}  // namespace inchwright::app

#include "moc_desk_split.cpp"
