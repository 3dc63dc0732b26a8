#include "app/canvas/picture_layer.h"

#include <QElapsedTimer>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "app/base/look.h"
#include "app/picture/line_snap.h"

namespace inchwright::app {
namespace {

constexpr int kTile = 256;       // device pixels
constexpr int kTileCache = 320;  // tiles: 80 MB
constexpr int kHurry = 4;        // milliseconds for new tiles in a frame of 16
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

/// Whole device pixels, so that tiles meet without a seam.
QPointF tileCorner(const PrintMap& map, qreal ratio) {
  const QPointF origin = map.toWidget(QPointF(0, 0));
  return {std::round(origin.x() * ratio) / ratio, std::round(origin.y() * ratio) / ratio};
}

}  // namespace

PictureLayer::PictureLayer() {
  tiles_.setMaxCost(kTileCache);
}

void PictureLayer::show(SquaredPicture picture) {
  shown_ = std::move(picture);
  forgetTiles();
}

void PictureLayer::clear() {
  shown_.reset();
  forgetTiles();
}

void PictureLayer::lieAt(QPointF at) {
  if (at == at_) return;
  at_ = at;
  forgetTiles();
}

void PictureLayer::forgetTiles() {
  tiles_.clear();
  before_ = {};
}

bool PictureLayer::setTone(const PictureTone& tone) {
  if (tone == tone_) return false;
  tone_ = tone;
  forgetTiles();
  return true;
}

QRectF PictureLayer::bounds() const {
  return shown_ ? shown_->bounds().translated(-at_) : QRectF();
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

void PictureLayer::followScale(const PrintMap& map, qreal ratio, bool hurried) {
  const std::tuple now{map.scale(), ratio, Look::now().dark};
  if (tilesFor_ == now) return;
  const bool onlyScale =
      std::tuple(std::get<0>(now), std::get<1>(tilesFor_), std::get<2>(tilesFor_)) == now;
  const bool something = !tiles_.isEmpty() || !before_.image.isNull();
  before_ = hurried && onlyScale && something ? lastSeen() : Seen{};
  tiles_.clear();
  tilesFor_ = now;
}

/// The tiles that cover a part of the widget; in a hurry what was never seen comes first.
std::vector<PictureLayer::Placed> PictureLayer::tilesIn(const QRectF& part, const PrintMap& map,
                                                        qreal ratio) const {
  const QPointF corner = tileCorner(map, ratio);
  const qreal side = kTile / ratio;
  const auto index = [side](qreal at) { return static_cast<int>(std::floor(at / side)); };
  const int right = index(part.right() - corner.x()), low = index(part.bottom() - corner.y());
  const QRectF seenBefore = map.toWidget(before_.inches);
  std::vector<Placed> wanted;
  for (int row = index(part.top() - corner.y()); row <= low; ++row) {
    for (int column = index(part.left() - corner.x()); column <= right; ++column) {
      const QRectF box(corner + QPointF(column * side, row * side), QSizeF(side, side));
      wanted.push_back({column, row, box, seenBefore.contains(box.intersected(part))});
    }
  }
  std::stable_partition(wanted.begin(), wanted.end(),
                        [](const Placed& one) { return !one.seenBefore; });
  return wanted;
}

bool PictureLayer::paint(QPainter& painter, const PrintMap& map, const QRectF& visible,
                         bool hurried) {
  if (!covers()) return true;
  QElapsedTimer time;
  time.start();
  const qreal ratio = painter.device()->devicePixelRatioF();
  followScale(map, ratio, hurried);
  const QRectF part = map.toWidget(bounds()).intersected(visible);
  paintedBy_ = map;
  painted_ = part;
  if (part.isEmpty()) return true;
  const std::vector<Placed> wanted = tilesIn(part, map, ratio);
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
    painter.drawImage(map.toWidget(before_.inches), before_.image);
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
  if (!shown_ || part.isEmpty() || size.isEmpty()) return {};
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
