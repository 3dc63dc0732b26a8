#include "app/window/note_slip.h"

#include <QDesktopServices>
#include <QDir>
#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QUrl>

#include "app/base/look.h"
#include "app/base/spoken_english.h"

namespace inchwright::app {
namespace {

constexpr int kStays = 15'000;  // milliseconds

void openByDesktop(const QString& path) {
  QDesktopServices::openUrl(QUrl::fromLocalFile(path));
}

}  // namespace

NoteSlip::NoteSlip(QWidget* ground)
    : QWidget(ground),
      words_(new QLabel(this)),
      open_(new QPushButton(tr("Open it"), this)),
      folder_(new QPushButton(tr("Open its folder"), this)),
      away_(new QPushButton(tr("Good"), this)) {
  setObjectName(QStringLiteral("note"));
  words_->setTextFormat(Qt::PlainText);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(22, 10, 16, 14);
  row->addWidget(words_);
  for (QPushButton* button : {open_, folder_, away_}) {
    // It comes by itself, and may not take keys meant for something else.
    button->setFocusPolicy(Qt::NoFocus);
    row->addWidget(button);
  }
  connect(open_, &QPushButton::clicked, this, [this] { openByDesktop(file_); });
  connect(folder_, &QPushButton::clicked, this,
          [this] { openByDesktop(QFileInfo(file_).absolutePath()); });
  connect(away_, &QPushButton::clicked, this, &QWidget::hide);
  leave_.setSingleShot(true);
  connect(&leave_, &QTimer::timeout, this, &QWidget::hide);
  ground->installEventFilter(this);
  hide();
}

void NoteSlip::say(const QString& text) {
  show(text, {});
}

void NoteSlip::sayTrouble(const Error& error) {
  say(coreWords(error.text + (error.place.empty() ? "" : " (" + error.place + ")")));
}

void NoteSlip::sayWritten(const QStringList& files) {
  if (files.isEmpty()) return;
  const QString first = QDir::toNativeSeparators(files.front());
  show(
      files.size() == 1
          ? tr("Written to %1").arg(first)
          : tr("Written to %1 and %n more", nullptr, static_cast<int>(files.size()) - 1).arg(first),
      files.front());
}

QString NoteSlip::text() const {
  return isHidden() ? QString() : words_->toolTip();
}

void NoteSlip::show(const QString& text, const QString& file) {
  file_ = file;
  open_->setVisible(!file.isEmpty());
  folder_->setVisible(!file.isEmpty());
  words_->setToolTip(text);
  setAccessibleName(text);
  lie();
  QWidget::show();
  raise();
  leave_.start(kStays);
}

void NoteSlip::lie() {
  const int most = parentWidget()->width() * 9 / 10;
  words_->setText(words_->toolTip());
  adjustSize();
  // A long path loses its middle rather than its name.
  if (const int over = width() - most; over > 0) {
    words_->setText(words_->fontMetrics().elidedText(words_->toolTip(), Qt::ElideMiddle,
                                                     words_->width() - over));
    adjustSize();
  }
  move((parentWidget()->width() - width()) / 2, 6);
}

bool NoteSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize && isVisible()) lie();
  return QWidget::eventFilter(watched, event);
}

void NoteSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QRectF paper = QRectF(rect()).adjusted(8, 5, -8, -9);
  paintSlip(painter, paper);
  painter.setPen(QPen(Look::now().blue, kFirmLine));
  painter.drawLine(paper.topLeft(), paper.topRight());
}

}  // namespace inchwright::app

#include "moc_note_slip.cpp"
