#include "app/canvas/print_sight.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/session/picture_edits.h"
#include "core/part/plain_decimal.h"

namespace inchwright::app {
namespace {

constexpr int kStill = 200;  // milliseconds after which a hand no longer moves the print

QRectF squareAbout(QPointF at, qreal reach) {
  return {at.x() - reach, at.y() - reach, 2 * reach, 2 * reach};
}

}  // namespace

PrintSight::PrintSight(Work& work, PrintPicture& picture, QObject* parent)
    : QObject(parent), work_(work), picture_(picture), covered_([] { return 0.0; }) {
  Desk& desk = work.desk();
  connect(&desk, &Desk::edited, this, &PrintSight::forgetLayout);
  connect(&desk, &Desk::viewChanged, this, [this] {
    staysStill_ = false;
    forgetLayout();
    fit();
    emit moved();
  });
  connect(&picture, &PrintPicture::turned, this, &PrintSight::fit);
  connect(&picture, &PrintPicture::came, this, &PrintSight::forgetLayout);
  connect(&picture, &PrintPicture::laid, this, [this] { pictureSeen_ = false; });
  connect(&picture, &PrintPicture::squaredUp, this, &PrintSight::stayStill);
  connect(&picture, &PrintPicture::changed, this, [this] {
    const bool seen = !picture_.bounds().isNull();
    // The close look of the second reading stays where it is when its picture arrives late.
    if (seen && !pictureSeen_ && !staysStill_ && work_.doing() != Doing::rereading) fit();
    pictureSeen_ = seen;
    if (seen) staysStill_ = false;
    // What the tracing can say hangs on how well the picture is squared up.
    if (std::exchange(squaringError_, picture_.squaringError()) != squaringError_) {
      layout_.reset();
      emit changed();
    }
  });
}

void PrintSight::setPane(const QSizeF& pane) {
  pane_ = pane;
  if (fitted_ || map_ == PrintMap()) fit();
}

const PrintLayout& PrintSight::layout() const {
  const Desk& desk = work_.desk();
  if (!layout_) {
    layout_.emplace(desk, picture_.wanted(), picture_.squaringError(), map_);
  } else if (!layout_->suits(map_)) {
    layout_ = PrintLayout(std::move(*layout_), desk, map_);
  }
  return *layout_;
}

void PrintSight::forgetLayout() {
  layout_.reset();
  if (fitted_) fit();
  emit changed();
}

void PrintSight::setMap(const PrintMap& map) {
  if (map == map_) return;
  map_ = map;
  emit moved();
}

void PrintSight::moveByHand(const PrintMap& map) {
  moved_.start();
  fitted_ = false;
  setMap(map);
}

bool PrintSight::isMoving() const {
  return moved_.isValid() && moved_.elapsed() < kStill;
}

/// What there is to see: the picture, or what is traced.
QRectF PrintSight::content() const {
  const QRectF picture = picture_.bounds();
  if (picture_.isBare()) return picture.isNull() ? QRectF(0, 0, 4, 3) : picture;
  return picture.isNull() ? layout().drawn().bounds : picture;
}

PrintMap PrintSight::fittedMap() const {
  const QRectF all = content();
  const qreal margin = picture_.bounds().isNull() ? 34 : 8;
  const qreal covered = covered_();
  if (!picture_.isBare()) return layout().fitted(all, pane_, margin, covered);
  const PrintMap whole = PrintMap::fitting(all, pane_, margin);
  const QRectF lies = whole.toWidget(all);
  const qreal room = std::max(0.0, pane_.width() - margin - lies.right());
  return whole.moved({std::clamp(covered - lies.left(), 0.0, room), 0});
}

void PrintSight::fit() {
  if (pane_.isEmpty()) return;  // not on the desk yet: its size comes with that
  // How figures are lettered and stacked depends on the scale, and the scale on the room for them.
  for (int i = 0; i < 3; ++i) {
    const PrintMap next = fittedMap();
    const bool steady = std::abs(next.scale() - map_.scale()) < 0.002 * map_.scale();
    setMap(next);
    if (steady) break;
  }
  fitted_ = true;
}

void PrintSight::lookAt(QPointF inches, qreal scale) {
  setMap({std::clamp(scale, PrintMap::kSmallestScale, PrintMap::kLargestScale),
          pane().center() - QPointF(inches.x(), -inches.y()) * scale});
  fitted_ = false;
  // Its picture may come later, and comes where it lay.
  staysStill_ = picture_.bounds().isNull();
}

void PrintSight::fitToSelection() {
  QRectF box;
  for (const Id& id : work_.desk().selection().places) {
    const DrawnPlace* place = layout().drawn().find(id);
    if (place != nullptr) {
      box = box.united(squareAbout(place->at, std::max(place->radius * 2, 0.25)));
    }
  }
  if (box.isNull()) {
    fit();
    return;
  }
  setMap(PrintMap::fitting(box, pane_, 60));
  fitted_ = false;
}

void PrintSight::stayStill(const std::vector<std::pair<QPointF, QPointF>>& points) {
  QPointF here, there;  // their middle on the pane, and in inches
  const auto count = static_cast<qreal>(points.size());
  for (const auto& [taken, inch] : points) {
    here += map_.toWidget(taken) / count;
    there += inch / count;
  }
  qreal pixels = 0, inches = 0;
  for (const auto& [taken, inch] : points) {
    const QPointF pixel = map_.toWidget(taken) - here;
    pixels += std::hypot(pixel.x(), pixel.y());
    inches += std::hypot(inch.x() - there.x(), inch.y() - there.y());
  }
  if (!(pixels > 0) || !(inches > 0)) return;
  const qreal scale =
      std::clamp(pixels / inches, PrintMap::kSmallestScale, PrintMap::kLargestScale);
  setMap({scale, here - QPointF(there.x(), -there.y()) * scale});
  fitted_ = false;
  staysStill_ = true;
}

void PrintSight::bringIntoSight(const std::vector<Id>& places, const std::vector<Id>& readings) {
  if (work_.doing() == Doing::rereading && picture_.wanted()) {
    const Reading* reading =
        readings.empty() ? nullptr : work_.desk().part().reading(readings.front());
    const auto cut = reading == nullptr ? std::nullopt : cutWithFigure(*reading);
    if (cut) {
      setMap(PrintMap::fitting(*cut, pane_, 20));
      fitted_ = false;
    } else {
      enlarge(places);
    }
    return;
  }
  QRectF box;
  for (const Id& id : places) {
    if (const auto at = whereIs(id)) box = box.united(squareAbout(*at, 20));
  }
  if (!box.isNull() && !pane().intersects(box)) {
    setMap(map_.moved(pane().center() - box.center()));
    fitted_ = false;
  }
  emit changed();
}

/// The cut of the print that holds the figure itself: about the figure where its place is known;
/// else all that lies between the ends, far enough to both sides for its dimension line.
std::optional<QRectF> PrintSight::cutWithFigure(const Reading& reading) const {
  constexpr qreal kAboutFigure = 0.5, kPastEnds = 0.3, kFurthestLine = 2;  // inches
  const Face face = work_.desk().face();
  if (reading.place.size() == 2) {
    const auto x = plainDecimal(reading.place[0]), y = plainDecimal(reading.place[1]);
    if (x && y) return squareAbout(asViewed({*x, *y}, face), kAboutFigure);
  }
  const DrawnPlace* from = layout().drawn().find(reading.from);
  const DrawnPlace* to = layout().drawn().find(reading.to);
  const auto axes = axesIn(face);
  if (reading.kind != ReadingKind::along || from == nullptr || to == nullptr ||
      (reading.axis != axes[0] && reading.axis != axes[1])) {
    return std::nullopt;
  }
  QRectF cut = layout().drawn().bounds.adjusted(-kFurthestLine, -kFurthestLine, kFurthestLine,
                                                kFurthestLine) &
               content();
  if (reading.axis == axes[0]) {
    cut.setLeft(std::min(from->at.x(), to->at.x()) - kPastEnds);
    cut.setRight(std::max(from->at.x(), to->at.x()) + kPastEnds);
  } else {
    cut.setTop(std::min(from->at.y(), to->at.y()) - kPastEnds);
    cut.setBottom(std::max(from->at.y(), to->at.y()) + kPastEnds);
  }
  return cut;
}

void PrintSight::enlarge(const std::vector<Id>& places) {
  const QPointF middle = content().center();
  QRectF box;
  for (const Id& id : places) {
    const DrawnPlace* place = layout().drawn().find(id);
    if (place == nullptr) continue;
    QPointF at = place->at;
    if (place->across) {
      at = place->alongViewX ? QPointF(at.x(), middle.y()) : QPointF(middle.x(), at.y());
    }
    box = box.united(squareAbout(at, 0.3));
  }
  if (box.isNull()) return;
  setMap(PrintMap::fitting(box, pane_, 40));
  fitted_ = false;
}

std::optional<QPointF> PrintSight::whereIs(const Id& place) const {
  const DrawnPlace* drawn = layout().drawn().find(place);
  if (drawn == nullptr) return std::nullopt;
  return map_.toWidget(drawn->at);
}

QPointF PrintSight::inFace(QPointF at) const {
  return asViewed(map_.toInches(at), work_.desk().face());
}

Pointed PrintSight::hit(QPointF at) const {
  Pointed pointed;
  if (picture_.isBare()) {
    pointed.at = map_.toInches(at);
    return pointed;
  }
  pointed.at = inFace(at);
  auto [place, reading] = layout().hit(at, map_, pane());
  pointed.place = std::move(place);
  pointed.reading = std::move(reading);
  return pointed;
}

}  // namespace inchwright::app

#include "moc_print_sight.cpp"
