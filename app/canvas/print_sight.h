#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "app/canvas/print_layout.h"
#include "app/canvas/print_map.h"
#include "app/canvas/print_picture.h"
#include "app/session/work.h"

namespace inchwright::app {

/// What of their print is in sight, and where on the pane it lies: the map from inches to pixels,
/// the layout at that scale, and what is to be found under a pointer. No widget.
class PrintSight : public QObject {
  Q_OBJECT

 public:
  PrintSight(Work& work, PrintPicture& picture, QObject* parent = nullptr);

  const PrintMap& map() const { return map_; }
  const PrintLayout& layout() const;
  QRectF pane() const { return {QPointF(0, 0), pane_}; }
  void setPane(const QSizeF& pane);
  /// How many pixels from the left something else lies over the pane.
  void setCovered(std::function<qreal()> covered) { covered_ = std::move(covered); }

  void fit();  ///< all that is drawn, with its dimension lines
  void fitToSelection();
  void lookAt(QPointF inches, qreal scale);
  bool isFitted() const { return fitted_; }
  /// The second reading looks at the print itself, close up; else what is out of sight comes in.
  void bringIntoSight(const std::vector<Id>& places, const std::vector<Id>& readings);
  void moveByHand(const PrintMap& map);
  /// Whether a hand is moving the print just now.
  bool isMoving() const;
  /// From here on it stays where it is, whatever is drawn.
  void stayPut() { fitted_ = false; }

  /// Where a place is drawn on the pane; empty when this face does not show it.
  std::optional<QPointF> whereIs(const Id& place) const;
  /// In the axes of the current face, from a position on the pane.
  QPointF inFace(QPointF at) const;
  /// What lies under a pointer; on the bare picture there is only the place.
  Pointed hit(QPointF at) const;

 signals:
  void moved();    ///< the map is another
  void changed();  ///< what is drawn may be

 private:
  /// The print stays where it was to the eye, as nearly as one scale can do it.
  void stayStill(const std::vector<std::pair<QPointF, QPointF>>& points);
  QRectF content() const;
  PrintMap fittedMap() const;
  void enlarge(const std::vector<Id>& places);
  std::optional<QRectF> cutWithFigure(const Reading& reading) const;
  void setMap(const PrintMap& map);
  void forgetLayout();

  Work& work_;
  PrintPicture& picture_;
  QSizeF pane_;
  std::function<qreal()> covered_;
  PrintMap map_;
  QElapsedTimer moved_;       ///< since a hand moved the map
  bool fitted_ = false;       ///< still as fitted: another size or edit fits again
  double squaringError_ = 0;  ///< the layout was made with
  bool pictureSeen_ = false;  ///< the picture has been fitted once
  bool staysStill_ = false;   ///< what is being squared up comes where it lay
  mutable std::optional<PrintLayout> layout_;
};

}  // namespace inchwright::app
