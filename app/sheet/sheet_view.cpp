#include "app/sheet/sheet_view.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QGestureEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QPinchGesture>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/render/faces.h"
#include "app/render/painting.h"

namespace inchwright::app {
namespace {

constexpr qreal kMargin = 18;         // pixels about and between the pages
constexpr qreal kLeastScale = 0.4;    // pixels a millimetre
constexpr qreal kGreatestScale = 24;  // a figure then fills the screen
constexpr qreal kReach = 7;           // pixels: how near a click must fall
constexpr qreal kOnIt = 1.5;          // pixels: where it must fall on a line itself
constexpr qreal kStill = 4;           // pixels: below it a press is a click

/// Millimetres from a place on paper to a target; 0 within a circle.
qreal distanceOf(const PaperTarget& target, QPointF at) {
  if (target.kind != TargetKind::pictured) {
    const QRectF box(QPointF(target.from.x, target.from.y), QPointF(target.to.x, target.to.y));
    return box.contains(at) ? 0 : std::numeric_limits<qreal>::infinity();
  }
  const QPointF from(target.from.x, target.from.y), to(target.to.x, target.to.y);
  const QPointF along = to - from, off = at - from;
  const qreal length = QPointF::dotProduct(along, along);
  const qreal share =
      length > 0 ? std::clamp(QPointF::dotProduct(off, along) / length, 0.0, 1.0) : 0.0;
  const QPointF away = off - share * along;
  return std::max(std::hypot(away.x(), away.y()) - target.radius, 0.0);
}

QAccessibleInterface* makeSpokenSheet(const QString&, QObject* object) {
  auto* view = qobject_cast<SheetView*>(object);
  return view == nullptr
             ? nullptr
             : new QAccessibleWidget(view, QAccessible::Document, view->accessibleName());
}

}  // namespace

SheetView::SheetView(Desk& desk, QWidget* parent) : QAbstractScrollArea(parent), desk_(desk) {
  QAccessible::installFactory(&makeSpokenSheet);
  // Without its own faces the sheet is painted with what the system has.
  std::ignore = loadFaces();
  setObjectName(QStringLiteral("sheet"));
  setAccessibleName(tr("My sheet"));
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(200, 200);
  viewport()->setAccessibleName(accessibleName());
  viewport()->grabGesture(Qt::PinchGesture);
  viewport()->setMouseTracking(true);
  viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
  horizontalScrollBar()->setAccessibleName(tr("My sheet, sideways"));
  verticalScrollBar()->setAccessibleName(tr("My sheet, up and down"));
  connect(&desk, &Desk::edited, this, &SheetView::follow);
  connect(&desk, &Desk::viewChanged, this, &SheetView::follow);
  connect(&desk, &Desk::selectionChanged, viewport(), qOverload<>(&QWidget::update));
  follow();
}

void SheetView::follow() {
  const TapeUpSheet* sheet = desk_.sheet();
  const std::size_t pages = sheet == nullptr ? 0 : sheet->pageCount();
  const bool sameShape = pages == shown_.size() && paper() == paper_;
  paper_ = paper();
  shown_.resize(pages);
  for (Shown& shown : shown_) shown.followed = false;
  hover({});
  if (!sameShape) {
    layOut();
    if (fit_ != Fit::none) showPage(0);
  }
  viewport()->update();
}

/// A sheet of nothing yet has the usual shape.
QSizeF SheetView::paper() const {
  const TapeUpSheet* sheet = desk_.sheet();
  return sheet == nullptr ? QSizeF(210, 297) : QSizeF(sheet->width(), sheet->height());
}

const Page& SheetView::page(int index) const {
  return desk_.sheet()->page(static_cast<std::size_t>(index));
}

void SheetView::layOut() {
  const qreal width = paper_.width();
  const QSizeF room = viewport()->size();
  const qreal across = (room.width() - 2 * kMargin) / width;
  if (fit_ == Fit::page) scale_ = std::min(across, (room.height() - 2 * kMargin) / paper_.height());
  if (fit_ == Fit::width) scale_ = across;
  scale_ = std::clamp(scale_, kLeastScale, kGreatestScale);
  const qreal below = kMargin + pageCount() * (paper_.height() * scale_ + kMargin);
  const int right = static_cast<int>(std::ceil(width * scale_ + 2 * kMargin));
  verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(below - room.height())));
  verticalScrollBar()->setPageStep(static_cast<int>(room.height()));
  verticalScrollBar()->setSingleStep(30);
  horizontalScrollBar()->setRange(0, std::max(0, right - static_cast<int>(room.width())));
  horizontalScrollBar()->setPageStep(static_cast<int>(room.width()));
  horizontalScrollBar()->setSingleStep(30);
  emit zoomChanged();
}

