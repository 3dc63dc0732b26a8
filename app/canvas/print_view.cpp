#include "app/canvas/print_view.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QShortcut>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/base/look.h"
#include "app/canvas/face_box.h"
#include "app/canvas/print_accessible.h"
#include "app/canvas/print_painter.h"

namespace inchwright::app {
namespace {

constexpr qreal kReach = 9;           // pixels: how near a click must fall
constexpr qreal kSnap = 12;           // pixels: how far a line of the picture draws a click
constexpr qreal kPrintsShare = 0.65;  // of the scale it would have without dimension lines
constexpr int kStill = 200;           // milliseconds after which a hand no longer moves the print

std::size_t readingsOf(const Part& part, Face face) {
  const auto axes = axesIn(face);
  return static_cast<std::size_t>(
      std::count_if(part.readings.begin(), part.readings.end(), [&](const Reading& one) {
        return one.kind == ReadingKind::along && (one.axis == axes[0] || one.axis == axes[1]);
      }));
}

qreal distanceTo(const DrawnPlace& place, const PrintMap& map, QPointF at) {
  const QPointF centre = map.toWidget(place.at);
  if (place.across) {
    return place.alongViewX ? std::abs(at.x() - centre.x()) : std::abs(at.y() - centre.y());
  }
  const qreal apart = std::hypot(at.x() - centre.x(), at.y() - centre.y());
  const bool pitchCircle = place.kind == FeatureKind::ring && place.id == place.feature;
  // Anywhere in a hole is the hole; of a pitch circle only its centre and its line are.
  const qreal radius = place.radius * map.scale();
  return pitchCircle ? std::min(apart, std::abs(apart - radius)) : std::max(apart - radius, 0.0);
}

}  // namespace

/// What is drawn, worked out once a change.
struct PrintView::Layout {
  DrawnFace drawn;
  std::size_t readings = 0;  ///< of this face
  std::vector<DimensionLine> lines;
  Lettering lettering;
  std::pair<double, qreal> made{0, 0};  ///< for this scale and height of the desk's figures
};

PrintView::PrintView(Work& work, QWidget* parent)
    : QWidget(parent),
      work_(work),
      picture_(work.desk()),
      stop_(new QShortcut(Qt::Key_Escape, this)) {
  stop_->setEnabled(false);
  connect(stop_, &QShortcut::activated, this, &PrintView::stopSquaring);
  speakPrints();
  setObjectName(QStringLiteral("print"));
  setAccessibleName(tr("Their print"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAttribute(Qt::WA_AcceptTouchEvents);
  setMinimumSize(240, 200);
  setAcceptDrops(true);
  Desk& desk = work.desk();
  connect(&desk, &Desk::edited, this, &PrintView::forgetLayout);
  connect(&desk, &Desk::viewChanged, this, [this] {
    followPicture();
    forgetLayout();
    fitted_ = true;
    fit();
    update();
  });
  connect(&desk, &Desk::selectionChanged, this, [this] {
    refresh();
    announceChosen(*this);
  });
  connect(&work, &Work::changed, this, [this] {
    followPicture();
    refresh();
  });
  connect(&picture_, &PictureLayer::changed, this, [this] {
    stop_->setEnabled(picture_.progress() && squared_);
    const bool seen = !picture_.bounds().isNull();
    // The close look of the second reading stays where it is when its picture arrives late.
    if (seen && !pictureSeen_ && work_.doing() != Doing::rereading) fit();
    pictureSeen_ = seen;
    update();
  });
  connect(&work, &Work::show, this,
          [this](const std::vector<Id>& places, const std::vector<Id>& readings) {
            shownReadings_ = readings;
            bringIntoSight(places);
          });
  connect(&work, &Work::allLeft, this, &PrintView::stopOpened);
  // The document may have been on the desk before this view.
  followPicture();
  letReadUnseen();
}

PrintView::~PrintView() = default;

QRectF PrintView::content() const {
  const QRectF picture = picture_.bounds();
  if (onBarePicture()) return picture.isNull() ? QRectF(0, 0, 4, 3) : picture;
  return picture.isNull() ? layoutNow().drawn.bounds : picture;
}

std::optional<QPointF> PrintView::whereIs(const Id& place) const {
  const DrawnPlace* drawn = layoutNow().drawn.find(place);
  if (drawn == nullptr) return std::nullopt;
  return map_.toWidget(drawn->at);
}

const PrintView::Layout& PrintView::layoutNow() const {
  const std::pair now{map_.scale(), QFontMetricsF(figures(1.0)).height()};
  if (layout_ && layout_->made == now) return *layout_;
  auto next = std::make_unique<Layout>();
  const Desk& desk = work_.desk();
  if (layout_) {
    next->drawn = std::move(layout_->drawn);
    next->readings = layout_->readings;
  } else if (desk.hasPart()) {
    next->drawn = drawFace(desk.part(), desk.solution(), desk.face(), picture_.wanted());
    next->readings = readingsOf(desk.part(), desk.face());
  } else {
    next->drawn.bounds = QRectF(0, 0, 4, 3);
  }
  next->lettering = letteringFor(next->drawn, next->readings, map_);
  if (desk.hasPart()) {
    next->lines = dimensionLines(desk.part(), desk.solution(), next->drawn,
                                 next->lettering.character / map_.scale());
  }
  next->made = now;
  layout_ = std::move(next);
  return *layout_;
}

QRectF PrintView::figureBox(const DimensionLine& line) const {
  const Layout& layout = layoutNow();
  return letteringOn(runOf(line, layout.drawn, map_, layout.lettering), line, layout.lettering,
                     rect());
}

const DrawnFace& PrintView::drawn() const {
  return layoutNow().drawn;
}

const std::vector<DimensionLine>& PrintView::dimensions() const {
  return layoutNow().lines;
}

void PrintView::forgetLayout() {
  layout_.reset();
  followPicture();
  if (fitted_) fit();
  refresh();
}

void PrintView::moveMap(const PrintMap& map) {
  moved_.start();
  fitted_ = false;
  setMap(map);
}

void PrintView::setMap(const PrintMap& map) {
  if (map == map_) return;
  map_ = map;
  update();
}

/// Nothing is there yet, nor about to be.
bool PrintView::isEmpty(const PrintScene& scene) const {
  return scene.drawn.places.empty() && !picture_.wanted() && !scene.pending && !onBarePicture();
}

/// Paints anew what has changed, once all that an edit or a hand sets off has been done.
void PrintView::refresh() {
  if (std::exchange(refreshing_, true)) return;
  const auto now = [this] {
    refreshing_ = false;
    if (std::exchange(inkedFor_, work_.doing()) != work_.doing()) {
      update();
      return;
    }
    const PrintScene scene = sceneNow();
    auto ink = inkOf(scene, map_);
    const QRegion changed = changedBetween(inked_, ink);
    inked_ = std::move(ink);
    update(changed);
    // The invitation comes and goes.
    if (std::exchange(inviting_, isEmpty(scene)) != isEmpty(scene)) update();
  };
  QMetaObject::invokeMethod(this, now, Qt::QueuedConnection);
}

/// All of the content, and beside it what its dimension lines need; but however many those are, the
/// print keeps most of the sheet.
PrintMap PrintView::fittedMap() const {
  const QRectF all = content();
  const qreal margin = picture_.bounds().isNull() ? 34 : 8;
  const PrintMap whole = PrintMap::fitting(all, size(), margin);
  // The box unfolded lies in the low left corner, and the print beside it where there is room.
  const auto* faces = findChild<const FaceBox*>();
  const qreal covered =
      faces != nullptr && faces->isVisibleTo(this) ? faces->geometry().right() : 0;
  if (onBarePicture()) {
    const QRectF lies = whole.toWidget(all);
    const qreal room = std::max(0.0, width() - margin - lies.right());
    return whole.moved({std::clamp(covered - lies.left(), 0.0, room), 0});
  }
  const Layout& layout = layoutNow();
  int below = 0, beside = 0;
  for (const DimensionLine& line : layout.lines) {
    int& most = line.alongViewX ? below : beside;
    most = std::max(most, line.level + 1);
  }
  const QRectF& view = layout.drawn.bounds;
  const qreal left = roomBeside(beside, layout.lettering);
  const qreal low = roomBelow(below, layout.lettering);
  const qreal wide = std::max(all.right() - view.left(), 1e-3);
  const qreal high = std::max(all.bottom() - view.top(), 1e-3);
  const qreal room = std::min((width() - margin - left) / wide, (height() - margin - low) / high);
  const qreal scale = std::clamp(room, kPrintsShare * whole.scale(), whole.scale());
  // From the near left corner of the view: what lies to each side of it.
  const qreal before = std::max((view.left() - all.left()) * scale + margin, left);
  const qreal under = std::max((view.top() - all.top()) * scale + margin, low);
  const qreal spareX = width() - before - wide * scale - margin;
  const qreal gap = std::min(spareX, std::max(spareX / 2, covered));
  const qreal spareY = height() - under - high * scale - margin;
  const QPointF corner(before + gap, margin + high * scale + std::max(0.0, spareY / 2));
  return {scale, {corner.x() - view.left() * scale, corner.y() + view.top() * scale}};
}

void PrintView::fit() {
  // How figures are lettered and stacked depends on the scale, and the scale on the room for them.
  for (int i = 0; i < 3; ++i) {
    const PrintMap next = fittedMap();
    const bool steady = std::abs(next.scale() - map_.scale()) < 0.002 * map_.scale();
    setMap(next);
    if (steady) break;
  }
  fitted_ = true;
}

void PrintView::fitToSelection() {
  QRectF box;
  for (const Id& id : work_.desk().selection().places) {
    const DrawnPlace* place = layoutNow().drawn.find(id);
    if (place == nullptr) continue;
    const qreal r = std::max(place->radius * 2, 0.25);
    box = box.united(QRectF(place->at.x() - r, place->at.y() - r, 2 * r, 2 * r));
  }
  if (box.isNull()) {
    fit();
    return;
  }
  setMap(PrintMap::fitting(box, size(), 60));
  fitted_ = false;
}

void PrintView::zoomBy(qreal factor) {
  moveMap(map_.zoomed(factor, QRectF(rect()).center()));
}

QPointF PrintView::inFace(QPointF at) const {
  return asViewed(map_.toInches(at), work_.desk().face());
}

QPointF PrintView::snapped(QPointF widget) const {
  return map_.toWidget(picture_.snapped(map_.toInches(widget), kSnap / map_.scale()));
}

Pointed PrintView::hit(QPointF at) const {
  Pointed pointed;
  pointed.at = inFace(at);
  if (onBarePicture()) {
    // On the picture alone there are no features.
    pointed.at = map_.toInches(at);
    return pointed;
  }
  const Layout& layout = layoutNow();
  for (const DimensionLine& line : layout.lines) {
    if (figureBox(line).contains(at)) {
      pointed.reading = line.reading;
      return pointed;
    }
  }
  qreal nearest = kReach;
  bool edge = false;
  for (const DrawnPlace& place : layout.drawn.places) {
    const qreal distance = distanceTo(place, map_, at);
    // A hole lies on top of the edges that cross it.
    const bool better = distance < nearest || (edge && !place.across && distance <= kReach / 2);
    if (!better || (place.across && !pointed.place.empty() && !edge)) continue;
    nearest = distance;
    edge = place.across.has_value();
    pointed.place = place.id;
  }
  return pointed;
}

PrintScene PrintView::sceneNow() const {
  const Desk& desk = work_.desk();
  if (onBarePicture()) {
    static const DrawnFace kNothing;
    static const std::vector<DimensionLine> kNoLines;
    static const Lettering kPlain;
    return {kNothing, kNoLines, kPlain, nameWidths_,     rect(),
            {},       {},       {},     work_.pending(), work_.marks()};
  }
  const Layout& layout = layoutNow();
  PrintScene scene{layout.drawn, layout.lines, layout.lettering, nameWidths_, rect(),
                   {},           {},           hovered_,         {}};
  for (const Id& id : desk.selection().places) scene.chosenPlaces.insert(id);
  for (const Id& id : work_.chosen()) scene.chosenPlaces.insert(id);
  for (const Id& id : desk.selection().readings) scene.chosenReadings.insert(id);
  scene.chosenReadings.insert(shownReadings_.begin(), shownReadings_.end());
  if (const auto pending = work_.pending()) scene.pending = asViewed(*pending, desk.face());
  scene.hideFigures = work_.doing() == Doing::rereading;
  return scene;
}

void PrintView::paintEvent(QPaintEvent* event) {
  const Look& look = Look::now();
  QPainter painter(this);
  for (const QRect& bare : QRegion(event->rect()) - picture_.covered(map_)) {
    painter.fillRect(bare, look.print);
  }
  const bool hurried = moved_.isValid() && moved_.elapsed() < kStill;
  if (!picture_.paint(painter, map_, event->rect(), hurried)) {
    QTimer::singleShot(0, this, qOverload<>(&QWidget::update));
  }
  const PrintScene scene = sceneNow();
  if (isEmpty(scene)) paintInvitation(painter);
  auto ink = paintPrint(painter, scene, map_, event->region());
  if (event->rect().contains(rect())) inked_ = std::move(ink);
  paintNote(painter);
  // After the whole desk has been painted, of which this is a part.
  QMetaObject::invokeMethod(&picture_, &PictureLayer::letRead, Qt::QueuedConnection);
  if (hasFocus()) {
    painter.setPen(QPen(look.blue, kFirmLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

void PrintView::resizeEvent(QResizeEvent*) {
  if (fitted_ || map_ == PrintMap()) fit();
}

void PrintView::bringIntoSight(const std::vector<Id>& places) {
  if (work_.doing() == Doing::rereading && picture_.wanted()) {
    enlarge(places);
    return;
  }
  QRectF box;
  for (const Id& id : places) {
    if (const DrawnPlace* place = layoutNow().drawn.find(id)) {
      const QPointF at = map_.toWidget(place->at);
      box = box.united(QRectF(at.x() - 20, at.y() - 20, 40, 40));
    }
  }
  if (!box.isNull() && !QRectF(rect()).intersects(box)) {
    setMap(map_.moved(QRectF(rect()).center() - box.center()));
    fitted_ = false;
  }
  refresh();
}

}  // namespace inchwright::app

#include "moc_print_view.cpp"
