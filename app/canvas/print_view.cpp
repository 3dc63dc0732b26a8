#include "app/canvas/print_view.h"

#include <QDragEnterEvent>
#include <QFontMetricsF>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QShortcut>
#include <QTimer>
#include <QTouchEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/base/look.h"
#include "app/canvas/loupe.h"
#include "app/canvas/offered_marks.h"
#include "app/canvas/print_accessible.h"
#include "app/canvas/view_slip.h"
#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "core/part/edit.h"
#include "core/say/reading_words.h"

namespace inchwright::app {
namespace {

constexpr qreal kSnap = 12;     // pixels: how far a line of the picture draws a click
constexpr qreal kSameSpot = 9;  // pixels: a second click so near puts the first one right

}  // namespace

PrintView::PrintView(Work& work, QWidget* parent)
    : QWidget(parent),
      work_(work),
      picture_(work),
      sight_(work, picture_),
      stop_(new QShortcut(Qt::Key_Escape, this)) {
  stop_->setEnabled(false);
  speakPrints();
  setObjectName(QStringLiteral("print"));
  setAccessibleName(tr("Their print"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAttribute(Qt::WA_AcceptTouchEvents);
  setMinimumSize(240, 200);
  setAcceptDrops(true);
  wire();
  letReadUnseen();
}

void PrintView::wire() {
  Desk& desk = work_.desk();
  connect(stop_, &QShortcut::activated, &picture_, &PrintPicture::takeBack);
  connect(&desk, &Desk::selectionChanged, this, [this] {
    refresh();
    announceChosen(*this);
  });
  connect(&work_, &Work::changed, this, &PrintView::refresh);
  connect(&work_, &Work::show, this,
          [this](const std::vector<Id>& places, const std::vector<Id>& readings) {
            shownReadings_ = readings;
            sight_.bringIntoSight(places, readings);
          });
  connect(&sight_, &PrintSight::moved, this, [this] {
    update();
    emit zoomChanged();
  });
  connect(&sight_, &PrintSight::changed, this, &PrintView::refresh);
  // The slip of views lies in the low left corner, and the print beside it where there is room.
  sight_.setCovered([this] {
    const auto* views = findChild<const ViewSlip*>();
    return views != nullptr && views->isVisibleTo(this) && !views->isOpen()
               ? views->geometry().right()
               : 0.0;
  });
  connect(&picture_, &PrintPicture::changed, this, [this] {
    stop_->setEnabled(picture_.canTakeBack());
    update();
  });
}

/// The desk is seen first and its picture read then; but a print that nobody sees waits for no
/// painting.
void PrintView::letReadUnseen() {
  QTimer::singleShot(0, this, [this] {
    if (!isVisible()) picture_.letRead();
  });
}

void PrintView::zoomBy(qreal factor) {
  sight_.moveByHand(map().zoomed(factor, QRectF(rect()).center()));
}

void PrintView::light(const Id& place) {
  if (place == light_) return;
  light_ = place;
  refresh();
}

void PrintView::hideMine(bool on) {
  hidesMine_ = on;
  update();
}

bool PrintView::aimsAtPicture() const {
  if (picture_.bounds().isNull()) return false;
  return picture_.isBare() || work_.doing() == Doing::tracing;
}

QPointF PrintView::aimed(QPointF at) const {
  const QPointF inches = map().toInches(at);
  return map().toWidget(picture_.layerAt(inches).snapped(inches, kSnap / map().scale()));
}

void PrintView::moveLoupe(std::optional<QPointF> at) {
  if (!aimsAtPicture()) at.reset();
  if (at == loupe_) return;
  for (const auto& one : {loupe_, at}) {
    if (one) update(Loupe::boxFor(*one, size()).adjusted(-1, -1, 1, 1));
  }
  loupe_ = at;
}

void PrintView::leaveEvent(QEvent* event) {
  moveLoupe({});
  if (!hovered_.empty()) {
    hovered_.clear();
    refresh();
    emit hovered({});
  }
  QWidget::leaveEvent(event);
}

int PrintView::thingCount() const {
  return picture_.isBare() ? 0 : app::thingCount(sight_.layout());
}

PrintThing PrintView::thing(int index) const {
  return thingAt(index, sight_.layout(), map(), rect(), work_);
}

void PrintView::pointAt(int index) {
  const PrintThing what = thing(index);
  Pointed pointed;
  pointed.at = sight_.inFace(what.box.center());
  (what.reading ? pointed.reading : pointed.place) = what.id;
  work_.point(pointed);
}

/// Nothing is there yet, nor about to be.
bool PrintView::isEmpty(const PrintScene& scene) const {
  return scene.drawn.places.empty() && !picture_.wanted() && !scene.pending && !picture_.isBare();
}

/// Paints anew what has changed, once all that an edit or a hand sets off has been done.
void PrintView::refresh() {
  if (std::exchange(refreshing_, true)) return;
  const auto now = [this] {
    refreshing_ = false;
    if (std::exchange(inkedFor_, work_.doing()) != work_.doing()) {
      loupe_.reset();  // what comes next may lie below it
      update();
      return;
    }
    if (work_.doing() == Doing::offering) update();  // the enlarged cut
    const PrintScene scene = sceneNow();
    auto ink = inkOf(scene, map());
    const QRegion changed = changedBetween(inked_, ink);
    inked_ = std::move(ink);
    update(changed);
    // The invitation comes and goes.
    if (std::exchange(inviting_, isEmpty(scene)) != isEmpty(scene)) update();
  };
  QMetaObject::invokeMethod(this, now, Qt::QueuedConnection);
}

PrintScene PrintView::sceneNow() const {
  const Desk& desk = work_.desk();
  if (picture_.isBare()) {
    static const PrintLayout kNothing;
    return {
        kNothing.drawn(), kNothing.lines(), kNothing.lettering(), nameWidths_, rect(), {}, {}, {},
        work_.pending(),  work_.marks()};
  }
  const PrintLayout& layout = sight_.layout();
  PrintScene scene{layout.drawn(),
                   layout.lines(),
                   layout.lettering(),
                   nameWidths_,
                   rect(),
                   {},
                   {},
                   hovered_,
                   {}};
  for (const Id& id : desk.selection().places) scene.chosenPlaces.insert(id);
  for (const Id& id : work_.chosen()) scene.chosenPlaces.insert(id);
  for (const Id& id : desk.selection().readings) scene.chosenReadings.insert(id);
  if (!light_.empty()) scene.chosenPlaces.insert(light_);
  scene.chosenReadings.insert(shownReadings_.begin(), shownReadings_.end());
  if (const auto pending = work_.pending()) scene.pending = asViewed(*pending, desk.face());
  scene.offered = offeredMarks(work_);
  scene.whereabouts = whereaboutsOf(desk, layout.drawn());
  for (const QPointF& mark : work_.marks()) scene.marks.push_back(asViewed(mark, desk.face()));
  scene.hideFigures = work_.doing() == Doing::rereading;
  return scene;
}

void PrintView::paintEvent(QPaintEvent* event) {
  const Look& look = Look::now();
  QPainter painter(this);
  for (const QRect& bare : QRegion(event->rect()) - picture_.covered(map())) {
    painter.fillRect(bare, look.print);
  }
  if (!picture_.paint(painter, map(), event->rect(), sight_.isMoving())) {
    QTimer::singleShot(0, this, qOverload<>(&QWidget::update));
  }
  const PrintScene scene = sceneNow();
  if (isEmpty(scene)) paintInvitation(painter);
  if (!hidesMine_) {
    auto ink = paintPrint(painter, scene, map(), event->region());
    if (event->rect().contains(rect())) inked_ = std::move(ink);
  }
  paintNote(painter);
  paintOfferedCut(painter, work_, picture_.layer(), map(), size());
  // After the whole desk has been painted, of which this is a part.
  QMetaObject::invokeMethod(&picture_, &PrintPicture::letRead, Qt::QueuedConnection);
  if (hasFocus()) {
    painter.setPen(QPen(look.blue, kFirmLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
  if (!loupe_) return;
  const PictureLayer& layer = picture_.layerAt(map().toInches(*loupe_));
  Loupe::paint(painter, layer, map(), *loupe_, aimed(*loupe_), size());
}

void PrintView::paintNote(QPainter& painter) {
  const QString note = hidesMine_ ? tr("What is mine is hidden; Ctrl+H shows it") : picture_.note();
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

void PrintView::resizeEvent(QResizeEvent*) {
  sight_.setPane(size());
}

void PrintView::press(QPointF at, Qt::MouseButton button) {
  const Pointed under = work_.doing() == Doing::looking ? sight_.hit(at) : Pointed();
  grasped_ = under.place;
  graspedReading_ = under.reading;
  pointer_.press(at, button, !grasped_.empty() || !graspedReading_.empty());
}

void PrintView::act(const PointerDeed& deed, Qt::KeyboardModifiers with) {
  switch (deed.kind) {
    case PointerDeed::Kind::nothing:
      break;
    case PointerDeed::Kind::hover:
      moveLoupe(deed.at);
      if (const Id under = sight_.hit(deed.at).place; under != hovered_) {
        hovered_ = under;
        refresh();
        emit hovered(under);
      }
      break;
    case PointerDeed::Kind::click:
      click(deed.at, with);
      break;
    case PointerDeed::Kind::pan:
      sight_.moveByHand(map().moved(deed.by));
      break;
    case PointerDeed::Kind::drag:
      if (graspedReading_.empty()) {
        dragTrace(deed.at);
      } else {
        dragFigure(deed.at);
      }
      break;
    case PointerDeed::Kind::drop:
      work_.desk().endMerge();
      break;
    case PointerDeed::Kind::zoom:
      sight_.moveByHand(deed.map);
      break;
  }
}

void PrintView::click(QPointF at, Qt::KeyboardModifiers with) {
  // On the picture, what is traced is drawn to a line near by.
  if (aimsAtPicture() && !with.testFlag(Qt::ControlModifier)) at = aimed(at);
  Pointed pointed = sight_.hit(at);
  pointed.extend = with.testFlag(Qt::ShiftModifier);
  pointed.reach = kSameSpot / map().scale();
  shownReadings_.clear();
  // One of the spots where the chosen place may lie is chosen by pointing at it.
  const bool looks = work_.doing() == Doing::looking && !picture_.isBare() && !pointed.extend;
  const Whereabouts all =
      looks ? whereaboutsOf(work_.desk(), sight_.layout().drawn()) : Whereabouts();
  if (const auto spot = spotAt(all, at, map())) {
    work_.takeAnswer(all.answers, *spot);
  } else {
    work_.point(pointed);
  }
}

void PrintView::mousePressEvent(QMouseEvent* event) {
  press(event->position(), event->button());
}

void PrintView::mouseMoveEvent(QMouseEvent* event) {
  act(pointer_.move(event->position()));
}

void PrintView::mouseReleaseEvent(QMouseEvent* event) {
  act(pointer_.release(event->position(), event->button()), event->modifiers());
}

void PrintView::contextMenuEvent(QContextMenuEvent* event) {
  if (picture_.isBare()) return;
  Pointed under = sight_.hit(event->pos());
  if (event->reason() == QContextMenuEvent::Keyboard) {
    // By the key it is asked of what is chosen.
    const Selection& chosen = work_.desk().selection();
    under = {};
    if (!chosen.places.empty()) under.place = chosen.places.front();
    if (!chosen.readings.empty()) under.reading = chosen.readings.front();
  }
  emit choicesWanted(under, event->globalPos());
}

void PrintView::mouseDoubleClickEvent(QMouseEvent* event) {
  const Pointed under = sight_.hit(event->position());
  if (under.place.empty() && under.reading.empty()) {
    fit();
  } else if (work_.doing() == Doing::looking) {
    work_.desk().select(under.place.empty() ? Selection{{}, {under.reading}}
                                            : Selection{{under.place}, {}});
    emit amendWanted();
  }
}

void PrintView::dragTrace(QPointF to) {
  Desk& desk = work_.desk();
  const DrawnPlace* place = sight_.layout().drawn().find(grasped_);
  if (place == nullptr) return;
  const Feature* feature = desk.part().feature(place->feature);
  // One hole of a ring or row goes with its feature, which has the trace.
  if (feature == nullptr || feature->id != grasped_) return;
  const QPointF at = sight_.inFace(to);
  std::vector<std::string> traced{tracedText(at.x()), tracedText(at.y())};
  if (place->across) traced = {tracedText(place->alongViewX ? at.x() : at.y())};
  // The paper stays put while something on it is moved.
  sight_.stayPut();
  const QString id = QString::fromStdString(feature->id);
  desk.applyPart(moveTrace(desk.part(), feature->id, traced), tr("Move %1").arg(id),
                 QStringLiteral("move:") + id);
}

/// A figure is put where the print letters it.
void PrintView::dragFigure(QPointF to) {
  Desk& desk = work_.desk();
  const Reading* reading = desk.part().reading(graspedReading_);
  if (reading == nullptr) return;
  const QPointF at = sight_.inFace(to);
  Reading moved = *reading;
  moved.place = {tracedText(at.x()), tracedText(at.y())};
  sight_.stayPut();
  const QString words = QString::fromStdString(readingWords(desk.part(), moved));
  desk.applyPart(replaceReading(desk.part(), moved.id, moved), tr("Move the figure %1").arg(words),
                 QStringLiteral("move:") + QString::fromStdString(moved.id));
}

void PrintView::nudge(QPointF pixels) {
  const Selection& selection = work_.desk().selection();
  if (selection.places.size() != 1) {
    sight_.moveByHand(map().moved(-12 * pixels));
    return;
  }
  grasped_ = selection.places.front();
  if (const auto at = sight_.whereIs(grasped_)) dragTrace(*at + pixels);
}

void PrintView::walk(bool forward) {
  const DrawnFace& drawn = sight_.layout().drawn();
  if (drawn.places.empty()) return;
  const Selection& selection = work_.desk().selection();
  const auto count = static_cast<std::ptrdiff_t>(drawn.places.size());
  std::ptrdiff_t at = forward ? -1 : count;
  if (!selection.places.empty()) {
    const auto found = drawn.index.find(selection.places.back());
    if (found != drawn.index.end()) at = static_cast<std::ptrdiff_t>(found->second);
  }
  at = (at + (forward ? 1 : -1) + count) % count;
  work_.desk().select({{drawn.places[static_cast<std::size_t>(at)].id}, {}});
}

void PrintView::wheelEvent(QWheelEvent* event) {
  const qreal notches = event->angleDelta().y() / 120.0;
  if (notches == 0) return;
  sight_.moveByHand(map().zoomed(std::pow(1.2, notches), event->position()));
  event->accept();
}

/// One finger does what the left button does.
bool PrintView::touch(QTouchEvent& event) {
  event.accept();
  const auto& fingers = event.points();
  if (fingers.size() >= 2) {
    act(pointer_.pinch(fingers[0].position(), fingers[1].position(), map()));
  } else if (!pointer_.pinches() && fingers.size() == 1) {
    const QPointF at = fingers[0].position();
    if (event.type() == QEvent::TouchBegin) press(at, Qt::LeftButton);
    if (event.type() == QEvent::TouchUpdate) act(pointer_.move(at));
    if (event.type() == QEvent::TouchEnd) {
      act(pointer_.release(at, Qt::LeftButton), event.modifiers());
    }
  }
  if (event.type() == QEvent::TouchEnd || event.type() == QEvent::TouchCancel) pointer_.lift();
  return true;
}

bool PrintView::event(QEvent* event) {
  switch (event->type()) {
    case QEvent::TouchBegin:
      setFocus(Qt::MouseFocusReason);
      return touch(*static_cast<QTouchEvent*>(event));
    case QEvent::TouchUpdate:
    case QEvent::TouchEnd:
    case QEvent::TouchCancel:
      return touch(*static_cast<QTouchEvent*>(event));
    case QEvent::NativeGesture: {
      // A touchpad tells its own pinch.
      const auto* native = static_cast<QNativeGestureEvent*>(event);
      if (native->gestureType() != Qt::ZoomNativeGesture) break;
      sight_.moveByHand(map().zoomed(std::max(0.1, 1 + native->value()), native->position()));
      event->accept();
      return true;
    }
    default:
      break;
  }
  return QWidget::event(event);
}

void PrintView::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Paste) && picture_.paste()) return;
  switch (event->key()) {
    case Qt::Key_Left:
      return nudge({-1, 0});
    case Qt::Key_Right:
      return nudge({1, 0});
    case Qt::Key_Up:
      return nudge({0, -1});
    case Qt::Key_Down:
      return nudge({0, 1});
    case Qt::Key_PageDown:
      return walk(true);
    case Qt::Key_PageUp:
      return walk(false);
    case Qt::Key_Home:
      return fit();
    case Qt::Key_Delete:
      emit deleteWanted();
      return;
    default:
      emit typed(event);
  }
}

void PrintView::dragEnterEvent(QDragEnterEvent* event) {
  if (!PrintPicture::fileIn(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void PrintView::dropEvent(QDropEvent* event) {
  const QString file = PrintPicture::fileIn(event->mimeData());
  if (!file.isEmpty() && picture_.takeFile(file)) event->acceptProposedAction();
}

}  // namespace inchwright::app

#include "moc_print_view.cpp"
