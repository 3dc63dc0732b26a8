#include "app/machine/stepwise_view.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/machine/fitting.h"

namespace inchwright::app {
namespace {

constexpr int kAside = 36;    // pixels beside everything
constexpr int kBetween = 14;  // and above and below the figures

}  // namespace

StepwiseView::StepwiseView(Desk& desk, const QString& title, QWidget* parent)
    : QWidget(parent, Qt::Window),
      desk_(desk),
      head_(new QLabel(this)),
      said_(new QLabel(this)),
      low_(new QWidget(this)),
      made_(new QPushButton(tr("&Size, pins, ways out …"), low_)),
      back_(new QPushButton(tr("← &Back"), low_)),
      next_(new QPushButton(tr("&Next →"), low_)),
      leave_(new QPushButton(tr("&Leave the machine"), this)) {
  setWindowTitle(title);
  setAccessibleName(title);
  setFocusPolicy(Qt::StrongFocus);
  connect(back_, &QPushButton::clicked, this, [this] { go(step() - 1); });
  connect(next_, &QPushButton::clicked, this, [this] { go(step() + 1); });
  connect(made_, &QPushButton::clicked, this, [this] { showMade(); });
  connect(leave_, &QPushButton::clicked, this, &QWidget::close);
}

void StepwiseView::layOut(QWidget* above, const std::function<void(QHBoxLayout&)>& between) {
  above_ = above;
  head_->setFont(forScreen(screen(), deskFont(1.4)));
  said_->setFont(forScreen(screen(), deskFont(1.4)));
  said_->setWordWrap(true);
  auto* top = new QHBoxLayout;
  top->addWidget(head_, 1);
  top->addWidget(leave_);
  auto* low = new QHBoxLayout(low_);
  low->setContentsMargins(0, 0, 0, 0);
  low->addWidget(back_);
  low->addStretch(1);
  between(*low);
  low->addWidget(made_);
  low->addStretch(1);
  low->addWidget(next_);
  for (QPushButton* button : findChildren<QPushButton*>()) {
    button->setFont(forScreen(screen(), deskFont(1.5)));
    button->setFocusPolicy(Qt::TabFocus);
    button->setAccessibleName(button->text().remove(QLatin1Char('&')));
  }
  auto* column = new QVBoxLayout(this);
  // However much there is to say: it never makes the window wider than the screen, with the figures
  // beyond its edge.
  column->setSizeConstraint(QLayout::SetNoConstraint);
  column->setContentsMargins(kAside, 22, kAside, 22);
  column->addLayout(top);
  column->addStretch(1);
  if (above != nullptr) column->addWidget(above);
  column->addWidget(said_);
  column->addWidget(low_);
}

QRectF StepwiseView::figuresBox() const {
  const qreal top = head_->geometry().bottom() + kBetween;
  const QWidget* below = above_ != nullptr ? above_ : said_;
  const qreal bottom = std::min(below->geometry().top(), low_->geometry().top()) - kBetween;
  return {kAside, top, width() - 2.0 * kAside, std::max(60.0, bottom - top)};
}

void StepwiseView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Space:
      return tickNext();
    case Qt::Key_Right:
    case Qt::Key_Down:
    case Qt::Key_PageDown:
      return go(step() + 1);
    case Qt::Key_Left:
    case Qt::Key_Up:
    case Qt::Key_PageUp:
      return go(step() - 1);
    case Qt::Key_Home:
      return go(firstStep());
    case Qt::Key_Escape:
      close();
      return;
    default:
      QWidget::keyPressEvent(event);
  }
  if (event->matches(QKeySequence::Undo)) desk_.undo();
  if (event->matches(QKeySequence::Redo)) desk_.redo();
}

void StepwiseView::mouseReleaseEvent(QMouseEvent* event) {
  if (!figuresBox().contains(event->position())) return;
  go(step() + (event->position().x() < width() / 2.0 ? -1 : 1));
}

}  // namespace inchwright::app

#include "moc_stepwise_view.cpp"
