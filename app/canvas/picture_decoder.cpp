#include "app/canvas/picture_decoder.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>
#include <QPdfDocument>
#include <algorithm>
#include <cmath>
#include <type_traits>

namespace inchwright::app {
namespace {

constexpr int kMostMegabytes = 1024;  // decoded
constexpr double kPageDots = 200;     // an inch
constexpr double kMostPixels = 24e6;  // of a page
constexpr double kPointsPerInch = 72;

Error trouble(const QString& why) {
  return Error{ErrorCode::fileTrouble, why.toStdString(), {}};
}

bool isPdf(const QByteArray& bytes) {
  return bytes.startsWith("%PDF");
}

QImage onWhite(const QImage& image) {
  if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
  QImage white(image.size(), QImage::Format_RGB32);
  white.fill(Qt::white);
  QPainter(&white).drawImage(0, 0, image);
  return white;
}

/// Opens a PDF for `use`, which gets it when it has the page.
template <typename Use>
std::invoke_result_t<Use, QPdfDocument&> withPage(const QByteArray& bytes, int page, Use use) {
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
  return use(document);
}

Result<QImage> drawnPage(QPdfDocument& document, int page) {
  const QSizeF inches = document.pagePointSize(page - 1) / kPointsPerInch;
  const double area = std::max(inches.width() * inches.height(), 1e-6);
  const double dots = std::min(kPageDots, std::sqrt(kMostPixels / area));
  const QImage image = document.render(page - 1, (inches * dots).toSize().expandedTo({2, 2}));
  if (image.isNull()) return trouble(QStringLiteral("this page can't be drawn"));
  return onWhite(image);
}

}  // namespace

Result<Done> checkPicture(const QByteArray& bytes) {
  if (isPdf(bytes)) {
    return withPage(bytes, 1, [](QPdfDocument&) { return Result<Done>(Done{}); });
  }
  QBuffer buffer;
  buffer.setData(bytes);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  reader.setDecideFormatFromContent(true);
  if (!reader.canRead()) return trouble(QStringLiteral("it is no picture of a kind known here"));
  return Done{};
}

Result<QImage> decodePicture(const QByteArray& bytes, int page) {
  if (isPdf(bytes)) {
    return withPage(bytes, page,
                    [page](QPdfDocument& document) { return drawnPage(document, page); });
  }
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
