// The painted part of the view at the machine.

#include <QLabel>
#include <QPainter>
#include <algorithm>
#include <tuple>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/machine/fitting.h"
#include "app/machine/machine_view.h"
#include "app/machine/place_picture.h"

namespace inchwright::app {

void MachineView::paintEvent(QPaintEvent*) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), look.sheet);
  painter.setPen(look.pencil);
  if (const FirstStep* step = currentFirst()) {
    paintFirst(painter, *step);
  } else if (const TableRow* row = current()) {
    paintPlace(painter, *row);
  }
}

void MachineView::paintFirst(QPainter& painter, const FirstStep& step) const {
  const QRectF box = figuresBox();
  const QRectF heading(box.left(), box.top(), box.width(), box.height() * 0.24);
  const QString title = withWholeFigures(step.heading);
  painter.setFont(fittingLines(deskFont(), title, heading, std::max(72, mostFor(box))));
  painter.drawText(heading, static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap),
                   title);
  const QRectF rest(box.left(), heading.bottom() + 8, box.width(),
                    box.bottom() - heading.bottom() - 8);
  const QString lines = withWholeFigures(step.lines.join(QStringLiteral("\n")));
  painter.setFont(fittingLines(deskFont(), lines, rest, mostFor(rest)));
  painter.drawText(rest, static_cast<int>(Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap), lines);
}

void MachineView::paintPlace(QPainter& painter, const TableRow& row) const {
  const QRectF box = figuresBox();
  const QRectF left(box.left(), box.top(), box.width() * 0.26, box.height());
  const QString id = QString::fromStdString(row.id);
  const QRectF name(left.left(), left.top(), left.width(), left.height() * 0.36);
  painter.setFont(fitting(deskFont(), id, name.size()));
  painter.drawText(name, Qt::AlignCenter, id);
  const QString size = withWholeFigures(sizeOf(row));
  const QRectF below(left.left(), name.bottom(), left.width(), left.height() * 0.16);
  painter.setFont(fittingLines(deskFont(), size, below, std::max(40, mostFor(box) * 2 / 3)));
  painter.drawText(below, static_cast<int>(Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap),
                   size);
  const auto work = workAt(desk_.job(), desk_.part(), desk_.solution(), desk_.setup());
  if (work.ok()) {
    const QRectF rest(left.left(), below.bottom(), left.width(), left.bottom() - below.bottom());
    paintPlacePicture(painter, rest, *work, row.id);
  }
  paintFigures(painter,
               {left.right() + 20, box.top(), box.right() - left.right() - 20, box.height()}, row);
}

/// X and Y, and below them, as large, what makes them doubtful.
void MachineView::paintFigures(QPainter& painter, const QRectF& box, const TableRow& row) const {
  const bool byThese = goesByCoordinates(*row.plan);
  const QString doubt = !byThese                     ? tr("NOT BY THESE")
                        : row.disputed               ? tr("DISPUTED")
                        : desk_.solution().isDraft() ? tr("DRAFT")
                                                     : QString();
  const auto shown = [byThese](const Coordinate& at) {
    const QString figure = QString::fromStdString(signedText(at));
    return byThese ? figure : QLatin1Char('(') + figure + QLatin1Char(')');
  };
  const QString x = shown(row.x), y = shown(row.y);
  const QString letter = QStringLiteral("X ");
  const int lines = doubt.isEmpty() ? 2 : 3;
  const QSizeF room(box.width(), box.height() * 0.92 / lines);
  QFont font = fitting(deskFont(), letter + x, room);
  for (const QString& text : {letter + y, doubt}) {
    font.setPixelSize(std::min(font.pixelSize(), fitting(deskFont(), text, room).pixelSize()));
  }
  painter.setFont(font);
  // The letters stand below one another, and so do the ends of the figures.
  const QFontMetricsF metrics(painter.font());
  const qreal figure = std::max(metrics.horizontalAdvance(x), metrics.horizontalAdvance(y));
  const qreal letterAt = box.right() - figure - metrics.horizontalAdvance(letter);
  const qreal each = box.height() / lines;
  for (const auto& [name, text, top] : {std::tuple{QStringLiteral("X"), x, box.top()},
                                        std::tuple{QStringLiteral("Y"), y, box.top() + each}}) {
    const QRectF line(letterAt, top, box.right() - letterAt, each);
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, name);
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, text);
  }
  if (doubt.isEmpty()) return;
  painter.setPen(Look::now().red);
  painter.drawText(QRectF(box.left(), box.top() + 2 * each, box.width(), each),
                   Qt::AlignRight | Qt::AlignVCenter, doubt);
}

}  // namespace inchwright::app
