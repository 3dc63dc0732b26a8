#include "app/canvas/picture_layer.h"

#include <QElapsedTimer>
#include <QFileInfo>
#include <QTimer>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "app/base/look.h"
#include "app/canvas/line_snap.h"
#include "app/canvas/picture_decoder.h"
#include "app/session/picture_edits.h"
#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

constexpr int kTile = 256;           // device pixels
constexpr int kTileCache = 320;      // tiles: 80 MB
constexpr int kProgressEvery = 100;  // milliseconds
constexpr int kHurry = 4;            // milliseconds for new tiles in a frame of 16
constexpr qreal kSeenScale = 0.5;

/// For each value of a channel, what it is shown as between pencil and paper.
std::array<std::uint8_t, 256> tones(const PictureTone& tone, int pencil, int paper) {
  std::array<std::uint8_t, 256> shown{};
  const double slope = tone.contrast >= 0 ? 1 + tone.contrast / 25.0 : 1 + tone.contrast / 110.0;
  for (int value = 0; value < 256; ++value) {
    double white = ((value / 255.0) - 0.5) * slope + 0.5 + tone.brightness / 200.0;
    white = std::clamp(white, 0.0, 1.0);
    white += (1 - white) * tone.fade / 100.0;
    shown[static_cast<std::size_t>(value)] =
        static_cast<std::uint8_t>(std::lround(pencil + (paper - pencil) * white));
  }
  return shown;
}

QByteArray bytesOf(const PictureBytes& kept, const QString& file, QString& trouble) {
  if (!kept.empty()) {
    return QByteArray::fromRawData(kept.get().data(), static_cast<qsizetype>(kept.get().size()));
  }
  if (file.isEmpty()) {
    trouble = QStringLiteral("the link leads away from the document's folder");
    return {};
  }
  auto read = readWholeFile(file.toStdString(), kLargestPictureFile);
  if (read.ok()) return QByteArray::fromStdString(*read);
  trouble =
      QFileInfo(file).fileName() + QStringLiteral(": ") + QString::fromStdString(read.error().text);
  return {};
}

}  // namespace

PictureLayer::PictureLayer(Desk& desk, QObject* parent) : QObject(parent), desk_(desk) {
  tiles_.setMaxCost(kTileCache);
}

PictureLayer::~PictureLayer() {
  stop();
  if (thread_.joinable()) thread_.join();
}

std::optional<PictureLayer::Wanted> PictureLayer::lookUp(Showing showing) const {
  if (!desk_.hasPart()) return std::nullopt;
  const PictureView* view = showing == Showing::ofAnotherFace
                                ? squaredView(desk_.job(), desk_.part())
                                : viewOf(desk_.part(), desk_.face());
  const Picture* picture = view == nullptr ? nullptr : desk_.job().picture(view->picture);
  if (picture == nullptr) return std::nullopt;
  Wanted wanted{picture->data, {}, picture->page, {}, {}};
  if (!picture->file.empty()) wanted.file = linkedFile(desk_.file(), *picture);
  if (showing != Showing::asTaken) {
    wanted.points = picture->points;
    wanted.at = offsetOf(*view);
  }
  return wanted;
}

void PictureLayer::follow(Showing showing) {
  auto wanted = lookUp(showing);
  if (wanted == wanted_) return;
  // The same picture on another part of the sheet need not be read again.
  if (wanted && wanted_ && shown_ && !work_) {
    Wanted moved = *wanted_;
    moved.at = wanted->at;
    if (moved == *wanted) {
      wanted_ = std::move(wanted);
      forgetTiles();
      emit changed();
      return;
    }
  }
  wanted_ = std::move(wanted);
  stop();
  shown_.reset();
  forgetTiles();
  begin();
}

void PictureLayer::begin() {
  trouble_.clear();
  stopped_ = false;
  if (wanted_) {
    work_ = std::make_shared<WorkUnderWay>();
    if (mayRead_) start();
  }
  emit changed();
}

void PictureLayer::letRead() {
  if (std::exchange(mayRead_, true)) return;
  if (work_) start();
}

void PictureLayer::start() {
  // Nobody waits at the desk for what was stopped, but two pictures are never decoded at once.
  thread_ =
      std::thread([this, work = work_, wanted = *wanted_, before = std::move(thread_)]() mutable {
        if (before.joinable()) before.join();
        if (work->cancelled) return;
        QString trouble;
        std::optional<SquaredPicture> squared;
        const QByteArray bytes = bytesOf(wanted.bytes, wanted.file, trouble);
        if (trouble.isEmpty() && !work->cancelled) {
          auto image = decodePicture(bytes, wanted.page);
          if (image.ok()) {
            squared = squarePicture(std::move(image).value(), wanted.points, *work);
          } else {
            trouble = QString::fromStdString(image.error().text);
          }
        }
        // `this` outlives the thread, which its destructor waits for.
        QMetaObject::invokeMethod(
            this,
            [this, work, trouble,
             done = std::make_shared<std::optional<SquaredPicture>>(std::move(squared))] {
              arrived(work, std::move(*done), trouble);
            },
            Qt::QueuedConnection);
      });
  auto* beat = new QTimer(this);
  connect(beat, &QTimer::timeout, this, [this, beat, work = work_] {
    if (work_ != work) beat->deleteLater();
    emit changed();
  });
  beat->start(kProgressEvery);
}

