#include "app/picture/picture_decoder.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>
#include <algorithm>

#include "app/picture/pdf_pages.h"

namespace inchwright::app {
namespace {

constexpr int kMostMegabytes = 1024;  // decoded
constexpr double kPageDots = 200;     // an inch
constexpr double kMostPixels = 24e6;  // of a page

Error trouble(const QString& why) {
  return Error{ErrorCode::fileTrouble, why.toStdString(), {}};
}

bool isPdf(const QByteArray& bytes) {
  return bytes.startsWith("%PDF");
}

/// The kind of a phone's own photo, by the brand its file begins with; empty of any other file.
QString phonePhoto(const QByteArray& bytes) {
  if (bytes.mid(4, 4) != "ftyp") return {};
  const QByteArray brand = bytes.mid(8, 4);
  for (const char* heic : {"heic", "heix", "hevc", "heim", "heis", "mif1", "msf1"}) {
    if (brand == heic) return QStringLiteral("HEIC");
  }
  return brand == "avif" || brand == "avis" ? QStringLiteral("AVIF") : QString();
}

/// Why nothing here can read it, and what to do.
Error unreadable(const QByteArray& bytes) {
  const QString kind = phonePhoto(bytes);
  if (kind.isEmpty()) return trouble(QStringLiteral("it is no picture of a kind known here"));
  return trouble(
      QStringLiteral("it is a %1 photo, as phones keep them, and nothing on this machine "
                     "reads those: have the phone send it as JPEG, or make one of it "
                     "with heif-convert (Debian's libheif-examples)")
          .arg(kind));
}

QImage onWhite(const QImage& image) {
  if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
  QImage white(image.size(), QImage::Format_RGB32);
  white.fill(Qt::white);
  QPainter(&white).drawImage(0, 0, image);
  return white;
}

Error noPdfModule() {
  return trouble(QStringLiteral("PDF files can't be read: inchwright_pdf is missing"));
}

Result<Done> checkPdf(const QByteArray& bytes) {
  PdfPages* pages = pdfPages();
  if (pages == nullptr) return noPdfModule();
  const QString why = pages->check(bytes, 1);
  if (!why.isEmpty()) return trouble(why);
  return Done{};
}

Result<QImage> drawnPage(const QByteArray& bytes, int page) {
  PdfPages* pages = pdfPages();
  if (pages == nullptr) return noPdfModule();
  const PdfPages::Drawn drawn = pages->draw(bytes, page, kPageDots, kMostPixels);
  if (drawn.image.isNull()) return trouble(drawn.trouble);
  return onWhite(drawn.image);
}

}  // namespace

Result<Done> checkPicture(const QByteArray& bytes) {
  if (isPdf(bytes)) return checkPdf(bytes);
  QBuffer buffer;
  buffer.setData(bytes);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  reader.setDecideFormatFromContent(true);
  if (!reader.canRead()) return unreadable(bytes);
  return Done{};
}

Result<QImage> decodePicture(const QByteArray& bytes, int page) {
  if (isPdf(bytes)) return drawnPage(bytes, page);
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
  if (image.isNull() && !phonePhoto(bytes).isEmpty()) return unreadable(bytes);
  if (image.isNull()) return trouble(reader.errorString());
  if (image.width() < 2 || image.height() < 2) return trouble(QStringLiteral("it is too small"));
  return onWhite(image);
}

bool looksLikePicture(const QString& file) {
  static const QStringList kEndings{
      QStringLiteral("png"),  QStringLiteral("jpg"),  QStringLiteral("jpeg"), QStringLiteral("tif"),
      QStringLiteral("tiff"), QStringLiteral("webp"), QStringLiteral("bmp"),  QStringLiteral("pdf"),
      QStringLiteral("heic"), QStringLiteral("heif"), QStringLiteral("avif")};
  return kEndings.contains(QFileInfo(file).suffix().toLower());
}

}  // namespace inchwright::app
