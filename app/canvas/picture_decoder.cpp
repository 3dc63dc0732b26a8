#include "app/canvas/picture_decoder.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>
#include <QPdfDocument>
#include <algorithm>
#include <cmath>

namespace inchwright::app {
namespace {

constexpr int kMostMegabytes = 1024;  // decoded
constexpr double kPageDots = 200;     // an inch
constexpr double kMostPixels = 24e6;  // of a page
constexpr double kPointsPerInch = 72;

Error trouble(const QString& why) {
  return Error{ErrorCode::fileTrouble, why.toStdString(), {}};
}

QImage onWhite(const QImage& image) {
  if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
  QImage white(image.size(), QImage::Format_RGB32);
  white.fill(Qt::white);
  QPainter(&white).drawImage(0, 0, image);
  return white;
}

Result<QImage> decodePage(const QByteArray& bytes, int page) {
  QBuffer buffer;
  buffer.setData(bytes);
  buffer.open(QIODevice::ReadOnly);
  QPdfDocument document;
  document.load(&buffer);
  if (document.status() != QPdfDocument::Status::Ready) {
    return trouble(QStringLiteral("this PDF can't be read"));
  }
  if (page > document.pageCount()) {
    return trouble(QStringLiteral("the PDF has %1 pages").arg(document.pageCount()));
  }
  const QSizeF inches = document.pagePointSize(page - 1) / kPointsPerInch;
  const double area = std::max(inches.width() * inches.height(), 1e-6);
  const double dots = std::min(kPageDots, std::sqrt(kMostPixels / area));
  const QImage image = document.render(page - 1, (inches * dots).toSize().expandedTo({2, 2}));
  if (image.isNull()) return trouble(QStringLiteral("this page can't be drawn"));
  return onWhite(image);
}

}  // namespace

Result<QImage> decodePicture(const QByteArray& bytes, int page) {
  if (bytes.startsWith("%PDF")) return decodePage(bytes, page);
  QBuffer buffer;
  buffer.setData(bytes);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  reader.setAutoTransform(true);
  reader.setDecideFormatFromContent(true);
  for (int i = 1; i < page; ++i) {
    if (!reader.jumpToNextImage()) return trouble(QStringLiteral("there is no such page"));
  }
  const int before = QImageReader::allocationLimit();
  QImageReader::setAllocationLimit(std::max(before, kMostMegabytes));
  const QImage image = reader.read();
  if (image.isNull()) return trouble(reader.errorString());
  if (image.width() < 2 || image.height() < 2) return trouble(QStringLiteral("it is too small"));
  return onWhite(image);
}

bool looksLikePicture(const QString& file) {
  static const QStringList kEndings{QStringLiteral("png"),  QStringLiteral("jpg"),
                                    QStringLiteral("jpeg"), QStringLiteral("tif"),
                                    QStringLiteral("tiff"), QStringLiteral("webp"),
                                    QStringLiteral("bmp"),  QStringLiteral("pdf")};
  return kEndings.contains(QFileInfo(file).suffix().toLower());
}

}  // namespace inchwright::app