void PictureLayer::stop() {
  if (work_) work_->cancelled = true;
  work_.reset();
}

void PictureLayer::arrived(const std::shared_ptr<WorkUnderWay>& work,
                           std::optional<SquaredPicture> picture, const QString& trouble) {
  if (work != work_) return;
  work_.reset();
  shown_ = std::move(picture);
  trouble_ = trouble;
  forgetTiles();
  emit changed();
}

std::optional<int> PictureLayer::progress() const {
  return work_ ? std::optional(work_->percent.load()) : std::nullopt;
}

void PictureLayer::cancel() {
  if (!work_) return;
  stop();
  stopped_ = true;
  emit changed();
}

void PictureLayer::resume() {
  if (stopped_) begin();
}

void PictureLayer::forgetTiles() {
  tiles_.clear();
  before_ = {};
}

void PictureLayer::setTone(const PictureTone& tone) {
  if (tone == tone_) return;
  tone_ = tone;
  forgetTiles();
  emit changed();
}

QRectF PictureLayer::bounds() const {
  if (!shown_ || !wanted_) return {};
  return shown_->bounds().translated(-wanted_->at);
}

/// `inches` is y up: its bottom() is drawn at the top of `target`.
void PictureLayer::draw(QPainter& painter, const QRectF& target, const QRectF& inches,
                        qreal perInch) const {
  std::size_t level = 0;
  double levelPerInch = shown_->pixelsPerInch;
  while (level + 1 < shown_->levels.size() && levelPerInch / 2 >= perInch) {
    ++level;
    levelPerInch /= 2;
  }
  const QImage& image = shown_->levels[level];
  // Levels are rounded up to whole pixels, so each has its own exact resolution.
  const QRectF all = bounds();
  const double across = image.width() / all.width(), up = image.height() / all.height();
  const QRectF source((inches.left() - all.left()) * across, (all.bottom() - inches.bottom()) * up,
                      inches.width() * across, inches.height() * up);
  painter.setRenderHint(QPainter::SmoothPixmapTransform, perInch < 3 * levelPerInch);
  painter.drawImage(target, image, source);
}

void PictureLayer::colour(QImage& image) const {
  const Look& look = Look::now();
  const auto red = tones(tone_, look.pencil.red(), look.print.red());
  const auto green = tones(tone_, look.pencil.green(), look.print.green());
  const auto blue = tones(tone_, look.pencil.blue(), look.print.blue());
  const int width = image.width(), height = image.height();
  for (int y = 0; y < height; ++y) {
    auto* pixel = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (QRgb* const end = pixel + width; pixel != end; ++pixel) {
      const QRgb from = *pixel;
      *pixel = 0xFF000000U | static_cast<QRgb>(red[from >> 16 & 0xFFU]) << 16 |
               static_cast<QRgb>(green[from >> 8 & 0xFFU]) << 8 | blue[from & 0xFFU];
    }
  }
}

QPixmap PictureLayer::tile(const PrintMap& map, qreal ratio, int column, int row) {
  if (const QPixmap* kept = tiles_.object({column, row})) return *kept;
  const qreal side = kTile / (map.scale() * ratio);  // inches
  const QRectF inches(column * side, -(row + 1) * side, side, side);
  QImage image(kTile, kTile, QImage::Format_RGB32);
  const QRectF part = inches.intersected(bounds());
  if (part != inches) image.fill(Qt::white);
  {
    QPainter painter(&image);
    const qreal scale = map.scale() * ratio;
    draw(painter,
         QRectF((part.left() - inches.left()) * scale, (inches.bottom() - part.bottom()) * scale,
                part.width() * scale, part.height() * scale),
         part, scale);
  }
  colour(image);
  auto* made = new QPixmap(QPixmap::fromImage(std::move(image)));
  made->setDevicePixelRatio(ratio);
  const QPixmap copy = *made;
  tiles_.insert({column, row}, made);
  return copy;
}

PictureLayer::Seen PictureLayer::lastSeen() const {
  const qreal ratio = std::get<1>(tilesFor_);
  const QSize size = (painted_.size() * ratio * kSeenScale).toSize();
  if (size.isEmpty()) return {};
  Seen seen{QImage(size, QImage::Format_RGB32), paintedBy_.toInches(painted_)};
  seen.image.fill(Look::now().print);
  QPainter painter(&seen.image);
  painter.scale(size.width() / painted_.width(), size.height() / painted_.height());
  painter.translate(-painted_.topLeft());
  if (!before_.image.isNull()) {
    painter.drawImage(paintedBy_.toWidget(before_.inches), before_.image);
  }
  const QPointF corner = paintedBy_.toWidget(QPointF(0, 0));
  const qreal side = kTile / ratio;
  for (const auto& [column, row] : tiles_.keys()) {
    const QRectF box(corner + QPointF(column * side, row * side), QSizeF(side, side));
    const QPixmap* kept = tiles_.object({column, row});
    if (kept != nullptr && box.intersects(painted_)) {
      painter.drawPixmap(box, *kept, QRectF(kept->rect()));
    }
  }
  return seen;
}

