#include "app/window/tour_slip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

/// A broken pencil line around what is spoken of; lets the mouse through.
class Ring : public QWidget {
 public:
  explicit Ring(QWidget* parent) : QWidget(parent) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen(Look::now().blue, 3);
    pen.setDashPattern({5, 3});
    painter.setPen(pen);
    painter.drawRoundedRect(QRectF(rect()).adjusted(2, 2, -2, -2), 6, 6);
  }
};

}  // namespace

TourSlip::TourSlip(QWidget* ground)
    : QWidget(ground),
      steps_{{"print",
              tr("This is their print, with what was traced on it. Edges, holes and slots are put "
                 "down by a click; nothing is ever measured from a picture.")},
             {"strip",
              tr("Everything is typed here, in the print's own fractions: two places and a figure, "
                 "L A 3/8, is a reading. Below the line stands what was understood.")},
             {"sheet",
              tr("My sheet grows with every reading: the very pages that will hang at the machine, "
                 "with what the readout will show.")},
             {"doubts",
              tr("What does not add up, or is fixed by nothing, stands here until it is settled. "
                 "The print's own mistakes show up before anything is cut.")},
             {"ledger",
              tr("Which part, which setup, which face. A sheet with anything in doubt says DRAFT. "
                 "F5 sets zero, stock and machine; the sheet follows at once.")},
             {"sheet",
              tr("Ctrl+P prints, Ctrl+E writes a PDF, and F11 shows one place at a time in figures "
                 "to be read from across the shop. F1 names every key.")}},
      ring_(new Ring(ground)),
      count_(new QLabel(this)),
      text_(new QLabel(this)),
      back_(new QPushButton(tr("&Back"), this)),
      next_(new QPushButton(tr("&Next"), this)),
      skip_(new QPushButton(tr("S&kip the tour"), this)) {
  setObjectName(QStringLiteral("tour"));
  setAccessibleName(tr("The tour of a minute"));
  text_->setWordWrap(true);
  text_->setFont(deskFont(1.1));
  next_->setProperty("firm", true);
  auto* row = new QHBoxLayout;
  row->addWidget(count_, 1);
  row->addWidget(skip_);
  row->addWidget(back_);
  row->addWidget(next_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(26, 20, 26, 20);
  column->addWidget(text_, 1);
  column->addLayout(row);
  connect(next_, &QPushButton::clicked, this, [this] { go(step_ + 1); });
  connect(back_, &QPushButton::clicked, this, [this] { go(step_ - 1); });
  connect(skip_, &QPushButton::clicked, this, [this] { go(static_cast<int>(steps_.size())); });
  ground->installEventFilter(this);
  hide();
  ring_->hide();
}

void TourSlip::begin(const Places& places) {
  places_ = places;
  go(0);
}

void TourSlip::go(int step) {
  const int count = static_cast<int>(steps_.size());
  if (step >= count) {
    hide();
    ring_->hide();
    return;
  }
  step_ = std::max(0, step);
  text_->setText(steps_[step_].text);
  text_->setAccessibleName(steps_[step_].text);
  count_->setText(tr("%1 of %2").arg(step_ + 1).arg(count));
  back_->setEnabled(step_ > 0);
  next_->setText(step_ + 1 == count ? tr("&To work") : tr("&Next"));
  show();
  settle();
  next_->setFocus();
}

void TourSlip::settle() {
  QWidget* place = places_.value(steps_[step_].place);
  if (place == nullptr || !isVisible()) return;
  QWidget* ground = parentWidget();
  const QRect about(place->mapTo(ground, QPoint(0, 0)), place->size());
  ring_->setGeometry(about.adjusted(-4, -4, 4, 4));
  ring_->show();
  ring_->raise();
  const int width = fontMetrics().averageCharWidth() * 62;
  resize(width, std::max(heightForWidth(width), fontMetrics().lineSpacing() * 8));
  // Beside what it speaks of, and whole within the desk.
  QPoint at(about.center().x() - size().width() / 2, about.center().y() - size().height() / 2);
  if (about.height() < ground->height() / 2) {
    at.setY(about.top() > ground->height() / 2 ? about.top() - height() - 12 : about.bottom() + 12);
  } else {
    const bool toTheRight = ground->width() - about.right() > about.left();
    at.setX(toTheRight ? about.right() + 12 : about.left() - this->width() - 12);
  }
  at.setX(std::clamp(at.x(), 8, std::max(8, ground->width() - this->width() - 8)));
  at.setY(std::clamp(at.y(), 8, std::max(8, ground->height() - height() - 8)));
  move(at);
  raise();
}

void TourSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QRectF paper = QRectF(rect()).adjusted(8, 5, -8, -9);
  paintSlip(painter, paper);
  painter.setPen(QPen(Look::now().blue, kFirmLine));
  painter.drawLine(paper.topLeft(), paper.topRight());
}

void TourSlip::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Escape:
      go(static_cast<int>(steps_.size()));
      return;
    case Qt::Key_Right:
    case Qt::Key_Return:
    case Qt::Key_Enter:
      go(step_ + 1);
      return;
    case Qt::Key_Left:
      go(step_ - 1);
      return;
    default:
      QWidget::keyPressEvent(event);
  }
}

bool TourSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize && isVisible()) settle();
  return QWidget::eventFilter(watched, event);
}

}  // namespace inchwright::app

#include "moc_tour_slip.cpp"
