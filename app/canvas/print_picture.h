#pragma once

#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "app/canvas/picture_layer.h"
#include "app/canvas/pictures_behind.h"
#include "app/picture/offer_reader.h"
#include "app/picture/picture_reader.h"
#include "app/session/work.h"

class QMimeData;

namespace inchwright::app {

/// The pictures under the face that is looked at: which they are, how far the reading and squaring
/// up of the one in front have come, and how one is laid down.
class PrintPicture : public QObject {
  Q_OBJECT

 public:
  explicit PrintPicture(Work& work, QObject* parent = nullptr);

  /// The one in front.
  const PictureLayer& layer() const { return layer_; }
  /// The foremost that shows a place; the one in front where none does.
  const PictureLayer& layerAt(QPointF inches) const;
  /// Paint all of them, and what of the pane they leave nothing of: as those of PictureLayer.
  bool paint(QPainter& painter, const PrintMap& map, const QRectF& visible, bool hurried);
  QRegion covered(const PrintMap& map) const;
  /// Of all of them: inches of the view, y up; null while there is nothing to show.
  QRectF bounds() const { return layer_.bounds().united(behind_.bounds()); }
  /// Whether the face has a picture, be it ready or not.
  bool wanted() const { return wanted_.has_value(); }
  /// Only the picture is seen: what is traced does not lie on it as it is shown.
  bool isBare() const { return showing_ != Showing::underFace; }
  /// How far places may lie from where it shows them, in inches: by its own lines and by points to
  /// spare; 0 where nothing tells.
  double squaringError() const;
  /// What is to be said on the print about it; empty when there is nothing.
  QString note() const;
  void setTone(const PictureTone& tone);

  /// Of what is under way, in percent; empty when nothing is.
  std::optional<int> progress() const { return reader_.progress(); }
  /// Whether what is wanted was stopped, and not begun again since.
  bool stopped() const { return stopped_; }
  /// Pictures may be read from now on. Until then nothing runs beside what is painted first.
  void letRead();
  /// Squares up the picture under the face: goes on where that was stopped, else asks what is
  /// known.
  void squareUp();
  /// Whether what is under way was just squared up, so that stopping it takes that back.
  bool canTakeBack() const { return progress() && squared_; }
  /// A squaring up that is stopped is taken back: the work is as it was before.
  void takeBack();

  /// Finds in the background what the picture offers.
  void findOffers();

  /// The first picture file among what is dropped or pasted; empty when there is none.
  static QString fileIn(const QMimeData* mime);
  /// Lays a picture underneath, from a file or the clipboard; it is kept in the document and then
  /// squared up. False when it can't be read; the desk has told why.
  bool takeFile(const QString& file);
  /// Asked before one is laid down; false leaves things as they are.
  void setMayLay(std::function<bool()> mayLay) { mayLay_ = std::move(mayLay); }
  bool paste();

 signals:
  void changed();  ///< something else is to be painted or said
  void turned();   ///< it lies elsewhere now, or another way of showing it began
  void came();     ///< the face has a picture now, or none any more
  void laid();     ///< a new one was laid down
  /// It was squared up by these points: where each was shown as it was taken, and is shown now.
  void squaredUp(const std::vector<std::pair<QPointF, QPointF>>& points);

 private:
  /// What of the pictures is to be seen: the one under this face, that one as it was taken while it
  /// is being squared up, or one of another face while this face is looked for on it.
  enum class Showing { underFace, asTaken, ofAnotherFace };

  void follow();
  void noteSquaring(Showing before);
  std::optional<LaidPicture> lookUp() const;
  std::optional<LaidPicture> laidBy(const PictureView& view) const;
  std::vector<LaidPicture> lookUpBehind() const;
  void want(std::optional<LaidPicture> laid);
  void take(std::shared_ptr<const SquaredPicture> picture);
  void tellSquared();
  void tellError();
  QString noteInFront() const;
  void followView();
  void dropOffers();
  void takeOffers(const std::shared_ptr<PictureOffers>& offers, const QString& trouble);
  void cancel();
  bool lay(const QString& name, const QByteArray& bytes);
  const Picture* underFace() const;
  /// What was squared up before the document was opened stays so in it.
  void stopOpened();

  Work& work_;
  PictureReader reader_;
  OfferReader offers_;
  QString offersTrouble_;
  std::optional<PictureView> offersView_;  ///< as it lay when they were looked for
  bool offersAsked_ = false;               ///< they are gone through as soon as they are there
  PictureLayer layer_;
  std::shared_ptr<const SquaredPicture> picture_;  ///< that it shows
  PicturesBehind behind_;
  Showing showing_ = Showing::underFace;
  std::optional<WantedPicture> wanted_;
  std::function<bool()> mayLay_ = [] { return true; };
  bool stopped_ = false;
  double squaringError_ = 0;                 ///< of the one in front
  std::vector<SquaringPoint> pointsBefore_;  ///< of the picture, as its squaring up began
  std::optional<Job> squared_;               ///< the work as the last squaring up left it
};

}  // namespace inchwright::app
