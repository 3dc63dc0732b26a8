#pragma once

#include <QAbstractScrollArea>
#include <QPixmap>
#include <vector>

#include "app/session/desk.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// My sheet, the right of the two: the very pages that print, one below another on the desk.
///
/// A page is painted once into a picture of the screen's density and only again when its draw list
/// or the zoom changes. Wheel with Ctrl and pinch zoom, wheel and bare drag move.
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

  QSize sizeHint() const override { return {560, 480}; }

 signals:
  /// A key that belongs to the strip.
  void typed(QKeyEvent* event);
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
  /// A page as it was last painted; the picture is empty until it is in sight.
  struct Shown {
    Page page;
    QPixmap picture;
    qreal scale = 0;
    bool dark = false;
  };

  void follow();
  void layOut();
  void setScale(qreal scale, QPointF about);
  QRectF boxOf(int index) const;  ///< of a page, in the viewport, unscrolled
  const QPixmap& pictureOf(Shown& shown) const;
  void paintEmpty(QPainter& painter) const;

  Desk& desk_;
  std::vector<Shown> shown_;
  Fit fit_ = Fit::page;
  qreal scale_ = 2;  ///< device-independent pixels a millimetre
  QPointF dragged_;
  bool dragging_ = false;
};

}  // namespace inchwright::app
