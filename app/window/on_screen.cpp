#include "app/window/on_screen.h"

#include <QApplication>
#include <QBoxLayout>
#include <QDialog>
#include <QFileDialog>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <algorithm>

namespace inchwright::app {
namespace {

constexpr QSize kFrame(8, 36);  // pixels: what a window manager puts about a window

/// Everything of a slip but the row at its foot goes onto a part that is scrolled; one without such
/// a row stays as it is.
void scroll(QDialog& slip) {
  auto* column = qobject_cast<QVBoxLayout*>(slip.layout());
  if (column == nullptr || column->count() < 2) return;
  QLayout* foot = column->itemAt(column->count() - 1)->layout();
  if (foot == nullptr) return;
  // Both are lost to what moves.
  QWidget* focused = slip.focusWidget();
  QPushButton* byEnter = nullptr;
  for (auto* button : slip.findChildren<QPushButton*>()) {
    if (button->isDefault()) byEnter = button;
  }
  const QMargins margins = column->contentsMargins();
  column->removeItem(foot);
  auto* area = new QScrollArea(&slip);
  auto* content = new QWidget(area);
  area->setFrameShape(QFrame::NoFrame);
  area->setFocusPolicy(Qt::NoFocus);
  area->setWidgetResizable(true);
  column->setContentsMargins(margins.left(), margins.top(), 6, 6);
  content->setLayout(column);
  area->setWidget(content);
  // Paper as the slip itself.
  area->viewport()->setAutoFillBackground(false);
  content->setAutoFillBackground(false);
  auto* all = new QVBoxLayout(&slip);
  all->setContentsMargins(0, 0, 0, margins.bottom());
  all->addWidget(area, 1);
  foot->setParent(nullptr);
  foot->setContentsMargins(margins.left(), 0, margins.right(), 0);
  all->addLayout(foot);
  if (byEnter != nullptr) byEnter->setDefault(true);
  if (focused != nullptr) focused->setFocus();
  // What the old layout held it to.
  slip.setMinimumSize(0, 0);
  all->activate();
}

class OnScreen : public QObject {
 public:
  using QObject::QObject;

  bool eventFilter(QObject* watched, QEvent* event) override {
    auto* slip = event->type() == QEvent::Show ? qobject_cast<QDialog*>(watched) : nullptr;
    if (slip != nullptr && !event->spontaneous() && qobject_cast<QFileDialog*>(slip) == nullptr) {
      fit(*slip);
    }
    return QObject::eventFilter(watched, event);
  }

 private:
  static void fit(QDialog& slip) {
    const QRect room = slip.screen()->availableGeometry();
    const QSize most = room.size() - kFrame;
    const QSize least = slip.minimumSizeHint();
    if (least.width() > most.width() || least.height() > most.height()) scroll(slip);
    const QSize size = slip.size().boundedTo(most);
    slip.resize(size);
    const QPoint at(
        std::clamp(slip.x(), room.left(),
                   std::max(room.left(), room.right() - size.width() - kFrame.width())),
        std::clamp(slip.y(), room.top(),
                   std::max(room.top(), room.bottom() - size.height() - kFrame.height())));
    if (at != slip.pos()) slip.move(at);
  }
};

}  // namespace

void keepSlipsOnScreen(QApplication& application) {
  static OnScreen* kept = nullptr;
  if (kept != nullptr) return;
  kept = new OnScreen(&application);
  application.installEventFilter(kept);
}

}  // namespace inchwright::app