QRectF SheetView::boxOf(int index) const {
  const QSizeF size = paper_ * scale_;
  const qreal top = kMargin + index * (size.height() + kMargin);
  const qreal left = std::max(kMargin, (viewport()->width() - size.width()) / 2);
  return {QPointF(std::round(left), std::round(top)), size};
}

const QPixmap& SheetView::pictureOf(int index, qreal high) {
  Shown& shown = shown_[index];
  if (!shown.followed && shown.page != page(index)) shown = {page(index), {}, 0, false, false};
  shown.followed = true;
  const Look& look = Look::now();
  const bool fits = !shown.picture.isNull() && shown.scale == scale_ && shown.dark == look.dark;
  const qreal ratio = devicePixelRatioF();
  QSize size = (QSizeF(shown.page.width, shown.page.height) * scale_ * ratio).toSize();
  const int rows = std::min(size.height(), static_cast<int>(std::ceil(high * ratio)));
  if (fits && shown.picture.height() >= rows) return shown.picture;
  // A page that begins to come into sight is drawn as far as it does; one that moves up, whole.
  if (!fits) size.setHeight(std::max(rows, 1));
  QPixmap picture(size);
  picture.setDevicePixelRatio(ratio);
  picture.fill(Qt::white);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.save();
  painter.scale(scale_, scale_);
  paintPage(painter, shown.page);
  painter.restore();
  // Ink on paper: by lamplight the white of the draw list is the paper's own tone.
  if (look.sheet != QColor(Qt::white)) {
    painter.setCompositionMode(QPainter::CompositionMode_Multiply);
    painter.fillRect(QRectF(QPointF(0, 0), QSizeF(size) / ratio), look.sheet);
  }
  painter.end();
  shown.picture = picture;
  shown.scale = scale_;
  shown.dark = look.dark;
  return shown.picture;
}

void SheetView::paintEmpty(QPainter& painter) const {
  const Look& look = Look::now();
  const QSizeF size = paper_ * scale_;
  const QRectF box(QPointF(std::max(kMargin, (viewport()->width() - size.width()) / 2), kMargin),
                   size);
  paintPaperShadow(painter, box);
  painter.fillRect(box, look.sheet);
  painter.setPen(look.faint);
  painter.setFont(deskFont(1.15));
  const auto& error = desk_.tableError();
  const QString why =
      error ? coreWords(error->text) : tr("My sheet grows here as the readings come in.");
  painter.drawText(box.adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, why);
}

void SheetView::paintEvent(QPaintEvent*) {
  QPainter painter(viewport());
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(viewport()->rect(), Look::now().desk);
  painter.translate(-horizontalScrollBar()->value(), -verticalScrollBar()->value());
  if (shown_.empty()) paintEmpty(painter);
  const QRectF inSight =
      QRectF(viewport()->rect())
          .translated(horizontalScrollBar()->value(), verticalScrollBar()->value());
  for (int i = 0; i < pageCount(); ++i) {
    const QRectF box = boxOf(i);
    if (!box.adjusted(-10, -10, 10, 10).intersects(inSight)) continue;
    paintPaperShadow(painter, box);
    painter.drawPixmap(box.topLeft(), pictureOf(i, inSight.bottom() - box.top()));
    if (hasFocus() && i == pageInSight()) {
      painter.setPen(QPen(Look::now().blue, kFirmLine));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(box.adjusted(1, 1, -1, -1));
    }
  }
  paintLit(painter);
}

int SheetView::pageInSight() const {
  const qreal middle = verticalScrollBar()->value() + viewport()->height() / 2.0;
  for (int i = 0; i < pageCount(); ++i) {
    if (middle < boxOf(i).bottom() + kMargin) return i;
  }
  return std::max(0, pageCount() - 1);
}

void SheetView::fit(Fit how) {
  fit_ = how;
  const int page = pageInSight();
  layOut();
  showPage(page);
  viewport()->update();
}

void SheetView::zoomBy(qreal factor) {
  setScale(scale_ * factor, QRectF(viewport()->rect()).center());
}

void SheetView::setScale(qreal scale, QPointF about) {
  const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
  const qreal before = scale_;
  fit_ = Fit::none;
  scale_ = std::clamp(scale, kLeastScale, kGreatestScale);
  layOut();
  const QPointF now = (scroll + about) * (scale_ / before) - about;
  horizontalScrollBar()->setValue(qRound(now.x()));
  verticalScrollBar()->setValue(qRound(now.y()));
  viewport()->update();
}

void SheetView::showPage(int index) {
  if (shown_.empty()) return;
  const QRectF box = boxOf(std::clamp(index, 0, pageCount() - 1));
  const qreal spare = std::max(0.0, viewport()->height() - box.height()) / 2;
  verticalScrollBar()->setValue(qRound(box.top() - std::max(kMargin, spare)));
}

