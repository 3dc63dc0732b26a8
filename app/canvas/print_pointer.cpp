#include "app/canvas/print_pointer.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace inchwright::app {
namespace {

constexpr qreal kDragThreshold = 4;  // pixels: below it a press is a click

}  // namespace

void PrintPointer::press(QPointF at, Qt::MouseButton button, bool grasps) {
  pressed_ = last_ = at;
  grasps_ = grasps && button == Qt::LeftButton;
  held_ = button == Qt::MiddleButton ? Held::paper
          : button == Qt::LeftButton ? Held::undecided
                                     : Held::nothing;
}

PointerDeed PrintPointer::move(QPointF at) {
  if (held_ == Held::nothing) return {PointerDeed::Kind::hover, at};
  const QPointF far = at - pressed_;
  if (held_ == Held::undecided && std::hypot(far.x(), far.y()) > kDragThreshold) {
    held_ = grasps_ ? Held::trace : Held::paper;
  }
  const QPointF by = at - std::exchange(last_, at);
  if (held_ == Held::paper) return {PointerDeed::Kind::pan, at, by};
  if (held_ == Held::trace) return {PointerDeed::Kind::drag, at};
  return {};
}

PointerDeed PrintPointer::release(QPointF at, Qt::MouseButton button) {
  const Held was = std::exchange(held_, Held::nothing);
  if (was == Held::trace) return {PointerDeed::Kind::drop, at};
  if (was != Held::undecided || button != Qt::LeftButton) return {};
  return {PointerDeed::Kind::click, at};
}

PointerDeed PrintPointer::pinch(QPointF one, QPointF other, const PrintMap& map) {
  const QPointF between = other - one;
  const qreal apart = std::max(1.0, std::hypot(between.x(), between.y()));
  const QPointF middle = (one + other) / 2;
  if (!pinch_) {
    pinch_ = Pinch{map, apart, middle};
    if (std::exchange(held_, Held::nothing) == Held::trace) return {PointerDeed::Kind::drop, one};
  }
  return {PointerDeed::Kind::zoom,
          middle,
          {},
          pinch_->map.zoomed(apart / pinch_->apart, pinch_->middle).moved(middle - pinch_->middle)};
}

void PrintPointer::lift() {
  pinch_.reset();
  held_ = Held::nothing;
}

}  // namespace inchwright::app
