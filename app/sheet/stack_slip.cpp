#include "app/sheet/stack_slip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "app/sheet/stack_bars.h"

namespace inchwright::app {
namespace {

constexpr int kAroundSlip = 10;

}  // namespace

StackSlip::StackSlip(Work& work, QWidget* sheet)
    : QWidget(sheet),
      work_(work),
      title_(new QLabel(this)),
      gaps_(new QWidget(this)),
      gapColumn_(new QVBoxLayout(gaps_)),
      scroll_(new QScrollArea(this)),
      content_(new QWidget),
      bars_(new StackBars(content_)),
      words_(new QLabel(content_)) {
  setObjectName(QStringLiteral("stack"));
  setAccessibleName(tr("Stack"));
  title_->setFont(deskFont(1.25));
  title_->setTextFormat(Qt::PlainText);
  title_->setWordWrap(true);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setAccessibleName(tr("Done with the stack"));
  connect(done, &QPushButton::clicked, this, [this] { work_.look(); });
  auto* head = new QHBoxLayout;
  head->addWidget(title_, 1);
  head->addWidget(done, 0, Qt::AlignTop);
  gapColumn_->setContentsMargins(0, 0, 0, 0);
  auto* below = new QVBoxLayout(content_);
  below->setContentsMargins(0, 0, 0, 0);
  below->addWidget(bars_);
  below->addWidget(words_);
  below->addStretch(1);
  scroll_->setWidget(content_);
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setAccessibleName(tr("The stack as bars"));
  scroll_->viewport()->setAutoFillBackground(false);
  content_->setAutoFillBackground(false);
  words_->setWordWrap(true);
  words_->setTextFormat(Qt::PlainText);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  words_->setAccessibleName(tr("What the stack means"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 18, 22, 20);
  column->addLayout(head);
  column->addWidget(gaps_);
  column->addWidget(scroll_, 1);
  sheet->installEventFilter(this);
  connect(&work_, &Work::changed, this, &StackSlip::follow);
  follow();
}

void StackSlip::follow() {
  const bool stacking = work_.doing() == Doing::stacking && work_.desk().hasPart();
  if (!stacking) {
    hide();
    return;
  }
  const auto now = work_.stacked();
  gaps_->setVisible(!now && !work_.desk().job().gaps.empty());
  if (!now) {
    showGaps();
    title_->setText(tr("Point at the two ends on their print"));
    bars_->show(std::nullopt);
    words_->clear();
  } else if (!now->ok()) {
    title_->setText(tr("Nothing to add up"));
    bars_->show(std::nullopt);
    words_->setText(QString::fromStdString(now->error().text));
  } else {
    title_->setText(now->value().title);
    words_->setText(now->value().remarks.join(QLatin1Char('\n')));
    bars_->show(now->value());
  }
  scroll_->setVisible(now.has_value());
  lie();
  show();
  raise();
}

void StackSlip::showGaps() {
  while (QLayoutItem* item = gapColumn_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  auto* word = new QLabel(tr("or take a gap:"), gaps_);
  gapColumn_->addWidget(word);
  for (const Gap& gap : work_.desk().job().gaps) {
    const QString name = QString::fromStdString(gap.name);
    auto* button =
        new QPushButton(QString(name).replace(QLatin1Char('&'), QStringLiteral("&&")), gaps_);
    button->setAccessibleName(tr("Gap %1").arg(name));
    // Taking it takes the buttons away, this one included.
    connect(
        button, &QPushButton::clicked, this, [this, name] { work_.enter(name); },
        Qt::QueuedConnection);
    gapColumn_->addWidget(button, 0, Qt::AlignLeft);
  }
}

void StackSlip::lie() {
  const QRect room =
      parentWidget()->rect().adjusted(kAroundSlip, kAroundSlip, -kAroundSlip, -kAroundSlip);
  const int tall = scroll_->isVisibleTo(this)
                       ? room.height()
                       : std::min(room.height(), layout()->sizeHint().height());
  setGeometry(QRect(room.left(), room.top(), room.width(), tall));
}

bool StackSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize) lie();
  return QWidget::eventFilter(watched, event);
}

void StackSlip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    work_.back();
    return;
  }
  QWidget::keyPressEvent(event);
}

void StackSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(6, 6, -6, -6));
}

}  // namespace inchwright::app

#include "moc_stack_slip.cpp"
