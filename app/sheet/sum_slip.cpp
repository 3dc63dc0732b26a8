#include "app/sheet/sum_slip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/sheet/triangle_picture.h"

namespace inchwright::app {
namespace {

constexpr int kAroundSum = 10;

}  // namespace

SumSlip::SumSlip(Work& work, QWidget* sheet)
    : QWidget(sheet),
      work_(work),
      title_(new QLabel(this)),
      zero_(new QLabel(this)),
      list_(new QListWidget(this)),
      held_(new QWidget(this)),
      triangle_(new TrianglePicture(held_)),
      heldWords_(new QLabel(held_)),
      remark_(new QLabel(this)) {
  setObjectName(QStringLiteral("sum"));
  setAccessibleName(tr("The sum behind a figure"));
  title_->setFont(deskFont(1.25));
  for (QLabel* label : {title_, zero_, heldWords_, remark_}) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
  }
  list_->setAccessibleName(tr("Reading by reading"));
  list_->setFont(figures(0.95));
  list_->setWordWrap(true);
  list_->setFrameShape(QFrame::NoFrame);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setAccessibleName(tr("Done with the sum"));
  auto* head = new QHBoxLayout;
  head->addWidget(title_, 1);
  head->addWidget(done, 0, Qt::AlignTop);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 18, 20, 20);
  column->addLayout(head);
  column->addWidget(zero_);
  column->addWidget(list_, 1);
  auto* beside = new QHBoxLayout(held_);
  beside->setContentsMargins(0, 6, 0, 0);
  beside->addWidget(triangle_);
  beside->addWidget(heldWords_, 1);
  column->addWidget(held_);
  column->addWidget(remark_);
  connect(done, &QPushButton::clicked, this, &QWidget::hide);
  connect(list_, &QListWidget::currentRowChanged, this, &SumSlip::light);
  connect(&work.desk(), &Desk::edited, this, &SumSlip::follow);
  connect(&work.desk(), &Desk::viewChanged, this, &SumSlip::follow);
  sheet->installEventFilter(this);
  hide();
}

void SumSlip::open(const Id& place, MachineAxis axis) {
  place_ = place;
  axis_ = axis;
  const auto sum = sumBehind(work_.desk(), place, axis);
  if (!sum.ok()) {
    hide();
    emit work_.desk().refused(coreWords(sum.error().text));
    return;
  }
  sum_ = *sum;
  title_->setText(sum_.title);
  zero_->setText(sum_.zero);
  const QSignalBlocker quiet(list_);
  list_->clear();
  for (const SumLine& line : sum_.lines) list_->addItem(line.text);
  held_->setVisible(!sum_.held.empty());
  if (!sum_.held.empty()) {
    triangle_->show(sum_.held.front());
    QStringList words;
    for (const HeldTriangle& one : sum_.held) words << one.words;
    heldWords_->setText(words.join(QStringLiteral("\n\n")));
  }
  remark_->setText(sum_.remark);
  remark_->setVisible(!sum_.remark.isEmpty());
  QPalette ink = palette();
  ink.setColor(QPalette::WindowText, Look::now().red);
  remark_->setPalette(ink);
  lie();
  show();
  raise();
  list_->setFocus(Qt::PopupFocusReason);
  // All of it is lit until one line is chosen.
  std::vector<Id> places, readings;
  for (const SumLine& line : sum_.lines) {
    for (const Id& one : line.places) {
      if (std::find(places.begin(), places.end(), one) == places.end()) places.push_back(one);
    }
    if (!line.reading.empty()) readings.push_back(line.reading);
  }
  work_.desk().select({std::move(places), std::move(readings)});
}

/// What the sum is of may be another now, or gone.
void SumSlip::follow() {
  if (!isVisible()) return;
  if (sumBehind(work_.desk(), place_, axis_).ok()) {
    open(place_, axis_);
  } else {
    hide();
  }
}

void SumSlip::light() {
  const auto row = static_cast<std::size_t>(list_->currentRow());
  if (row >= sum_.lines.size()) return;
  const SumLine& line = sum_.lines[row];
  work_.desk().select(
      {line.places, line.reading.empty() ? std::vector<Id>() : std::vector<Id>{line.reading}});
}

void SumSlip::lie() {
  const QRect room =
      parentWidget()->rect().adjusted(kAroundSum, kAroundSum, -kAroundSum, -kAroundSum);
  const int line = QFontMetrics(list_->font()).lineSpacing() + 6;
  const int triangle = sum_.held.empty() ? 0 : triangle_->sizeHint().height() + 12;
  const int wanted = line * (list_->count() + 1) + title_->sizeHint().height() + triangle + 90;
  setGeometry(QRect(room.topLeft(), QSize(room.width(), std::min(room.height(), wanted))));
}

bool SumSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize && isVisible()) lie();
  return QWidget::eventFilter(watched, event);
}

void SumSlip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    hide();
    return;
  }
  QWidget::keyPressEvent(event);
}

void SumSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(6, 6, -6, -6));
}

}  // namespace inchwright::app

#include "moc_sum_slip.cpp"
