#pragma once

#include <QKeyEvent>
#include <QWidget>
#include <optional>
#include <vector>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/print_map.h"
#include "app/session/work.h"

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
  ~PrintView() override;

  void fit();  ///< all that is drawn, with its dimension lines
  void fitToSelection();
  void zoomBy(qreal factor);  ///< about the middle of the sheet
  const PrintMap& map() const { return map_; }

  QSize sizeHint() const override { return {640, 480}; }

 signals:
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
  bool event(QEvent* event) override;

 private:
  struct Layout;
  const Layout& layoutNow() const;
  void forgetLayout();
  Pointed hit(QPointF at) const;
  /// In the axes of the current face, from a position on the widget.
  QPointF inFace(QPointF at) const;
  void dragTrace(QPointF to);
  void nudge(QPointF pixels);
  void walk(bool forward);
  void bringIntoSight(const std::vector<Id>& places);
  void setMap(const PrintMap& map);

  Work& work_;
  PrintMap map_;
  bool fitted_ = false;  ///< still as fitted: a resize fits again
  mutable std::unique_ptr<Layout> layout_;
  Id hovered_;
  std::vector<Id> shownReadings_;

  enum class Drag { none, undecided, trace, paper };
  Drag drag_ = Drag::none;
  QPointF pressed_;
  QPointF last_;
  Id dragged_;
};

}  // namespace inchwright::app
