#include "app/canvas/print_picture.h"

#include <QBuffer>
#include <QClipboard>
#include <QCursor>
#include <QFileInfo>
#include <QGuiApplication>
#include <QMimeData>
#include <QUrl>
#include <algorithm>
#include <utility>

#include "app/picture/kept_picture.h"
#include "app/picture/picture_decoder.h"
#include "app/session/picture_edits.h"
#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

constexpr double kLeastSaid = 0.005;  // inches: what is better than that needs no word

}  // namespace

PrintPicture::PrintPicture(Work& work, QObject* parent) : QObject(parent), work_(work) {
  Desk& desk = work.desk();
  connect(&desk, &Desk::edited, this, &PrintPicture::follow);
  connect(&desk, &Desk::viewChanged, this, &PrintPicture::follow);
  connect(&work, &Work::changed, this, &PrintPicture::follow);
  connect(&work, &Work::allLeft, this, &PrintPicture::stopOpened);
  connect(&reader_, &PictureReader::progressed, this, &PrintPicture::changed);
  connect(&reader_, &PictureReader::arrived, this, [this](std::shared_ptr<SquaredPicture> picture) {
    if (picture) take(std::move(picture));
    // Two pictures are decoded one after the other.
    behind_.letRead();
    emit changed();
  });
  connect(&behind_, &PicturesBehind::changed, this, [this] {
    tellError();
    emit changed();
  });
  connect(&work, &Work::offersWanted, this, [this] {
    offersAsked_ = true;
    findOffers();
  });
  connect(&offers_, &OfferReader::arrived, this, &PrintPicture::takeOffers);
  // The document may have been on the desk before.
  follow();
}

const Picture* PrintPicture::underFace() const {
  const Desk& desk = work_.desk();
  return desk.hasPart() ? pictureUnder(desk.job(), desk.part(), desk.face()) : nullptr;
}

void PrintPicture::letRead() {
  reader_.letRead();
  if (!reader_.progress()) behind_.letRead();
}

void PrintPicture::take(std::shared_ptr<const SquaredPicture> picture) {
  squaringError_ = squaringErrorOf(*picture, *wanted_);
  if (showing_ != Showing::ofAnotherFace) work_.noteAskew(picture->askew);
  tellError();
  layer_.show(*picture);
  picture_ = std::move(picture);
  // Whoever has just squared it up goes on to what is on it; else it is found when asked for.
  if (squared_ && showing_ == Showing::underFace) findOffers();
}

double PrintPicture::squaringError() const {
  return std::max(squaringError_, behind_.squaringError());
}

void PrintPicture::tellError() {
  work_.noteSquaringError(squaringError());
}

const PictureLayer& PrintPicture::layerAt(QPointF inches) const {
  const PictureLayer* behind = layer_.bounds().contains(inches) ? nullptr : behind_.layerAt(inches);
  return behind == nullptr ? layer_ : *behind;
}

bool PrintPicture::paint(QPainter& painter, const PrintMap& map, const QRectF& visible,
                         bool hurried) {
  const bool whole = behind_.paint(painter, map, visible, hurried);
  return layer_.paint(painter, map, visible, hurried) && whole;
}

QRegion PrintPicture::covered(const PrintMap& map) const {
  return behind_.covered(map) + layer_.covered(map);
}

void PrintPicture::findOffers() {
  const Desk& desk = work_.desk();
  const ViewSense sense = viewSense(desk.face());
  if (!wanted_ || wanted_->points.empty() || wanted_->turn != 0 || isBare() ||
      sense.firstReversed || sense.secondReversed) {
    emit work_.desk().refused(
        tr("a picture that is squared up and upright under the top, front or right face "
           "offers what is on it"));
    return;
  }
  offersTrouble_.clear();
  offersView_ = *viewOf(desk.part(), desk.face());
  const QPointF at = offsetOf(*offersView_);
  offers_.read(*wanted_, {at.x(), at.y()}, desk.job().unit, confirmedIn(desk.part(), desk.face()));
  emit changed();
}

void PrintPicture::takeOffers(const std::shared_ptr<PictureOffers>& offers,
                              const QString& trouble) {
  offersTrouble_ = trouble;
  if (offers && offers->offers.tooCoarse) {
    offersTrouble_ = tr("its lettering is too small: photograph each quarter by itself");
  }
  if (offers) work_.noteOffers(*offers);
  if (std::exchange(offersAsked_, false) && work_.offering() != nullptr) work_.goThroughOffers();
  emit changed();
}

