#pragma once

#include <QAbstractScrollArea>
#include <QPixmap>
#include <optional>
#include <vector>

#include "app/session/desk.h"
#include "app/sheet/held_drag.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// My sheet, the right of the two: the very pages that print, one below another on the desk.
///
/// A page is painted once into a picture of the screen's density and only again when its draw list
/// or the zoom changes. Wheel with Ctrl and pinch zoom, wheel and bare drag move. A
/// click on a hole or an edge of the pictured part, or on a row, points at it; one on a coordinate
/// asks for the sum behind it. What the pointer is on lights up here and, by `hovered`, on the
/// print.
class SheetView : public QAbstractScrollArea {
  Q_OBJECT

 public:
  explicit SheetView(Desk& desk, QWidget* parent = nullptr);

  enum class Fit { page, width, none };
  void fit(Fit how);
  void zoomBy(qreal factor);
  qreal pixelsPerInch() const { return 25.4 * scale_; }
  void showPage(int index);
  int pageInSight() const;
  int pageCount() const { return static_cast<int>(shown_.size()); }
  /// Requires `index` < pageCount().
  const Page& page(int index) const;
  /// Where a place is pictured, on the viewport; empty when no page shows it.
  std::optional<QPointF> whereIs(const Id& place) const;
  /// Where a coordinate stands, on the viewport; empty when no page has it.
  std::optional<QPointF> whereIsFigure(const Id& place, MachineAxis axis) const;
  /// Lights a place from elsewhere, such as one that is pointed at on the print; empty: none.
  void light(const Id& place);

  QSize sizeHint() const override { return {560, 480}; }

 signals:
  /// A key that belongs to the strip.
  void typed(QKeyEvent* event);
  /// A click on a place where the part is pictured; `extend` with Shift.
  void pointedAt(const Id& place, bool extend);
  /// A click on a coordinate.
  void figureAsked(const Id& place, MachineAxis axis);
  /// The place the pointer is on, in the picture or the rows; empty when it is on none.
  void hovered(const Id& place);
  void pageInSightChanged();
  void zoomChanged();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  bool viewportEvent(QEvent* event) override;
  void scrollContentsBy(int dx, int dy) override;

 private:
  /// A page as it was last painted: nothing until it is in sight.
  struct Shown {
    Page page;
    QPixmap picture;  ///< of as much from the top as was in sight
    qreal scale = 0;
    bool dark = false;
    bool followed = false;  ///< nothing was edited since
  };

  void follow();
  void layOut();
  void setScale(qreal scale, QPointF about);
  QRectF boxOf(int index) const;  ///< of a page, in the viewport, unscrolled
  QSizeF paper() const;           ///< mm
  /// At least the top of a page, `high` in device-independent pixels.
  const QPixmap& pictureOf(int index, qreal high);
  void paintEmpty(QPainter& painter) const;
  struct Hit {
    int page = 0;
    PaperTarget target;

    bool operator==(const Hit&) const = default;
  };
  /// What is pictured at a place of the viewport: a hole before an edge, the nearest before others.
  std::optional<Hit> hit(QPointF at) const;
  QPointF onPage(int page, QPointF at) const;  ///< mm, of a place of the viewport
  void paintLit(QPainter& painter) const;
  void hover(const std::optional<Hit>& under);
  std::vector<Id> lit() const;

  Desk& desk_;
  std::vector<Shown> shown_;
  QSizeF paper_;  ///< of every page, mm
  Fit fit_ = Fit::page;
  qreal scale_ = 2;  ///< device-independent pixels a millimetre
  QPointF pressed_;
  QPointF dragged_;
  bool held_ = false;      ///< the button is down
  bool dragging_ = false;  ///< and the paper goes with it
  struct Taken {
    HeldDrag drag;
    int page = 0;
    QPointF from;  ///< on the page, mm
  };
  std::optional<Taken> taken_;  ///< or what was taken hold of goes
  std::optional<Hit> hovered_;
  Id light_;
};

}  // namespace inchwright::app
