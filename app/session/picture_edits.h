#pragma once

#include <QByteArray>
#include <QPointF>
#include <QString>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright::app {

/// The file a picture is linked to: beside the document or in a folder below it, as `print.png` or
/// `prints/print.png`. Empty for a link that leads anywhere else, which a document from somebody
/// else has no business to.
QString linkedFile(const QString& document, const Picture& picture);

/// A linked picture with the bytes of its file kept inside: the same page, squared up by the same
/// points, also where it is kept with fewer pixels. Errors: as keptPicture.
Result<Picture> keptInside(const Picture& linked, const QByteArray& bytes);

/// The view that gives a face its picture, of several the one in front; null when there is none.
const PictureView* viewOf(const Part& part, Face face);
/// All views of a face, the one in front first.
std::vector<const PictureView*> viewsOf(const Part& part, Face face);
/// The picture under a face, of several the one in front; null when there is none.
const Picture* pictureUnder(const Job& job, const Part& part, Face face);

/// The views whose pictures are squared up and may show other faces as well, one a picture.
std::vector<const PictureView*> squaredViews(const Job& job, const Part& part);
/// Where the zero of the view's face lies on the squared-up print, inches.
QPointF offsetOf(const PictureView& view);
/// From a place of the view as drawn upright, inches about the face's zero, to the squared-up print
/// and back.
QPointF onPrint(QPointF inView, const PictureView& view);
QPointF inView(QPointF onPrint, const PictureView& view);
/// How a view's picture is turned for the view to stand upright.
int uprightTurn(const PictureView& view);

/// Whether the view of a face shows its first or second axis reversed: the back and the left side
/// are seen with the part's axis running to the left, the bottom with Y running down.
struct ViewSense {
  bool firstReversed = false;
  bool secondReversed = false;
};
ViewSense viewSense(Face face);
/// From the face's own axes to the view as drawn (x right, y up), and back: the same map.
QPointF asViewed(QPointF inFace, Face face);

/// A traced position as the document keeps it: inches to a thousandth, which is finer than anyone
/// can point.
std::string tracedText(double inches);

/// A picture kept in the document and laid under a face, in front of what lies there. A job without
/// parts gets one of the picture's name. Requires: `part` is an index of a part, if there are any.
Result<Job> layPicture(const Job& job, int part, Face face, const QString& name,
                       const QByteArray& bytes);
/// Takes the picture in front from under a face; from the document too, when it lies nowhere else.
Job liftPicture(const Job& job, int part, Face face);
/// Of several pictures under a face the next one in front, and what was in front behind all others.
/// Requires: `part` is an index of a part.
Job nextInFront(const Job& job, int part, Face face);
/// Turns a picture as it was taken by a quarter, anticlockwise. Errors: `notFound`.
Result<Job> turnAsTaken(const Job& job, const std::string& picture);
/// Errors: `notFound`.
Result<Job> setPicturePoints(const Job& job, const std::string& picture,
                             const std::vector<SquaringPoint>& points);

/// Two lengths written one behind the other, as across and up: `3 7/8 0`, `3 7/8, 1 1/2`. Errors:
/// those of readLength, `badText` where it is not clear where the second begins.
Result<std::pair<Lettered, Lettered>> readTwoLengths(const std::string& text, Unit unit);

}  // namespace inchwright::app
