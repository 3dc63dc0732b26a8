#include "app/canvas/print_view.h"

#include <QFontMetricsF>
#include <QGestureEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QPinchGesture>
#include <QShortcut>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/base/look.h"
#include "app/canvas/print_accessible.h"
#include "app/canvas/print_painter.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

constexpr qreal kReach = 9;          // pixels: how near a click must fall
constexpr qreal kSnap = 12;          // pixels: how far a line of the picture draws a click
constexpr qreal kDragThreshold = 4;  // pixels: below it a press is a click

std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
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
  std::vector<DimensionLine> lines;
  double lettering = 0;
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
  grabGesture(Qt::PinchGesture);
  setMinimumSize(240, 200);
  setAcceptDrops(true);
  Desk& desk = work.desk();
  connect(&desk, &Desk::edited, this, &PrintView::forgetLayout);
  connect(&desk, &Desk::viewChanged, this, [this] {
    followPicture();
    forgetLayout();
    fitted_ = true;
    fit();
  });
  connect(&desk, &Desk::selectionChanged, this, [this] {
    update();
    announceChosen(*this);
  });
  connect(&work, &Work::changed, this, [this] {
    followPicture();
    update();
  });
  connect(&picture_, &PictureLayer::changed, this, [this] {
    stop_->setEnabled(picture_.progress() && picture_.squaresUp());
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
  // The document may have been on the desk before this view.
  followPicture();
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
  const double lettering =
      QFontMetricsF(figures(0.95)).horizontalAdvance(QLatin1Char('0')) / map_.scale();
  if (layout_ && layout_->lettering == lettering) return *layout_;
  auto next = std::make_unique<Layout>();
  const Desk& desk = work_.desk();
  if (desk.hasPart()) {
    next->drawn = layout_ ? std::move(layout_->drawn)
                          : drawFace(desk.part(), desk.solution(), desk.face(), picture_.wanted());
    next->lines = dimensionLines(desk.part(), desk.solution(), next->drawn, lettering);
  } else {
    next->drawn.bounds = QRectF(0, 0, 4, 3);
  }
  next->lettering = lettering;
  layout_ = std::move(next);
  return *layout_;
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
  update();
}

void PrintView::setMap(const PrintMap& map) {
  map_ = map;
  update();
}

void PrintView::fit() {
  const Layout& layout = layoutNow();
  int below = 0, beside = 0;
  for (const DimensionLine& line : layout.lines) {
    int& most = line.alongViewX ? below : beside;
    most = std::max(most, line.level + 1);
  }
  const qreal spacing = levelSpacing();
  const qreal margin = 34;
  // However many readings there are, most of the sheet stays the print's.
  const QSizeF room(std::max(width() - beside * spacing, 0.6 * width()),
                    std::max(height() - below * spacing, 0.6 * height()));
  const PrintMap fitted =
      PrintMap::fitting(content(), room, picture_.bounds().isNull() ? margin : 8);
  setMap(fitted.moved({width() - room.width(), 0}));
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
  setMap(map_.zoomed(factor, QRectF(rect()).center()));
  fitted_ = false;
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
    if (letteringOf(line, layout.drawn, map_).contains(at)) {
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

void PrintView::paintEvent(QPaintEvent* event) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.fillRect(event->rect(), look.print);
  picture_.paint(painter, map_, event->rect());
  const Desk& desk = work_.desk();
  if (onBarePicture()) {
    static const DrawnFace kNothing;
    PrintScene scene{kNothing, {}, {}, {}, {}, work_.pending(), work_.marks()};
    paintPrint(painter, scene, map_, event->rect());
    paintNote(painter);
    return;
  }
  const Layout& layout = layoutNow();
  PrintScene scene{layout.drawn, layout.lines, {}, {}, hovered_, {}};
  for (const Id& id : desk.selection().places) scene.chosenPlaces.insert(id);
  for (const Id& id : work_.chosen()) scene.chosenPlaces.insert(id);
  for (const Id& id : desk.selection().readings) scene.chosenReadings.insert(id);
  scene.chosenReadings.insert(shownReadings_.begin(), shownReadings_.end());
  if (const auto pending = work_.pending()) scene.pending = asViewed(*pending, desk.face());
  scene.hideFigures = work_.doing() == Doing::rereading;
  paintPrint(painter, scene, map_, event->rect());
  paintNote(painter);
  if (hasFocus()) {
    painter.setPen(QPen(look.blue, kFirmLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

void PrintView::resizeEvent(QResizeEvent*) {
  if (fitted_ || map_ == PrintMap()) fit();
}

void PrintView::mousePressEvent(QMouseEvent* event) {
  pressed_ = last_ = event->position();
  dragged_.clear();
  if (event->button() == Qt::MiddleButton) {
    drag_ = Drag::paper;
  } else if (event->button() == Qt::LeftButton) {
    drag_ = Drag::undecided;
    if (work_.doing() == Doing::looking) dragged_ = hit(pressed_).place;
  }
}

void PrintView::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (drag_ == Drag::none) {
    const Id under = hit(at).place;
    if (under != hovered_) {
      hovered_ = under;
      update();
    }
    return;
  }
  const QPointF far = at - pressed_;
  if (drag_ == Drag::undecided && std::hypot(far.x(), far.y()) > kDragThreshold) {
    drag_ = dragged_.empty() ? Drag::paper : Drag::trace;
  }
  if (drag_ == Drag::paper) {
    setMap(map_.moved(at - last_));
    fitted_ = false;
  } else if (drag_ == Drag::trace) {
    dragTrace(at);
  }
  last_ = at;
}

void PrintView::mouseReleaseEvent(QMouseEvent* event) {
  const Drag was = drag_;
  drag_ = Drag::none;
  if (was == Drag::trace) {
    work_.desk().endMerge();
    return;
  }
  if (was != Drag::undecided || event->button() != Qt::LeftButton) return;
  QPointF at = event->position();
  const bool onLines = onBarePicture() || work_.doing() == Doing::tracing;
  if (onLines && !event->modifiers().testFlag(Qt::ControlModifier)) at = snapped(at);
  Pointed pointed = hit(at);
  pointed.extend = event->modifiers().testFlag(Qt::ShiftModifier);
  shownReadings_.clear();
  work_.point(pointed);
}

void PrintView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (hit(event->position()).place.empty()) fit();
}

void PrintView::dragTrace(QPointF to) {
  Desk& desk = work_.desk();
  const DrawnPlace* place = layoutNow().drawn.find(dragged_);
  if (place == nullptr) return;
  const Feature* feature = desk.part().feature(place->feature);
  // One hole of a ring or row goes with its feature, which has the trace.
  if (feature == nullptr || feature->id != dragged_) return;
  const QPointF at = inFace(to);
  std::vector<std::string> traced{tracedText(at.x()), tracedText(at.y())};
  if (place->across) traced = {tracedText(place->alongViewX ? at.x() : at.y())};
  // The paper stays put while something on it is moved.
  fitted_ = false;
  desk.applyPart(moveTrace(desk.part(), feature->id, traced),
                 tr("Move %1").arg(QString::fromStdString(feature->id)),
                 QStringLiteral("move:") + QString::fromStdString(feature->id));
}

void PrintView::nudge(QPointF pixels) {
  const Selection& selection = work_.desk().selection();
  if (selection.places.size() != 1) {
    setMap(map_.moved(-12 * pixels));
    fitted_ = false;
    return;
  }
  dragged_ = selection.places.front();
  if (const DrawnPlace* place = layoutNow().drawn.find(dragged_)) {
    dragTrace(map_.toWidget(place->at) + pixels);
  }
}

void PrintView::walk(bool forward) {
  const auto& places = layoutNow().drawn.places;
  if (places.empty()) return;
  const Selection& selection = work_.desk().selection();
  const auto count = static_cast<std::ptrdiff_t>(places.size());
  std::ptrdiff_t at = forward ? -1 : count;
  if (!selection.places.empty()) {
    const auto found = layoutNow().drawn.index.find(selection.places.back());
    if (found != layoutNow().drawn.index.end()) at = static_cast<std::ptrdiff_t>(found->second);
  }
  at = (at + (forward ? 1 : -1) + count) % count;
  work_.desk().select({{places[static_cast<std::size_t>(at)].id}, {}});
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
  update();
}

void PrintView::wheelEvent(QWheelEvent* event) {
  const qreal notches = event->angleDelta().y() / 120.0;
  if (notches == 0) return;
  setMap(map_.zoomed(std::pow(1.2, notches), event->position()));
  fitted_ = false;
  event->accept();
}

bool PrintView::event(QEvent* event) {
  // A touchpad tells its own pinch; fingers on a screen are told from their touches.
  if (event->type() == QEvent::NativeGesture) {
    const auto* native = static_cast<QNativeGestureEvent*>(event);
    if (native->gestureType() == Qt::ZoomNativeGesture) {
      setMap(map_.zoomed(std::max(0.1, 1 + native->value()), native->position()));
      fitted_ = false;
      event->accept();
      return true;
    }
  }
  if (event->type() == QEvent::Gesture) {
    auto* gesture = static_cast<QGestureEvent*>(event)->gesture(Qt::PinchGesture);
    if (auto* pinch = static_cast<QPinchGesture*>(gesture)) {
      setMap(map_.zoomed(pinch->scaleFactor(), mapFromGlobal(pinch->centerPoint())));
      fitted_ = false;
      return true;
    }
  }
  return QWidget::event(event);
}

void PrintView::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Paste) && paste()) return;
  switch (event->key()) {
    case Qt::Key_Left:
      nudge({-1, 0});
      return;
    case Qt::Key_Right:
      nudge({1, 0});
      return;
    case Qt::Key_Up:
      nudge({0, -1});
      return;
    case Qt::Key_Down:
      nudge({0, 1});
      return;
    case Qt::Key_PageDown:
      walk(true);
      return;
    case Qt::Key_PageUp:
      walk(false);
      return;
    case Qt::Key_Home:
      fit();
      return;
    default:
      emit typed(event);
  }
}

}  // namespace inchwright::app

#include "moc_print_view.cpp"
