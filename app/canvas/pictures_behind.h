#pragma once

#include <QObject>
#include <QRegion>
#include <memory>
#include <optional>
#include <vector>

#include "app/canvas/picture_layer.h"
#include "app/picture/picture_reader.h"

namespace inchwright::app {

/// A picture that is wanted under a face, and how it lies there.
struct LaidPicture {
  WantedPicture wanted;
  QPointF at;  ///< where its own zero is drawn: as PictureLayer::lieAt
  PictureTone tone;

  bool operator==(const LaidPicture&) const = default;
};

/// The other pictures under a face, such as the second half of a long print, behind the one in
/// front. Read in the background, one after the other.
class PicturesBehind : public QObject {
  Q_OBJECT

 public:
  explicit PicturesBehind(QObject* parent = nullptr);

  /// From the foremost to the hindmost. What is read already is not read again.
  void want(const std::vector<LaidPicture>& laid);
  bool isEmpty() const { return behind_.empty(); }
  /// Pictures may be read from now on.
  void letRead() { reader_.letRead(); }
  bool isReading() const { return reader_.progress().has_value(); }
  /// Why one of them can't be shown; empty when all can.
  QString trouble() const;

  /// What was read of a picture; null while it was not.
  std::shared_ptr<const SquaredPicture> readOf(const WantedPicture& wanted) const;
  /// Keeps what was read of a picture elsewhere, so that it need not be read again here.
  void keep(const WantedPicture& wanted, std::shared_ptr<const SquaredPicture> picture);

  /// Inches of the view, y up; null while there is nothing to show.
  QRectF bounds() const;
  /// As those of PictureLayer.
  bool paint(QPainter& painter, const PrintMap& map, const QRectF& visible, bool hurried);
  QRegion covered(const PrintMap& map) const;
  /// The foremost that shows a place; null where none does.
  const PictureLayer* layerAt(QPointF inches) const;
  /// The greatest error of those that are shown, inches: as squaringErrorOf.
  double squaringError() const;

 signals:
  void changed();

 private:
  struct One {
    LaidPicture laid;
    PictureLayer layer;
    std::shared_ptr<const SquaredPicture> picture;
    QString trouble;
  };

  void readNext();
  void take(One& one, std::shared_ptr<const SquaredPicture> picture);

  std::vector<std::unique_ptr<One>> behind_;
  std::optional<WantedPicture> reading_;
  std::vector<std::pair<WantedPicture, std::shared_ptr<const SquaredPicture>>> kept_;
  PictureReader reader_;
};

/// How far places may lie from where a picture shows them, in inches: by its own lines and by
/// points to spare; 0 where nothing tells.
double squaringErrorOf(const SquaredPicture& picture, const WantedPicture& wanted);

}  // namespace inchwright::app
