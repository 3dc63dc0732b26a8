// The print view and the picture underneath: taking one in, following it, looking closely at it.

#include <QBuffer>
#include <QClipboard>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QMimeData>
#include <QPainter>
#include <QShortcut>
#include <QTimer>
#include <QUrl>
#include <utility>

#include "app/base/look.h"
#include "app/canvas/kept_picture.h"
#include "app/canvas/picture_decoder.h"
#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

/// The first picture file among what is dropped or pasted; empty when there is none.
QString pictureIn(const QMimeData* mime) {
  for (const QUrl& url : mime->urls()) {
    if (url.isLocalFile() && looksLikePicture(url.toLocalFile())) return url.toLocalFile();
  }
  return {};
}

}  // namespace

void PrintView::followPicture() {
  const bool had = picture_.wanted();
  const auto showing = squaring()                            ? PictureLayer::Showing::asTaken
                       : work_.doing() == Doing::placingView ? PictureLayer::Showing::ofAnotherFace
                                                             : PictureLayer::Showing::underFace;
  const bool turned = showing_ != showing;
  const bool wasSquaring =
      std::exchange(showing_, showing) == PictureLayer::Showing::asTaken && turned;
  picture_.follow(showing);
  const Desk& desk = work_.desk();
  const Picture* under =
      desk.hasPart() ? pictureUnder(desk.job(), desk.part(), desk.face()) : nullptr;
  if (turned && squaring()) pointsBefore_ = under->points;
  // What was done to another document can't be taken back in this one.
  if (turned || !desk.canUndo()) squared_.reset();
  if (wasSquaring && under != nullptr && under->points != pointsBefore_) squared_ = desk.job();
  stop_->setEnabled(picture_.progress() && squared_);
  picture_.setTone(under != nullptr ? under->tone : PictureTone());
  // The same picture lies elsewhere now.
  if (turned && !picture_.bounds().isNull()) fit();
  if (had != picture_.wanted()) forgetLayout();
}

/// The desk is seen first and its picture read then; but a print that nobody sees waits for no
/// painting.
void PrintView::letReadUnseen() {
  auto* idle = new QTimer(this);
  idle->setSingleShot(true);
  connect(idle, &QTimer::timeout, this, [this, idle] {
    if (!isVisible()) picture_.letRead();
    idle->deleteLater();
  });
  idle->start(0);
}

/// A squaring up that is stopped is taken back: the work is as it was before.
void PrintView::stopSquaring() {
  picture_.cancel();
  Desk& desk = work_.desk();
  const auto squared = std::exchange(squared_, std::nullopt);
  if (squared && desk.job() == *squared && desk.canUndo()) desk.undo();
}

/// What was squared up before the document was opened stays so in it.
void PrintView::stopOpened() {
  if (picture_.progress() && picture_.squaresUp() && !squared_) picture_.cancel();
}

void PrintView::squareUp() {
  if (picture_.stopped()) {
    picture_.resume();
  } else {
    work_.squareUp();
  }
}

/// The second reading looks at the print itself, close up.
void PrintView::enlarge(const std::vector<Id>& places) {
  QRectF box;
  for (const Id& id : places) {
    const DrawnPlace* place = drawn().find(id);
    if (place == nullptr) continue;
    const QPointF at = place->across
                           ? (place->alongViewX ? QPointF(place->at.x(), content().center().y())
                                                : QPointF(content().center().x(), place->at.y()))
                           : place->at;
    box = box.united(QRectF(at.x() - 0.3, at.y() - 0.3, 0.6, 0.6));
  }
  if (box.isNull()) return;
  setMap(PrintMap::fitting(box, size(), 40));
  fitted_ = false;
}

void PrintView::paintNote(QPainter& painter) {
  QString note;
  if (const auto percent = picture_.progress()) {
    note = picture_.squaresUp() ? tr("Squaring up: %1 %  (Escape stops it)").arg(*percent)
                                : tr("Reading the picture …");
  } else if (picture_.stopped()) {
    note = tr("Squaring up was stopped; Ctrl+U does it after all");
  } else if (!picture_.trouble().isEmpty()) {
    note = tr("No picture: %1").arg(picture_.trouble());
  }
  if (note.isEmpty()) return;
  painter.setFont(deskFont());
  const QFontMetricsF metrics(painter.font());
  const QRectF box(12, 12, metrics.horizontalAdvance(note) + 16, metrics.height() + 8);
  painter.fillRect(box, Look::now().slip);
  painter.setPen(Look::now().pencil);
  painter.drawText(box, Qt::AlignCenter, note);
}

/// On bare paper: how a print comes onto it.
void PrintView::paintInvitation(QPainter& painter) {
  painter.setFont(deskFont());
  painter.setPen(Look::now().faint);
  painter.drawText(QRectF(rect()).adjusted(30, 30, -30, -30), Qt::AlignCenter | Qt::TextWordWrap,
                   tr("Drop a picture of their print here, or lay one underneath with Ctrl+L.\n"
                      "Or trace on the bare paper: Alt+T, and a click for each place."));
}

bool PrintView::lay(const QString& name, const QByteArray& bytes) {
  Desk& desk = work_.desk();
  const auto readable = checkPicture(bytes);
  if (!readable.ok()) {
    emit desk.refused(QString::fromStdString(readable.error().text));
    return false;
  }
  QGuiApplication::setOverrideCursor(Qt::WaitCursor);
  const auto kept = keptPicture(bytes);
  QGuiApplication::restoreOverrideCursor();
  if (!kept.ok()) {
    emit desk.refused(QString::fromStdString(kept.error().text));
    return false;
  }
  auto next = layPicture(desk.job(), desk.partIndex(), desk.face(), name, *kept);
  if (!next.ok()) {
    emit desk.refused(QString::fromStdString(next.error().text));
    return false;
  }
  desk.endMerge();
  pictureSeen_ = false;
  desk.apply(*std::move(next), tr("Lay the picture %1 underneath").arg(name));
  work_.squareUp();
  return true;
}

bool PrintView::takePicture(const QString& file) {
  const auto bytes = readWholeFile(file.toStdString(), kLargestPictureFile);
  if (!bytes.ok()) {
    emit work_.desk().refused(QString::fromStdString(bytes.error().text));
    return false;
  }
  return lay(QFileInfo(file).completeBaseName(),
             QByteArray::fromRawData(bytes->data(), static_cast<qsizetype>(bytes->size())));
}

bool PrintView::paste() {
  const QMimeData* mime = QGuiApplication::clipboard()->mimeData();
  if (mime == nullptr) return false;
  if (mime->hasImage()) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    qvariant_cast<QImage>(mime->imageData()).save(&buffer, "PNG");
    return lay(tr("pasted print"), bytes);
  }
  const QString file = pictureIn(mime);
  return !file.isEmpty() && takePicture(file);
}

void PrintView::dragEnterEvent(QDragEnterEvent* event) {
  if (!pictureIn(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void PrintView::dropEvent(QDropEvent* event) {
  const QString file = pictureIn(event->mimeData());
  if (!file.isEmpty() && takePicture(file)) event->acceptProposedAction();
}

}  // namespace inchwright::app
