// What a hand does on the print: buttons, fingers, wheel and keys.

#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QTouchEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/canvas/print_view.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

constexpr qreal kDragThreshold = 4;  // pixels: below it a press is a click

std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

}  // namespace

void PrintView::press(QPointF at, Qt::MouseButton button) {
  pressed_ = last_ = at;
  dragged_.clear();
  if (button == Qt::MiddleButton) {
    drag_ = Drag::paper;
  } else if (button == Qt::LeftButton) {
    drag_ = Drag::undecided;
    if (work_.doing() == Doing::looking) dragged_ = hit(pressed_).place;
  }
}

void PrintView::moveTo(QPointF at) {
  if (drag_ == Drag::none) {
    const Id under = hit(at).place;
    if (under != hovered_) {
      hovered_ = under;
      refresh();
    }
    return;
  }
  const QPointF far = at - pressed_;
  if (drag_ == Drag::undecided && std::hypot(far.x(), far.y()) > kDragThreshold) {
    drag_ = dragged_.empty() ? Drag::paper : Drag::trace;
  }
  if (drag_ == Drag::paper) {
    moveMap(map_.moved(at - last_));
  } else if (drag_ == Drag::trace) {
    dragTrace(at);
  }
  last_ = at;
}

void PrintView::release(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers with) {
  const Drag was = drag_;
  drag_ = Drag::none;
  if (was == Drag::trace) {
    work_.desk().endMerge();
    return;
  }
  if (was != Drag::undecided || button != Qt::LeftButton) return;
  const bool onLines = onBarePicture() || work_.doing() == Doing::tracing;
  if (onLines && !with.testFlag(Qt::ControlModifier)) at = snapped(at);
  Pointed pointed = hit(at);
  pointed.extend = with.testFlag(Qt::ShiftModifier);
  shownReadings_.clear();
  work_.point(pointed);
}

void PrintView::mousePressEvent(QMouseEvent* event) {
  press(event->position(), event->button());
}

void PrintView::mouseMoveEvent(QMouseEvent* event) {
  moveTo(event->position());
}

void PrintView::mouseReleaseEvent(QMouseEvent* event) {
  release(event->position(), event->button(), event->modifiers());
}

void PrintView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (hit(event->position()).place.empty()) fit();
}

void PrintView::dragTrace(QPointF to) {
  Desk& desk = work_.desk();
  const DrawnPlace* place = drawn().find(dragged_);
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
    moveMap(map_.moved(-12 * pixels));
    return;
  }
  dragged_ = selection.places.front();
  if (const DrawnPlace* place = drawn().find(dragged_)) {
    dragTrace(map_.toWidget(place->at) + pixels);
  }
}

void PrintView::walk(bool forward) {
  const auto& places = drawn().places;
  if (places.empty()) return;
  const Selection& selection = work_.desk().selection();
  const auto count = static_cast<std::ptrdiff_t>(places.size());
  std::ptrdiff_t at = forward ? -1 : count;
  if (!selection.places.empty()) {
    const auto found = drawn().index.find(selection.places.back());
    if (found != drawn().index.end()) at = static_cast<std::ptrdiff_t>(found->second);
  }
  at = (at + (forward ? 1 : -1) + count) % count;
  work_.desk().select({{places[static_cast<std::size_t>(at)].id}, {}});
}

void PrintView::wheelEvent(QWheelEvent* event) {
  const qreal notches = event->angleDelta().y() / 120.0;
  if (notches == 0) return;
  moveMap(map_.zoomed(std::pow(1.2, notches), event->position()));
  event->accept();
}

/// One finger does what the left button does; two zoom and pan, and put nothing down.
bool PrintView::touch(QTouchEvent& event) {
  event.accept();
  const auto& fingers = event.points();
  if (fingers.size() >= 2) {
    const QPointF a = fingers[0].position(), b = fingers[1].position();
    const qreal apart = std::max(1.0, std::hypot(b.x() - a.x(), b.y() - a.y()));
    const QPointF middle = (a + b) / 2;
    if (!pinch_) {
      if (drag_ == Drag::trace) work_.desk().endMerge();
      drag_ = Drag::none;
      pinch_ = Pinch{map_, apart, middle};
    }
    moveMap(
        pinch_->map.zoomed(apart / pinch_->apart, pinch_->middle).moved(middle - pinch_->middle));
  } else if (!pinch_ && fingers.size() == 1) {
    const QPointF at = fingers[0].position();
    if (event.type() == QEvent::TouchBegin) press(at, Qt::LeftButton);
    if (event.type() == QEvent::TouchUpdate) moveTo(at);
    if (event.type() == QEvent::TouchEnd) release(at, Qt::LeftButton, event.modifiers());
  }
  if (event.type() == QEvent::TouchEnd || event.type() == QEvent::TouchCancel) {
    pinch_.reset();
    drag_ = Drag::none;
  }
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
      moveMap(map_.zoomed(std::max(0.1, 1 + native->value()), native->position()));
      event->accept();
      return true;
    }
    default:
      break;
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
