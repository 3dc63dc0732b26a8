#include "app/window/desk_split.h"

#include <QPainter>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

/// Bare desk with three small dents to take hold of.
class Gap : public QSplitterHandle {
 public:
  explicit Gap(QSplitter* parent) : QSplitterHandle(Qt::Horizontal, parent) {}

 protected:
  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), look.desk);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.faint);
    const QPointF middle = QRectF(rect()).center();
    for (int i = -1; i <= 1; ++i) painter.drawEllipse(middle + QPointF(0, 9 * i), 1.8, 1.8);
  }
};

}  // namespace

DeskSplit::DeskSplit(QWidget* parent) : QSplitter(Qt::Horizontal, parent) {
  setHandleWidth(11);
  setChildrenCollapsible(false);
}

QSplitterHandle* DeskSplit::createHandle() {
  return new Gap(this);
}

}  // namespace inchwright::app

#include "moc_desk_split.cpp"
