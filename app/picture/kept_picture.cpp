#include "app/picture/kept_picture.h"

#include <QBuffer>
#include <QImage>
#include <cmath>

#include "app/picture/picture_decoder.h"

namespace inchwright::app {
namespace {

constexpr double kMostKeptPixels = 40e6;

QByteArray asJpeg(const QImage& image, int quality) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  return image.save(&buffer, "JPEG", quality) ? bytes : QByteArray();
}

QImage scaledBy(const QImage& image, double scale) {
  return image.scaled((QSizeF(image.size()) * scale).toSize(), Qt::IgnoreAspectRatio,
                      Qt::SmoothTransformation);
}

}  // namespace

Result<KeptPicture> keptPicture(const QByteArray& bytes, int page) {
  if (bytes.size() <= kMostKeptPicture) return KeptPicture{bytes, page};
  Result<QImage> decoded = decodePicture(bytes, page);
  if (!decoded.ok()) return decoded.error();
  QImage image = std::move(decoded).value();
  const QSizeF own = image.size();
  const double pixels = own.width() * own.height();
  if (pixels > kMostKeptPixels) image = scaledBy(image, std::sqrt(kMostKeptPixels / pixels));
  if (image.allGray()) image.convertTo(QImage::Format_Grayscale8);
  QByteArray kept;
  for (const int quality : {85, 75, 65}) {
    kept = asJpeg(image, quality);
    if (!kept.isEmpty() && kept.size() <= kMostKeptPicture) break;
  }
  while (kept.size() > kMostKeptPicture && image.width() > 1000) {
    image = scaledBy(image, 0.8);
    kept = asJpeg(image, 75);
  }
  if (kept.isEmpty() || kept.size() > kMostKeptPicture) {
    return Error{ErrorCode::tooLarge, "the picture is too large to be kept", {}};
  }
  return KeptPicture{kept, 1, {image.width() / own.width(), image.height() / own.height()}};
}

}  // namespace inchwright::app
