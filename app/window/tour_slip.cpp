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

TourSlip::TourSlip(Work& work, QWidget* ground)
    : QWidget(ground),
      work_(work),
      steps_(makeSteps()),
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
  connect(&work.desk(), &Desk::edited, this, &TourSlip::follow);
  ground->installEventFilter(this);
  hide();
  ring_->hide();
}

std::vector<TourSlip::Step> TourSlip::makeSteps() const {
  return {
      {"print",
       tr("Their print lies on the left. Trace a hole: Alt and 2, a click on any hole of the "
          "picture, then its name and size, W 1/8, and Enter."),
       [this] { return countNow().features > before_.features; }},
      {"strip",
       tr("Everything is typed here, as the print letters it. Read one figure: two places and "
          "what stands between them, L W 2 1/4, and Enter."),
       [this] { return countNow().readings > before_.readings; }},
      {"strip",
       tr("Prints are wrong now and then, and so are eyes. Misread one on purpose: A B 2, and "
          "Enter; the print says 3."),
       [this] { return countNow().clashes > 0; }},
      {"doubts",
       tr("It no longer adds up, and here stands which figure is likely to blame. Find the slip: "
          "choose the figure that was misread, and press Enter to read it right."),
       [this] { return countNow().clashes == 0; }},
      {"print",
       tr("Set zero where you will find it at the machine: Alt and Z, a click on hole A, and "
          "Enter. My sheet follows at once."),
       [this] { return countNow().zero != before_.zero; }},
      {"sheet",
       tr("This sheet will hang at the machine, with what the readout will show. A click on a "
          "figure opens the sum behind it; Ctrl+P prints. F1 names every key.")}};
}

TourSlip::Counts TourSlip::countNow() const {
  const Desk& desk = work_.desk();
  if (!desk.hasPart()) return {};
  return {desk.part().features.size(), desk.part().readings.size(), desk.solution().clashes.size(),
          desk.setup().zero};
}

void TourSlip::follow() {
  if (!isVisible()) return;
  const Step& now = steps_[static_cast<std::size_t>(step_)];
  if (now.done && now.done()) go(step_ + 1);
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
  before_ = countNow();
  text_->setText(steps_[step_].text);
  text_->setAccessibleName(steps_[step_].text);
  count_->setText(tr("%1 of %2").arg(step_ + 1).arg(count));
  back_->setEnabled(step_ > 0);
  next_->setText(step_ + 1 == count ? tr("&To work") : tr("&Next"));
  show();
  settle();
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