void SheetView::scrollContentsBy(int, int) {
  viewport()->update();
  emit pageInSightChanged();
}

void SheetView::resizeEvent(QResizeEvent*) {
  const int page = verticalScrollBar()->value() == 0 ? 0 : pageInSight();
  layOut();
  if (fit_ != Fit::none) showPage(page);
}

void SheetView::wheelEvent(QWheelEvent* event) {
  if (event->modifiers().testFlag(Qt::ControlModifier)) {
    setScale(scale_ * std::pow(1.2, event->angleDelta().y() / 120.0), event->position());
    event->accept();
    return;
  }
  QAbstractScrollArea::wheelEvent(event);
}

void SheetView::keyPressEvent(QKeyEvent* event) {
  QScrollBar* const down = verticalScrollBar();
  QScrollBar* const across = horizontalScrollBar();
  switch (event->key()) {
    case Qt::Key_PageDown:
      showPage(pageInSight() + 1);
      return;
    case Qt::Key_PageUp:
      showPage(pageInSight() - 1);
      return;
    case Qt::Key_Home:
      showPage(0);
      return;
    case Qt::Key_End:
      showPage(pageCount() - 1);
      return;
    case Qt::Key_Up:
    case Qt::Key_Down:
      down->setValue(down->value() + (event->key() == Qt::Key_Up ? -30 : 30));
      return;
    case Qt::Key_Left:
    case Qt::Key_Right:
      across->setValue(across->value() + (event->key() == Qt::Key_Left ? -30 : 30));
      return;
    default:
      emit typed(event);
  }
}

std::optional<SheetView::Hit> SheetView::hit(QPointF at) const {
  const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
  std::optional<Hit> best;
  qreal nearest = kReach;
  for (int i = 0; i < pageCount(); ++i) {
    const QRectF box = boxOf(i);
    if (!box.contains(at + scroll)) continue;
    const QPointF paper = onPage(i, at);
    for (const PaperTarget& target : page(i).targets) {
      const qreal away = distanceOf(target, paper) * scale_;
      // Holes come last and lie on the edges that cross them, and coordinates on their rows.
      // What holds the work may be as narrow as that reach: an edge has to be met itself there.
      const bool onHeld = best && best->target.place.empty() && target.radius <= 0;
      const bool onTop =
          best && away < (onHeld ? kOnIt : kReach) &&
          (target.kind != best->target.kind ? target.kind != TargetKind::row
                                            : target.radius > 0 && best->target.radius <= 0);
      if (away >= nearest && !onTop) continue;
      nearest = away;
      best = Hit{i, target};
    }
  }
  return best;
}

std::optional<QPointF> SheetView::whereIs(const Id& place) const {
  const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
  for (int i = 0; i < pageCount(); ++i) {
    for (const PaperTarget& target : page(i).targets) {
      if (target.place != place || target.kind != TargetKind::pictured) continue;
      // A third along, where the middles of other lines do not cross it.
      const QPointF at(target.from.x + (target.to.x - target.from.x) / 3,
                       target.from.y + (target.to.y - target.from.y) / 3);
      return boxOf(i).topLeft() + at * scale_ - scroll;
    }
  }
  return std::nullopt;
}

std::optional<QPointF> SheetView::whereIsFigure(const Id& place, MachineAxis axis) const {
  const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
  const TargetKind wanted = axis == MachineAxis::x ? TargetKind::figureX : TargetKind::figureY;
  for (int i = 0; i < pageCount(); ++i) {
    for (const PaperTarget& target : page(i).targets) {
      if (target.place != place || target.kind != wanted) continue;
      const QPointF at((target.from.x + target.to.x) / 2, (target.from.y + target.to.y) / 2);
      return boxOf(i).topLeft() + at * scale_ - scroll;
    }
  }
  return std::nullopt;
}

void SheetView::light(const Id& place) {
  if (place == light_) return;
  light_ = place;
  viewport()->update();
}

/// What is pointed at, here or on the print, and what is chosen.
std::vector<Id> SheetView::lit() const {
  std::vector<Id> places = desk_.selection().places;
  if (!light_.empty()) places.push_back(light_);
  if (hovered_) places.push_back(hovered_->target.place);
  return places;
}