std::optional<LaidPicture> PrintPicture::laidBy(const PictureView& view) const {
  const Desk& desk = work_.desk();
  const Picture* picture = desk.job().picture(view.picture);
  if (picture == nullptr) return std::nullopt;
  LaidPicture laid{{picture->data, {}, picture->page, picture->points, 0}, {}, picture->tone};
  if (!picture->file.empty()) laid.wanted.file = linkedFile(desk.file(), *picture);
  if (picture->points.empty() || showing_ == Showing::asTaken) {
    laid.wanted.points.clear();
    laid.wanted.turn = picture->turn;
  } else {
    laid.wanted.turn = uprightTurn(view);
  }
  if (showing_ != Showing::asTaken) laid.at = turnedBy(offsetOf(view), laid.wanted.turn);
  return laid;
}

std::optional<LaidPicture> PrintPicture::lookUp() const {
  const Desk& desk = work_.desk();
  if (!desk.hasPart()) return std::nullopt;
  const auto elsewhere = work_.viewShown();
  const PictureView* view = elsewhere ? &*elsewhere : viewOf(desk.part(), desk.face());
  return view == nullptr ? std::nullopt : laidBy(*view);
}

/// Only what is squared up lies where it belongs.
std::vector<LaidPicture> PrintPicture::lookUpBehind() const {
  std::vector<LaidPicture> behind;
  if (isBare() || !work_.desk().hasPart()) return behind;
  const auto views = viewsOf(work_.desk().part(), work_.desk().face());
  for (std::size_t i = 1; i < views.size(); ++i) {
    auto laid = laidBy(*views[i]);
    if (laid && laid->wanted.points.size() >= 2) behind.push_back(*std::move(laid));
  }
  return behind;
}

void PrintPicture::follow() {
  const bool had = wanted();
  const Showing before =
      std::exchange(showing_, work_.doing() == Doing::squaring      ? Showing::asTaken
                              : work_.doing() == Doing::placingView ? Showing::ofAnotherFace
                                                                    : Showing::underFace);
  noteSquaring(before);
  want(lookUp());
  behind_.want(lookUpBehind());
  followView();
  const Picture* under = underFace();
  setTone(under != nullptr ? under->tone : PictureTone());
  if (before != showing_ && !bounds().isNull()) emit turned();
  if (before == Showing::asTaken && squared_ && under != nullptr) tellSquared();
  if (had != this->wanted()) emit came();
}

void PrintPicture::tellSquared() {
  const PictureView& view = *viewOf(work_.desk().part(), work_.desk().face());
  const Picture& picture = *underFace();
  std::vector<std::pair<QPointF, QPointF>> points;
  for (const SquaringPoint& one : picture.points) {
    points.emplace_back(turnedBy(asTaken(one), picture.turn),
                        inView({one.x.value.toInches(), one.y.value.toInches()}, view));
  }
  emit squaredUp(points);
}

void PrintPicture::noteSquaring(Showing before) {
  const Picture* under = underFace();
  const bool other = before != showing_;
  if (other && showing_ == Showing::asTaken && under != nullptr) pointsBefore_ = under->points;
  // What was done to another document can't be taken back in this one.
  if (other || !work_.desk().canUndo()) squared_.reset();
  const bool wasSquaring = other && before == Showing::asTaken;
  if (wasSquaring && under != nullptr && under->points != pointsBefore_) {
    squared_ = work_.desk().job();
  }
}

void PrintPicture::want(std::optional<LaidPicture> laid) {
  const auto wanted = laid ? std::optional(laid->wanted) : std::nullopt;
  const bool same = wanted == wanted_;
  const QRectF lay = bounds();
  layer_.lieAt(laid ? laid->at : QPointF());
  if (same) {
    // The same picture on another part of the sheet need not be read again.
    if (lay != bounds()) emit changed();
    return;
  }
  auto read = std::exchange(picture_, nullptr);
  // Where there are several, this one is wanted behind another now.
  const Desk& desk = work_.desk();
  if (read && desk.hasPart() && viewsOf(desk.part(), desk.face()).size() > 1) {
    behind_.keep(*wanted_, std::move(read));
  }
  wanted_ = wanted;
  layer_.clear();
  stopped_ = false;
  squaringError_ = 0;
  work_.noteAskew({});
  work_.noteSquaringError(0);
  dropOffers();
  reader_.stop();
  if (read = wanted_ ? behind_.readOf(*wanted_) : nullptr; read) {
    take(std::move(read));
  } else if (wanted_) {
    reader_.read(*wanted_);
  }
  emit changed();
}

/// Offers lie where the view lay when they were looked for.
void PrintPicture::followView() {
  if (!offersView_) return;
  const Desk& desk = work_.desk();
  const PictureView* view = desk.hasPart() ? viewOf(desk.part(), offersView_->face) : nullptr;
  if (view == nullptr || *view != *offersView_) dropOffers();
}

