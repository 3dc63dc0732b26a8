#pragma once

#include <QElapsedTimer>
#include <QKeyEvent>
#include <QWidget>
#include <optional>
#include <vector>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/picture_layer.h"
#include "app/canvas/print_map.h"
#include "app/canvas/print_painter.h"
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
  ~PrintView() override;

  void fit();  ///< all that is drawn, with its dimension lines
  void fitToSelection();
  void zoomBy(qreal factor);  ///< about the middle of the sheet
  const PrintMap& map() const { return map_; }
  /// Where a place is drawn on the widget; empty when this face does not show it.
  std::optional<QPointF> whereIs(const Id& place) const;

  /// The picture under the print: read from a file, dropped on it, or pasted. It is kept in the
  /// document and then squared up. False when it can't be read; the desk has told why.
  bool takePicture(const QString& file);
  bool paste();
  PictureLayer& picture() { return picture_; }
  /// Squares up the picture under the face: goes on where that was stopped, else asks what is
  /// known.
  void squareUp();

  /// Everything to be pointed at, in words: the places first, then the readings. None while a
  /// picture is being squared up.
  struct Thing {
    Id id;
    bool reading = false;
    bool chosen = false;
    QString name;    ///< `hole A`, `reading r1, L to A: 3/8`
    QString status;  ///< placed, loose, in dispute …
    QRectF box;      ///< on the widget
  };
  int thingCount() const;
  Thing thing(int index) const;  ///< requires 0 ≤ index < thingCount()
  void pointAt(int index);       ///< as a click on it would

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
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  bool event(QEvent* event) override;

 private:
  struct Layout;
  const Layout& layoutNow() const;
  const DrawnFace& drawn() const;
  const std::vector<DimensionLine>& dimensions() const;
  QRectF figureBox(const DimensionLine& line) const;
  PrintMap fittedMap() const;
  Thing placeThing(const DrawnPlace& place) const;
  Thing readingThing(const DimensionLine& line) const;
  void forgetLayout();
  Pointed hit(QPointF at) const;
  /// On the picture, where what is traced is drawn by a line near by.
  QPointF snapped(QPointF widget) const;
  /// In the axes of the current face, from a position on the widget.
  QPointF inFace(QPointF at) const;
  void press(QPointF at, Qt::MouseButton button);
  void moveTo(QPointF at);
  void release(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers with);
  bool touch(QTouchEvent& event);
  void dragTrace(QPointF to);
  void nudge(QPointF pixels);
  void walk(bool forward);
  void bringIntoSight(const std::vector<Id>& places);
  void enlarge(const std::vector<Id>& places);
  void followPicture();
  void letReadUnseen();
  void stopSquaring();
  void stopOpened();
  bool squaring() const { return work_.doing() == Doing::squaring; }
  /// Only the picture is seen: what is traced does not lie on it as it is shown.
  bool onBarePicture() const { return squaring() || work_.doing() == Doing::placingView; }
  /// What there is to see: the picture, or what is traced.
  QRectF content() const;
  bool lay(const QString& name, const QByteArray& bytes);
  void paintNote(QPainter& painter);
  void paintInvitation(QPainter& painter);
  void setMap(const PrintMap& map);
  PrintScene sceneNow() const;
  bool isEmpty(const PrintScene& scene) const;
  void refresh();
  void moveMap(const PrintMap& map);  ///< by a hand

  Work& work_;
  PictureLayer picture_;
  PictureLayer::Showing showing_ = PictureLayer::Showing::underFace;
  bool pictureSeen_ = false;  ///< the picture has been fitted once
  QShortcut* stop_;           ///< while what was just squared up is worked out, wherever one types
  std::vector<SquaringPoint> pointsBefore_;  ///< of the picture, as its squaring up began
  std::optional<Job> squared_;               ///< the work as the last squaring up left it
  PrintMap map_;
  QElapsedTimer moved_;  ///< since a hand moved the map
  bool fitted_ = false;  ///< still as fitted: a resize fits again
  mutable std::unique_ptr<Layout> layout_;
  mutable TextWidths nameWidths_;
  std::vector<Inked> inked_;  ///< what was drawn last
  Doing inkedFor_ = Doing::looking;
  bool refreshing_ = false;
  bool inviting_ = false;
  Id hovered_;
  std::vector<Id> shownReadings_;

  enum class Drag { none, undecided, trace, paper };
  Drag drag_ = Drag::none;
  /// Two fingers on a screen: what they began with.
  struct Pinch {
    PrintMap map;
    qreal apart = 1;
    QPointF middle;
  };
  std::optional<Pinch> pinch_;
  QPointF pressed_;
  QPointF last_;
  Id dragged_;
};

}  // namespace inchwright::app
