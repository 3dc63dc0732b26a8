#pragma once

#include <QKeyEvent>
#include <QWidget>
#include <optional>
#include <vector>

#include "app/canvas/print_painter.h"
#include "app/canvas/print_picture.h"
#include "app/canvas/print_pointer.h"
#include "app/canvas/print_sight.h"
#include "app/canvas/print_things.h"
#include "app/session/work.h"

class QShortcut;
class QTouchEvent;

namespace inchwright::app {

/// Their print, the left of the two sheets: traces and dimension lines of one face, to point at.
///
/// A click goes to Work; in looking, dragging a trace moves it (one step of undo a drag). Wheel and
/// pinch zoom about the pointer, the middle button or the bare paper pans. Keys that write go to
/// the strip through `typed`.
class PrintView : public QWidget {
  Q_OBJECT

 public:
  explicit PrintView(Work& work, QWidget* parent = nullptr);

  void fit() { sight_.fit(); }
  void fitToSelection() { sight_.fitToSelection(); }
  void zoomBy(qreal factor);  ///< about the middle of the sheet
  /// Shows a place of the view, in inches, in the middle at a scale in pixels an inch.
  void lookAt(QPointF inches, qreal scale) { sight_.lookAt(inches, scale); }
  /// Whether all is in sight as it was fitted, and stays so.
  bool isFitted() const { return sight_.isFitted(); }
  const PrintMap& map() const { return sight_.map(); }
  std::optional<QPointF> whereIs(const Id& place) const { return sight_.whereIs(place); }

  /// Whether all that is mine is hidden, so that their print alone is seen.
  bool hidesMine() const { return hidesMine_; }
  void hideMine(bool on);

  /// Lights a place from elsewhere, such as one that is pointed at on my sheet; empty: none.
  void light(const Id& place);

  /// The picture under the print; dropped on it, it is laid underneath.
  PrintPicture& picture() { return picture_; }

  /// Everything to be pointed at, in words. None while a picture is being squared up.
  int thingCount() const;
  PrintThing thing(int index) const;  ///< requires 0 ≤ index < thingCount()
  void pointAt(int index);            ///< as a click on it would

  QSize sizeHint() const override { return {640, 480}; }

 signals:
  void zoomChanged();
  /// The place the pointer is on; empty when it is on none.
  void hovered(const Id& place);
  /// A double click on a place or figure, or F2: it is to be put right.
  void amendWanted();
  void deleteWanted();
  /// The right button, or the key for it: what can be done with what lies there?
  void choicesWanted(const Pointed& under, const QPoint& global);
  /// A key that belongs to the strip.
  void typed(QKeyEvent* event);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  bool event(QEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  void wire();
  void letReadUnseen();
  void press(QPointF at, Qt::MouseButton button);
  void act(const PointerDeed& deed, Qt::KeyboardModifiers with = {});
  void click(QPointF at, Qt::KeyboardModifiers with);
  /// Whether a click falls on the picture's own lines, which draw it to themselves.
  bool aimsAtPicture() const;
  QPointF aimed(QPointF at) const;
  void moveLoupe(std::optional<QPointF> at);
  bool touch(QTouchEvent& event);
  void dragTrace(QPointF to);
  void dragFigure(QPointF to);
  void nudge(QPointF pixels);
  void walk(bool forward);

  PrintScene sceneNow() const;
  bool isEmpty(const PrintScene& scene) const;
  void refresh();
  void paintNote(QPainter& painter);
  void paintInvitation(QPainter& painter);

  Work& work_;
  PrintPicture picture_;
  PrintSight sight_;
  QShortcut* stop_;  ///< while what was just squared up is worked out, wherever one types
  mutable TextWidths nameWidths_;
  std::vector<Inked> inked_;  ///< what was drawn last
  Doing inkedFor_ = Doing::looking;
  bool refreshing_ = false;
  bool inviting_ = false;
  Id hovered_;
  Id light_;  ///< from elsewhere
  std::vector<Id> shownReadings_;
  bool hidesMine_ = false;
  std::optional<QPointF> loupe_;  ///< the pointer it lies beside
  PrintPointer pointer_;
  Id grasped_;         ///< the trace that would be dragged
  Id graspedReading_;  ///< or the reading, onto the print's own figure
};

}  // namespace inchwright::app