void SheetView::paintLit(QPainter& painter) const {
  const std::vector<Id> places = lit();
  if (places.empty()) return;
  const Look& look = Look::now();
  for (int i = 0; i < pageCount(); ++i) {
    const QPointF corner = boxOf(i).topLeft();
    const auto onView = [&](const PlanePoint& point) {
      return corner + QPointF(point.x, point.y) * scale_;
    };
    for (const PaperTarget& target : page(i).targets) {
      const QRectF box(onView(target.from), onView(target.to));
      if (target.place.empty()) {
        if (hovered_ != Hit{i, target}) continue;
        painter.setPen(QPen(look.blue, kFirmLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box);
        continue;
      }
      if (std::find(places.begin(), places.end(), target.place) == places.end()) continue;
      const bool figure = target.kind == TargetKind::figureX || target.kind == TargetKind::figureY;
      if (target.kind == TargetKind::row) {
        fillBlended(painter, box, look.wash);
      } else if (figure && hovered_ == Hit{i, target}) {
        painter.setPen(QPen(look.blue, kFirmLine));
        painter.drawLine(box.bottomLeft(), box.bottomRight());
      } else if (!figure) {
        painter.setPen(QPen(look.blue, 3));
        painter.setBrush(Qt::NoBrush);
        const qreal radius = std::max(target.radius * scale_, 4.0);
        if (target.from == target.to) {
          painter.drawEllipse(onView(target.from), radius, radius);
        } else {
          painter.drawLine(onView(target.from), onView(target.to));
        }
      }
    }
  }
}

void SheetView::hover(const std::optional<Hit>& under) {
  if (under == hovered_) return;
  const Id before = hovered_ ? hovered_->target.place : Id();
  hovered_ = under;
  const Id now = hovered_ ? hovered_->target.place : Id();
  viewport()->setCursor(under ? Qt::PointingHandCursor : Qt::ArrowCursor);
  const bool figure = under && (under->target.kind == TargetKind::figureX ||
                                under->target.kind == TargetKind::figureY);
  const bool held = under && under->target.place.empty();
  if (held) viewport()->setCursor(Qt::SizeAllCursor);
  viewport()->setToolTip(
      held     ? HeldDrag::tip(under->target)
      : figure ? tr("%1: a click shows the sum behind it").arg(QString::fromStdString(now))
               : QString::fromStdString(now));
  viewport()->update();
  if (now != before) emit hovered(now);
}

void SheetView::mousePressEvent(QMouseEvent* event) {
  pressed_ = dragged_ = event->position();
  held_ = true;
  const auto at = event->button() == Qt::LeftButton ? hit(pressed_) : std::nullopt;
  const auto drag = at ? HeldDrag::of(desk_, at->target) : std::nullopt;
  if (drag) taken_ = Taken{*drag, at->page, onPage(at->page, pressed_)};
}

QPointF SheetView::onPage(int page, QPointF at) const {
  const QPointF scroll(horizontalScrollBar()->value(), verticalScrollBar()->value());
  return (at + scroll - boxOf(page).topLeft()) / scale_;
}

void SheetView::mouseMoveEvent(QMouseEvent* event) {
  if (!held_) {
    hover(hit(event->position()));
    return;
  }
  const QPointF far = event->position() - pressed_;
  if (!dragging_ && std::hypot(far.x(), far.y()) <= kStill) return;
  if (!dragging_) viewport()->setCursor(Qt::ClosedHandCursor);
  dragging_ = true;
  if (taken_) {
    if (taken_->page < pageCount()) {
      taken_->drag.to(desk_, page(taken_->page), taken_->from,
                      onPage(taken_->page, event->position()));
    }
    return;
  }
  const QPointF by = event->position() - dragged_;
  dragged_ = event->position();
  horizontalScrollBar()->setValue(horizontalScrollBar()->value() - qRound(by.x()));
  verticalScrollBar()->setValue(verticalScrollBar()->value() - qRound(by.y()));
}

void SheetView::mouseReleaseEvent(QMouseEvent* event) {
  const bool click = held_ && !dragging_ && event->button() == Qt::LeftButton;
  held_ = dragging_ = false;
  viewport()->unsetCursor();
  if (taken_) HeldDrag::end(desk_);
  taken_.reset();
  if (!click) return;
  const auto at = hit(event->position());
  if (!at || at->target.place.empty()) return;
  const bool ofX = at->target.kind == TargetKind::figureX;
  if (ofX || at->target.kind == TargetKind::figureY) {
    emit figureAsked(at->target.place, ofX ? MachineAxis::x : MachineAxis::y);
  } else {
    emit pointedAt(at->target.place, event->modifiers().testFlag(Qt::ShiftModifier));
  }
}

bool SheetView::viewportEvent(QEvent* event) {
  if (event->type() == QEvent::Leave) hover({});
  if (event->type() == QEvent::Gesture) {
    auto* gesture = static_cast<QGestureEvent*>(event)->gesture(Qt::PinchGesture);
    if (auto* pinch = static_cast<QPinchGesture*>(gesture)) {
      setScale(scale_ * pinch->scaleFactor(), viewport()->mapFromGlobal(pinch->centerPoint()));
      return true;
    }
  }
  return QAbstractScrollArea::viewportEvent(event);
}

}  // namespace inchwright::app

#include "moc_sheet_view.cpp"
