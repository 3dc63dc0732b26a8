#include "app/window/paper_frame.h"

#include <QPainter>
#include <QVBoxLayout>

#include "app/base/look.h"

namespace inchwright::app {

void PaperFrame::hold(QWidget* content) {
  content_ = content;
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 4, 8, 7);
  column->addWidget(content);
}

void PaperFrame::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintPaperShadow(painter, content_->geometry());
  painter.fillRect(content_->geometry(), Look::now().slip);
}

}  // namespace inchwright::app

#include "moc_paper_frame.cpp"