bool PictureLayer::covers() const {
  return shown_ && tone_.fade < 100;
}

QRect PictureLayer::covered(const PrintMap& map) const {
  if (!covers()) return {};
  const QRectF box = map.toWidget(bounds());
  return QRect(QPoint(static_cast<int>(std::ceil(box.left())) + 1,
                      static_cast<int>(std::ceil(box.top())) + 1),
               QPoint(static_cast<int>(std::floor(box.right())) - 2,
                      static_cast<int>(std::floor(box.bottom())) - 2));
}

bool PictureLayer::paint(QPainter& painter, const PrintMap& map, const QRectF& visible,
                         bool hurried) {
  if (!covers()) return true;
  QElapsedTimer time;
  time.start();
  const qreal ratio = painter.device()->devicePixelRatioF();
  const std::tuple now{map.scale(), ratio, Look::now().dark};
  if (tilesFor_ != now) {
    const bool onlyScale =
        std::tuple(std::get<0>(now), std::get<1>(tilesFor_), std::get<2>(tilesFor_)) == now;
    const bool something = !tiles_.isEmpty() || !before_.image.isNull();
    before_ = hurried && onlyScale && something ? lastSeen() : Seen{};
    tiles_.clear();
    tilesFor_ = now;
  }
  const QRectF part = map.toWidget(bounds()).intersected(visible);
  paintedBy_ = map;
  painted_ = part;
  if (part.isEmpty()) return true;
  // Whole device pixels, so that tiles meet without a seam.
  const QPointF origin = map.toWidget(QPointF(0, 0));
  const QPointF corner(std::round(origin.x() * ratio) / ratio,
                       std::round(origin.y() * ratio) / ratio);
  const qreal side = kTile / ratio;
  const auto index = [side](qreal at) { return static_cast<int>(std::floor(at / side)); };
  struct Placed {
    int column, row;
    QRectF box;
    bool seenBefore;
  };
  std::vector<Placed> wanted;
  const QRectF seenBefore = map.toWidget(before_.inches);
  for (int row = index(part.top() - corner.y()); row <= index(part.bottom() - corner.y()); ++row) {
    for (int column = index(part.left() - corner.x()); column <= index(part.right() - corner.x());
         ++column) {
      const QRectF box(corner + QPointF(column * side, row * side), QSizeF(side, side));
      wanted.push_back({column, row, box, seenBefore.contains(box.intersected(part))});
    }
  }
  // In a hurry what was never seen comes first.
  std::stable_partition(wanted.begin(), wanted.end(),
                        [](const Placed& one) { return !one.seenBefore; });
  const bool mayWait = hurried && !before_.image.isNull();
  std::vector<std::pair<QPointF, QPixmap>> made;
  for (const Placed& one : wanted) {
    const bool there = tiles_.contains({one.column, one.row});
    if (there || !mayWait || time.elapsed() < kHurry) {
      made.emplace_back(one.box.topLeft(), tile(map, ratio, one.column, one.row));
    }
  }
  const bool all = made.size() == wanted.size();
  if (all) {
    before_ = {};
  } else {
    for (const Placed& one : wanted) {
      if (!one.seenBefore) painter.fillRect(one.box, Look::now().print);
    }
    painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
    painter.drawImage(seenBefore, before_.image);
  }
  for (const auto& [at, pixmap] : made) painter.drawPixmap(at, pixmap);
  return all;
}

QPointF PictureLayer::snapped(QPointF inches, double reach) const {
  if (!shown_) return inches;
  const QRectF all = bounds();
  const double perInch = shown_->pixelsPerInch;
  const QPointF pixel((inches.x() - all.left()) * perInch, (all.bottom() - inches.y()) * perInch);
  const QPointF at = snapToLines(shown_->levels.front(), pixel, reach * perInch);
  return {all.left() + at.x() / perInch, all.bottom() - at.y() / perInch};
}

QImage PictureLayer::cut(const QRectF& inches, const QSize& size) const {
  const QRectF part = inches.intersected(bounds());
  if (!shown_ || part.isEmpty()) return {};
  QImage image(size, QImage::Format_RGB32);
  image.fill(Qt::white);
  const qreal scale = std::min(size.width() / inches.width(), size.height() / inches.height());
  {
    QPainter painter(&image);
    draw(painter,
         QRectF((part.left() - inches.left()) * scale, (inches.bottom() - part.bottom()) * scale,
                part.width() * scale, part.height() * scale),
         part, scale);
  }
  colour(image);
  return image;
}

}  // namespace inchwright::app

#include "moc_picture_layer.cpp"
