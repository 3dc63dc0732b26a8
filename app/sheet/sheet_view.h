#pragma once

#include <QAbstractScrollArea>
#include <QPixmap>
#include <optional>
#include <vector>

#include "app/session/desk.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// My sheet, the right of the two: the very pages that print, one below another on the desk.
///
/// A page is painted once into a picture of the screen's density and only again when its draw list
/// or the zoom changes. Wheel with Ctrl and pinch zoom, wheel and bare drag move. A
/// click on a hole or an edge of the pictured part points at it.
class SheetView : public QAbstractScrollArea {
  Q_OBJECT

 public:
  explicit SheetView(Desk& desk, QWidget* parent = nullptr);

  enum class Fit { page, width, none };
  void fit(Fit how);
  void zoomBy(qreal factor);
  void showPage(int index);
  int pageInSight() const;
  int pageCount() const { return static_cast<int>(shown_.size()); }
  /// Requires `index` < pageCount().
  const Page& page(int index) const;
  /// Where a place is pictured, on the viewport; empty when no page shows it.
  std::optional<QPointF> whereIs(const Id& place) const;

  QSize sizeHint() const override { return {560, 480}; }

 signals:
  /// A key that belongs to the strip.
  void typed(QKeyEvent* event);
  /// A click on a place where the part is pictured; `extend` with Shift.
  void pointedAt(const Id& place, bool extend);
  void pageInSightChanged();

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
  void paintHovered(QPainter& painter) const;

  Desk& desk_;
  std::vector<Shown> shown_;
  QSizeF paper_;  ///< of every page, mm
  Fit fit_ = Fit::page;
  qreal scale_ = 2;  ///< device-independent pixels a millimetre
  QPointF pressed_;
  QPointF dragged_;
  bool held_ = false;      ///< the button is down
  bool dragging_ = false;  ///< and the paper goes with it
  std::optional<Hit> hovered_;
};

}  // namespace inchwright::app