void PrintPicture::dropOffers() {
  offers_.stop();
  offersView_.reset();
  offersAsked_ = false;
  offersTrouble_.clear();
  work_.noteOffers({});
}

void PrintPicture::setTone(const PictureTone& tone) {
  if (layer_.setTone(tone)) emit changed();
}

QString PrintPicture::note() const {
  if (const auto percent = progress()) {
    return wanted_ && !wanted_->points.empty()
               ? tr("Squaring up: %1 %  (Escape stops it)").arg(*percent)
               : tr("Reading the picture …");
  }
  if (stopped_) return tr("Squaring up was stopped; Ctrl+U does it after all");
  if (wanted_ && !reader_.trouble().isEmpty()) return tr("No picture: %1").arg(reader_.trouble());
  if (offers_.isReading()) return tr("Looking at what the print offers …  (Escape stops it)");
  if (!offersTrouble_.isEmpty()) return tr("Not all is offered: %1").arg(offersTrouble_);
  if (work_.offering() != nullptr && work_.doing() != Doing::offering) {
    return tr("The print offers %n place(s) and figure(s): Ctrl+G goes through them", nullptr,
              static_cast<int>(work_.offersWaiting()));
  }
  if (!behind_.trouble().isEmpty()) return tr("No picture: %1").arg(behind_.trouble());
  const bool squared = showing_ == Showing::underFace && squaringError() > kLeastSaid;
  const QString error =
      squared ? tr("Squared up to about %1 in").arg(squaringError(), 0, 'f', 2) : QString();
  const QString front = noteInFront();
  return error.isEmpty() || front.isEmpty() ? error + front : error + QStringLiteral("; ") + front;
}

/// Which of several pictures lies in front.
QString PrintPicture::noteInFront() const {
  const Desk& desk = work_.desk();
  if (showing_ != Showing::underFace || !desk.hasPart()) return {};
  const auto views = viewsOf(desk.part(), desk.face());
  if (views.size() < 2) return {};
  const QString name = QString::fromStdString(views.front()->picture);
  return wanted_ && wanted_->points.empty()
             ? tr("%1 lies in front and is not squared up yet: Ctrl+U").arg(name)
             : tr("%1 lies in front; Ctrl+Shift+F brings the next one").arg(name);
}

void PrintPicture::cancel() {
  if (!progress()) return;
  reader_.stop();
  stopped_ = true;
  emit changed();
}

void PrintPicture::takeBack() {
  cancel();
  Desk& desk = work_.desk();
  const auto squared = std::exchange(squared_, std::nullopt);
  if (squared && desk.job() == *squared && desk.canUndo()) desk.undo();
}

void PrintPicture::stopOpened() {
  if (offers_.isReading()) {
    offers_.stop();
    emit changed();
  }
  if (progress() && wanted_ && !wanted_->points.empty() && !squared_) cancel();
}

void PrintPicture::squareUp() {
  if (!stopped_) {
    work_.squareUp();
    return;
  }
  stopped_ = false;
  reader_.read(*wanted_);
  emit changed();
}

QString PrintPicture::fileIn(const QMimeData* mime) {
  for (const QUrl& url : mime->urls()) {
    if (url.isLocalFile() && looksLikePicture(url.toLocalFile())) return url.toLocalFile();
  }
  return {};
}

bool PrintPicture::lay(const QString& name, const QByteArray& bytes) {
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
  if (!mayLay_()) return false;
  auto next = layPicture(desk.job(), desk.partIndex(), desk.face(), name, kept->bytes);
  if (!next.ok()) {
    emit desk.refused(QString::fromStdString(next.error().text));
    return false;
  }
  desk.endMerge();
  emit laid();
  desk.apply(*std::move(next), tr("Lay the picture %1 underneath").arg(name));
  work_.squareUp();
  return true;
}

bool PrintPicture::takeFile(const QString& file) {
  const auto bytes = readWholeFile(file.toStdString(), kLargestPictureFile);
  if (!bytes.ok()) {
    emit work_.desk().refused(QString::fromStdString(bytes.error().text));
    return false;
  }
  return lay(QFileInfo(file).completeBaseName(),
             QByteArray::fromRawData(bytes->data(), static_cast<qsizetype>(bytes->size())));
}

bool PrintPicture::paste() {
  const QMimeData* mime = QGuiApplication::clipboard()->mimeData();
  if (mime == nullptr) return false;
  if (mime->hasImage()) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    qvariant_cast<QImage>(mime->imageData()).save(&buffer, "PNG");
    return lay(tr("pasted print"), bytes);
  }
  const QString file = fileIn(mime);
  return !file.isEmpty() && takeFile(file);
}

}  // namespace inchwright::app

#include "moc_print_picture.cpp"
