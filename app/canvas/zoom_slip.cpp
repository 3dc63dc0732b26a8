#include "app/canvas/zoom_slip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr qreal kStep = 1.25;

}  // namespace

ZoomSlip::ZoomSlip(QWidget* sheet) : QWidget(sheet), percent_(new QPushButton(this)) {
  setObjectName(QStringLiteral("zoom"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(8, 5, 8, 9);
  row->setSpacing(0);
  const auto word = [this](QPushButton* button, const QString& text, const QString& hint) {
    button->setText(text);
    button->setToolTip(hint);
    button->setAccessibleName(hint);
    // The keys for this are Ctrl and + or -; tabbing need not stop here three times a sheet.
    button->setFocusPolicy(Qt::NoFocus);
    return button;
  };
  auto* farther = word(new QPushButton(this), QStringLiteral("−"), tr("Farther"));
  auto* nearer = word(new QPushButton(this), QStringLiteral("+"), tr("Nearer"));
  word(percent_, QStringLiteral("100 %"), tr("All of it"));
  percent_->setFixedWidth(percent_->fontMetrics().horizontalAdvance(QStringLiteral("0000 %")) + 14);
  row->addWidget(farther);
  row->addWidget(percent_);
  row->addWidget(nearer);
  connect(farther, &QPushButton::clicked, this, [this] { emit zoomed(1 / kStep); });
  connect(nearer, &QPushButton::clicked, this, [this] { emit zoomed(kStep); });
  connect(percent_, &QPushButton::clicked, this, &ZoomSlip::allWanted);
  sheet->installEventFilter(this);
  stay();
}

void ZoomSlip::show(int percent) {
  const QString text = tr("%1 %").arg(percent);
  if (percent_->text() != text) percent_->setText(text);
}

void ZoomSlip::stay() {
  adjustSize();
  move(parentWidget()->width() - width() - 2, parentWidget()->height() - height() - 2);
  raise();
}

bool ZoomSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize) stay();
  return QWidget::eventFilter(watched, event);
}

void ZoomSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(6, 4, -6, -7));
}

int percentOfPaper(qreal pixelsPerInch, const QWidget& widget) {
  return qRound(100 * pixelsPerInch / widget.logicalDpiX());
}

}  // namespace inchwright::app

#include "moc_zoom_slip.cpp"
