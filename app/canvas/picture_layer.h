#pragma once

#include <QCache>
#include <QPainter>
#include <QPixmap>
#include <optional>
#include <tuple>

#include "app/canvas/print_map.h"
#include "app/picture/squared_picture.h"
#include "core/part/picture.h"

namespace inchwright::app {

/// A picture as it lies under the print, in the desk's own paper and pencil: white becomes the
/// paper, black the pencil, so that it suits the lamplight too.
///
/// Painted from tiles that are kept while the scale stays, each from the level of the picture that
/// fits the scale.
class PictureLayer {
 public:
  PictureLayer();

  void show(SquaredPicture picture);
  void clear();
  bool isEmpty() const { return !shown_.has_value(); }
  /// Where the picture's own zero is drawn: so many inches to the left and below of the view's.
  void lieAt(QPointF at);
  const PictureTone& tone() const { return tone_; }
  /// False when it is shown so already.
  bool setTone(const PictureTone& tone);

  /// Inches of the view, y up; null while there is nothing to show.
  QRectF bounds() const;
  /// Paints what of it is visible. When hurried, as while a hand zooms, no longer than a frame
  /// takes: what is not made in time is shown as it was at the scale before, and false is returned,
  /// so that it is painted again.
  bool paint(QPainter& painter, const PrintMap& map, const QRectF& visible, bool hurried = false);
  /// What of the widget `paint` leaves nothing of that was there before, where it is asked to
  /// paint.
  QRect covered(const PrintMap& map) const;
  /// An enlarged cut of the picture with its sharpest pixels, `size` device pixels round a box of
  /// inches; null when there is none.
  QImage cut(const QRectF& inches, const QSize& size) const;
  /// A place of the view, in inches, drawn to the picture's own lines within reach of it; the place
  /// itself where there are none.
  QPointF snapped(QPointF inches, double reach) const;

 private:
  /// What was seen at the last scale, at half of its resolution.
  struct Seen {
    QImage image;
    QRectF inches;
  };
  struct Placed {
    int column, row;
    QRectF box;
    bool seenBefore;
  };

  bool covers() const;
  Seen lastSeen() const;
  void forgetTiles();
  void followScale(const PrintMap& map, qreal ratio, bool hurried);
  std::vector<Placed> tilesIn(const QRectF& part, const PrintMap& map, qreal ratio) const;
  QPixmap tile(const PrintMap& map, qreal ratio, int column, int row);
  void draw(QPainter& painter, const QRectF& target, const QRectF& inches, qreal perInch) const;
  void colour(QImage& image) const;

  std::optional<SquaredPicture> shown_;
  QPointF at_;
  PictureTone tone_;
  QCache<std::pair<int, int>, QPixmap> tiles_;
  std::tuple<qreal, qreal, bool> tilesFor_{0, 0, false};  ///< scale, ratio, lamplight
  Seen before_;         ///< while not all tiles of this scale are made
  PrintMap paintedBy_;  ///< the last time
  QRectF painted_;      ///< on the widget
};

}  // namespace inchwright::app
