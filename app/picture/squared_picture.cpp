#include "app/picture/squared_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <thread>

#include "core/geometry/warp.h"

namespace inchwright::app {
namespace {

constexpr int kSmallestLevel = 256;
constexpr int kLookedAt = 900;  // pixels wide: a level whose lines can be looked for
constexpr int kRowsAtATime = 32;
constexpr int kLargestSide = 32'000;
constexpr double kMostSquaredPixels = 30e6;

struct Squaring {
  Homography pixelToInches;
  QRectF box;  ///< inches, y up
  double pixelsPerInch = 0;
};

/// Below the line of the horizon a map turns inside out; -1, 1, by side.
int sideOfHorizon(const Homography& map, PlanePoint p) {
  const auto& m = map.matrix();
  return m[6] * p.x + m[7] * p.y + m[8] < 0 ? -1 : 1;
}

std::array<PlanePoint, 4> cornersOf(const QRectF& box) {
  return {{{box.left(), box.top()},
           {box.right(), box.top()},
           {box.right(), box.bottom()},
           {box.left(), box.bottom()}}};
}

bool clearOfHorizon(const Homography& map, const QRectF& box, PlanePoint inside) {
  const auto corners = cornersOf(box);
  const int side = sideOfHorizon(map, inside);
  return std::all_of(corners.begin(), corners.end(),
                     [&](PlanePoint p) { return sideOfHorizon(map, p) == side; });
}

QRectF boxOf(const std::vector<PlanePoint>& points) {
  double left = points[0].x, right = left, low = points[0].y, high = low;
  for (const PlanePoint& p : points) {
    left = std::min(left, p.x);
    right = std::max(right, p.x);
    low = std::min(low, p.y);
    high = std::max(high, p.y);
  }
  return {QPointF(left, low), QPointF(right, high)};
}

/// What of the print the picture can show: all of it, but not so near the horizon that it would
/// stretch without end.
std::optional<QRectF> shownBox(const Homography& toInches, const QSize& size,
                               const std::vector<PlanePoint>& known, PlanePoint middlePixel) {
  const QRectF pixels(QPointF(0, 0), QSizeF(size));
  const QRectF named = boxOf(known);
  const double reach = std::max(named.width(), named.height());
  const Homography toPixel = toInches.inverse();
  const PlanePoint middle{named.center().x(), named.center().y()};
  for (const double wider : {3.0, 1.5, 0.75, 0.3, 0.1, 0.0}) {
    const double by = wider * reach;
    QRectF box = named.adjusted(-by, -by, by, by);
    if (clearOfHorizon(toInches, pixels, middlePixel)) {
      std::vector<PlanePoint> corners;
      for (const PlanePoint& p : cornersOf(pixels)) corners.push_back(toInches.map(p));
      box = box.intersected(boxOf(corners));
    }
    if (!box.isEmpty() && clearOfHorizon(toPixel, box, middle)) return box;
  }
  return std::nullopt;
}

/// Pixels of the picture an inch of the print, at a pixel: from the area a small square covers.
double resolutionAt(const Homography& toInches, PlanePoint at) {
  const PlanePoint o = toInches.map(at), a = toInches.map({at.x + 1, at.y}),
                   b = toInches.map({at.x, at.y + 1});
  const double area = std::abs((a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x));
  return 1 / std::sqrt(std::max(area, 1e-12));
}

std::optional<Squaring> squaringBy(const QSize& size, const std::vector<SquaringPoint>& points) {
  const std::vector<KnownPoint> known = knownPoints(points);
  std::vector<PlanePoint> inches;
  PlanePoint middle;
  for (const KnownPoint& one : known) {
    inches.push_back(one.inches);
    middle.x += one.pixel.x / static_cast<double>(known.size());
    middle.y += one.pixel.y / static_cast<double>(known.size());
  }
  const auto squared = squareUp(known);
  if (!squared.ok()) return std::nullopt;
  const auto box = shownBox(squared->pixelToInches, size, inches, middle);
  if (!box) return std::nullopt;
  double resolution = resolutionAt(squared->pixelToInches, middle);
  const double area = box->width() * box->height(), side = std::max(box->width(), box->height());
  const double most =
      std::min(kMostSquaredPixels, 1.25 * size.width() * static_cast<double>(size.height()));
  resolution = std::min({resolution, std::sqrt(most / area), kLargestSide / side});
  return Squaring{squared->pixelToInches, *box, resolution};
}

/// From a pixel of the squared picture to one of the source, both by their centres.
Homography outToIn(const Squaring& squaring) {
  const double inch = 1 / squaring.pixelsPerInch;
  const Homography toInches({inch, 0, squaring.box.left() + inch / 2, 0, -inch,
                             squaring.box.bottom() - inch / 2, 0, 0, 1});
  const Homography toCentre({1, 0, -0.5, 0, 1, -0.5, 0, 0, 1});
  return toCentre.after(squaring.pixelToInches.inverse().after(toInches));
}

std::optional<QImage> warped(const QImage& source, const Squaring& squaring, WorkUnderWay& work) {
  const int width =
      std::max(2, static_cast<int>(std::lround(squaring.box.width() * squaring.pixelsPerInch)));
  const int height =
      std::max(2, static_cast<int>(std::lround(squaring.box.height() * squaring.pixelsPerInch)));
  QImage out(width, height, QImage::Format_RGB32);
  if (out.isNull()) return std::nullopt;
  const PixelsIn from{source.constBits(), source.width(), source.height(), source.bytesPerLine()};
  const PixelsOut into{out.bits(), width, height, out.bytesPerLine()};
  const Homography map = outToIn(squaring);
  std::atomic<int> next{0};
  const auto take = [&] {
    while (!work.cancelled) {
      const int row = next.fetch_add(kRowsAtATime);
      if (row >= height) return;
      warpRows(from, into, map, row, std::min(row + kRowsAtATime, height));
      work.percent = std::min(90, 90 * row / height);
    }
  };
  std::thread second(take);
  take();
  second.join();
  if (work.cancelled) return std::nullopt;
  return out;
}

}  // namespace

QPointF asTaken(const SquaringPoint& point) {
  return {point.pixelX / kAsTakenPixelsPerInch, -point.pixelY / kAsTakenPixelsPerInch};
}

Result<Homography> pixelsToFace(const std::vector<SquaringPoint>& points, PlanePoint zero) {
  if (points.empty()) {
    return Error{
        ErrorCode::badRequest, "square the picture up first: nothing says where it lies", {}};
  }
  std::vector<KnownPoint> known = knownPoints(points);
  for (KnownPoint& one : known) one.inches = {one.inches.x - zero.x, one.inches.y - zero.y};
  const Result<SquaredUp> squared = squareUp(known);
  if (!squared.ok()) return squared.error();
  return squared->pixelToInches;
}

QPointF turnedBy(QPointF at, int degrees) {
  switch (degrees) {
    case 90:
      return {-at.y(), at.x()};
    case 180:
      return -at;
    case 270:
      return {at.y(), -at.x()};
    default:
      return at;
  }
}

SquaredPicture turnedBy(SquaredPicture picture, int degrees) {
  if (degrees == 0) return picture;
  const QRectF box = picture.bounds();
  const QRectF turned =
      QRectF(turnedBy(box.topLeft(), degrees), turnedBy(box.bottomRight(), degrees)).normalized();
  // On the screen, whose y runs down, a rotation is the other way round.
  for (QImage& level : picture.levels) level = level.transformed(QTransform().rotate(-degrees));
  picture.left = turned.left();
  picture.top = turned.bottom();
  return picture;
}

QRectF SquaredPicture::bounds() const {
  if (levels.empty()) return {};
  const QSizeF size = QSizeF(levels.front().size()) / pixelsPerInch;
  return {QPointF(left, top - size.height()), size};
}

std::optional<SquaredPicture> squarePicture(QImage source, const std::vector<SquaringPoint>& points,
                                            WorkUnderWay& work) {
  SquaredPicture squared;
  const auto squaring =
      points.empty() ? std::optional<Squaring>() : squaringBy(source.size(), points);
  if (squaring) {
    auto image = warped(source, *squaring, work);
    if (!image) return std::nullopt;
    source = *std::move(image);
    squared.pixelsPerInch = squaring->pixelsPerInch;
    squared.left = squaring->box.left();
    squared.top = squaring->box.bottom();
  } else {
    squared.pixelsPerInch = kAsTakenPixelsPerInch;
  }
  squared.levels.push_back(std::move(source));
  while (std::min(squared.levels.back().width(), squared.levels.back().height()) >
         2 * kSmallestLevel) {
    if (work.cancelled) return std::nullopt;
    const QImage& last = squared.levels.back();
    squared.levels.push_back(last.scaled((last.width() + 1) / 2, (last.height() + 1) / 2,
                                         Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                                 .convertToFormat(QImage::Format_RGB32));
  }
  // Small enough to be looked at quickly, and large enough for thin lines.
  std::size_t level = 0;
  while (level + 1 < squared.levels.size() && squared.levels[level + 1].width() > kLookedAt) {
    ++level;
  }
  const QImage& looked = squared.levels[level];
  if (squaring) {
    squared.lean = leanOf(looked, looked.width() / squared.bounds().width());
  } else {
    squared.askew = askewOf(looked);
  }
  work.percent = 100;
  return squared;
}

}  // namespace inchwright::app
