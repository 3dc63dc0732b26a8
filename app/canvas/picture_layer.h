#pragma once

#include <QCache>
#include <QObject>
#include <QPainter>
#include <QPixmap>
#include <memory>
#include <optional>
#include <thread>
#include <tuple>

#include "app/canvas/print_map.h"
#include "app/canvas/squared_picture.h"
#include "app/session/desk.h"
#include "core/part/picture.h"

namespace inchwright::app {

/// The picture of the print under the face that is looked at.
///
/// Read and squared up in the background, shown in the desk's own paper and pencil (white becomes
/// the paper, black the pencil, so that it suits the lamplight too). Painted from tiles that are
/// kept while the scale stays, each from the level of the picture that fits the scale.
class PictureLayer : public QObject {
  Q_OBJECT

 public:
  explicit PictureLayer(Desk& desk, QObject* parent = nullptr);
  ~PictureLayer() override;  ///< stops what is under way and waits for it

  /// What of the pictures is to be seen: the one under this face, that one as it was taken while it
  /// is being squared up, or one of another face while this face is looked for on it.
  enum class Showing { underFace, asTaken, ofAnotherFace };
  /// Looks which picture is wanted. Starts reading it when it is another than before, once there is
  /// leave to.
  void follow(Showing showing);
  /// Pictures may be read from now on. Until then nothing runs beside what is painted first.
  void letRead();

  /// Whether the face has a picture, be it ready or not.
  bool wanted() const { return wanted_.has_value(); }
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

  /// Whether what is wanted is squared up, and not only read.
  bool squaresUp() const { return wanted_ && !wanted_->points.empty(); }
  /// Under way, in percent; empty when nothing is.
  std::optional<int> progress() const;
  /// Stops what is under way, at once; what it would have shown never comes.
  void cancel();
  /// Whether what is wanted was stopped, and not begun again since.
  bool stopped() const { return stopped_; }
  /// Begins anew with what was stopped.
  void resume();
  /// Why the picture can't be shown; empty when it can.
  const QString& trouble() const { return trouble_; }

  const PictureTone& tone() const { return tone_; }
  void setTone(const PictureTone& tone);

 signals:
  void changed();

 private:
  struct Wanted {
    PictureBytes bytes;
    QString file;
    int page = 1;
    std::vector<SquaringPoint> points;
    QPointF at;

    bool operator==(const Wanted&) const = default;
  };

  std::optional<Wanted> lookUp(Showing showing) const;
  void begin();
  void start();
  void stop();
  void arrived(const std::shared_ptr<WorkUnderWay>& work, std::optional<SquaredPicture> picture,
               const QString& trouble);
  /// What was seen at the last scale, at half of its resolution.
  struct Seen {
    QImage image;
    QRectF inches;
  };
  bool covers() const;
  Seen lastSeen() const;
  void forgetTiles();
  QPixmap tile(const PrintMap& map, qreal ratio, int column, int row);
  void draw(QPainter& painter, const QRectF& target, const QRectF& inches, qreal perInch) const;
  void colour(QImage& image) const;

  Desk& desk_;
  std::optional<Wanted> wanted_;
  std::optional<SquaredPicture> shown_;
  std::shared_ptr<WorkUnderWay> work_;
  std::thread thread_;
  bool mayRead_ = false;
  bool stopped_ = false;
  QString trouble_;
  PictureTone tone_;
  QCache<std::pair<int, int>, QPixmap> tiles_;
  std::tuple<qreal, qreal, bool> tilesFor_{0, 0, false};  ///< scale, ratio, lamplight
  Seen before_;         ///< while not all tiles of this scale are made
  PrintMap paintedBy_;  ///< the last time
  QRectF painted_;      ///< on the widget
};

}  // namespace inchwright::app
