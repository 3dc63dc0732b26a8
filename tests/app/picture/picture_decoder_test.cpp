#include "app/picture/picture_decoder.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QImageReader>
#include <QPainter>
#include <QPdfWriter>
#include <QRandomGenerator>

#include "app/picture/kept_picture.h"
#include "app/session/picture_edits.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

/// Twice as wide as high, its left half black: which way is up can be seen.
QImage halves() {
  QImage image(200, 100, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter(&image).fillRect(0, 0, 100, 100, Qt::black);
  return image;
}

QByteArray saved(const QImage& image, const char* format) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(image.save(&buffer, format, 95)) << format;
  return bytes;
}

bool dark(const QImage& image, int x, int y) {
  return qGray(image.pixel(x, y)) < 90;
}

TEST(PictureDecoder, ReadsWhatScannersAndPhonesMake) {
  deskApplication();
  for (const char* format : {"PNG", "JPEG", "TIFF", "WEBP", "BMP"}) {
    SCOPED_TRACE(format);
    if (!QImageReader::supportedImageFormats().contains(QByteArray(format).toLower())) {
      // TIFF and WebP come with a package of their own.
      GTEST_LOG_(WARNING) << "no plugin for " << format;
      continue;
    }
    const auto image = decodePicture(saved(halves(), format));
    ASSERT_TRUE(image.ok());
    EXPECT_EQ(image->size(), QSize(200, 100));
    EXPECT_TRUE(dark(*image, 40, 50));
    EXPECT_FALSE(dark(*image, 160, 50));
  }
}

/// A note of how the phone was held: Exif, one entry, orientation 6, turn a quarter clockwise (Exif
/// 2.3, 4.6.4 A, from memory).
QByteArray heldUpright(const QByteArray& jpeg) {
  QByteArray exif("Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0", 32);
  QByteArray segment("\xff\xe1", 2);
  segment.append('\0').append(static_cast<char>(exif.size() + 2)).append(exif);
  return jpeg.left(2) + segment + jpeg.mid(2);
}

TEST(PictureDecoder, HonoursHowThePhoneWasHeld) {
  deskApplication();
  const auto image = decodePicture(heldUpright(saved(halves(), "JPEG")));
  ASSERT_TRUE(image.ok());
  EXPECT_EQ(image->size(), QSize(100, 200));
  EXPECT_TRUE(dark(*image, 50, 40)) << "the left half is the upper one now";
  EXPECT_FALSE(dark(*image, 50, 160));
}

/// As the program finds the module beside itself.
class PdfDecoder : public ::testing::Test {
 protected:
  PdfDecoder() {
    deskApplication();
    QCoreApplication::addLibraryPath(QStringLiteral(PDF_MODULE_FOLDER));
  }
  ~PdfDecoder() override { QCoreApplication::removeLibraryPath(QStringLiteral(PDF_MODULE_FOLDER)); }
};

TEST(PictureDecoder, SaysWhatIsMissingToReadAPdf) {
  deskApplication();
  for (const auto& error : {checkPicture("%PDF-1.4").error(), decodePicture("%PDF-1.4").error()}) {
    EXPECT_EQ(error.code, ErrorCode::fileTrouble);
    EXPECT_EQ(error.text, "PDF files can't be read: inchwright_pdf is missing");
  }
}

TEST_F(PdfDecoder, RefusesWhatIsNoPdfInside) {
  EXPECT_EQ(checkPicture("%PDF-1.4").error().text, "this PDF can't be read");
  EXPECT_EQ(decodePicture("%PDF-1.4").error().text, "this PDF can't be read");
}

TEST_F(PdfDecoder, DrawsAPage) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setPageSize(QPageSize(QSizeF(4, 2), QPageSize::Inch));
    writer.setPageMargins({});
    writer.setResolution(100);
    QPainter painter(&writer);
    painter.fillRect(QRectF(0, 0, 200, 200), Qt::black);
    writer.newPage();
    painter.fillRect(QRectF(200, 0, 200, 200), Qt::black);
  }
  const auto first = decodePicture(bytes), second = decodePicture(bytes, 2);
  ASSERT_TRUE(first.ok() && second.ok());
  EXPECT_NEAR(first->width(), 800, 4) << "200 dots an inch";
  EXPECT_TRUE(dark(*first, 200, 200));
  EXPECT_FALSE(dark(*first, 600, 200));
  EXPECT_FALSE(dark(*second, 200, 200));
  EXPECT_TRUE(dark(*second, 600, 200));
  EXPECT_TRUE(checkPicture(bytes).ok());
  EXPECT_EQ(decodePicture(bytes, 3).error().text, "the PDF has 2 pages");
}

// A file too large to be kept whole, of which a document shows the second page.
TEST_F(PdfDecoder, OfALargeFileThePageThatIsShownIsKept) {
  QImage noise(4000, 3000, QImage::Format_RGB32);
  for (int y = 0; y < noise.height(); ++y) {
    auto* pixel = reinterpret_cast<quint32*>(noise.scanLine(y));
    QRandomGenerator(static_cast<quint32>(y)).fillRange(pixel, noise.width());
  }
  QByteArray bytes;
  {
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setPageSize(QPageSize(QSizeF(20, 15), QPageSize::Inch));
    writer.setPageMargins({});
    writer.setResolution(200);
    QPainter painter(&writer);
    painter.fillRect(QRectF(0, 0, 20, 20), Qt::black);
    writer.newPage();
    painter.drawImage(QRectF(0, 0, 4000, 3000), noise);
    painter.fillRect(QRectF(0, 0, 2000, 3000), Qt::white);
  }
  ASSERT_GT(bytes.size(), kMostKeptPicture);
  Picture linked;
  linked.file = "print.pdf";
  linked.page = 2;
  const auto inside = keptInside(linked, bytes);
  ASSERT_TRUE(inside.ok()) << inside.error().text;
  EXPECT_TRUE(inside->file.empty());
  const auto image = decodePicture(QByteArray::fromStdString(inside->data.get()), inside->page);
  ASSERT_TRUE(image.ok()) << image.error().text;
  EXPECT_GT(qGray(image->pixel(500, 1000)), 230);
  int dark = 0;
  for (int x = 2100; x < 2900; ++x) dark += qGray(image->pixel(x, 1000)) < 100 ? 1 : 0;
  EXPECT_GT(dark, 50) << "the noise of the second page";
}

TEST(PictureDecoder, WhatShowsThroughIsWhite) {
  deskApplication();
  QImage clear(10, 10, QImage::Format_ARGB32);
  clear.fill(Qt::transparent);
  const auto image = decodePicture(saved(clear, "PNG"));
  ASSERT_TRUE(image.ok());
  EXPECT_EQ(image->pixel(5, 5), qRgb(255, 255, 255));
}

TEST(PictureDecoder, RefusesWhatIsNoPicture) {
  deskApplication();
  for (const char* bytes : {"", "x", "\x89PNG\r\n\x1a\n", "\xff\xd8\xff"}) {
    SCOPED_TRACE(bytes);
    const auto image = decodePicture(bytes);
    ASSERT_FALSE(image.ok());
    EXPECT_EQ(image.error().code, ErrorCode::fileTrouble);
    EXPECT_FALSE(image.error().text.empty());
  }
  const QByteArray whole = saved(halves(), "PNG");
  EXPECT_FALSE(decodePicture(whole.left(whole.size() / 2)).ok());
  EXPECT_FALSE(checkPicture("x").ok());
  EXPECT_TRUE(checkPicture(whole).ok());
}

// No module of Qt that Debian 12 has reads them.
TEST(PictureDecoder, SaysHowAPhonesOwnPhotoIsMadeReadable) {
  deskApplication();
  for (const auto& [brand, kind] :
       {std::pair{"heic", "HEIC"}, {"mif1", "HEIC"}, {"avif", "AVIF"}}) {
    QByteArray bytes = QByteArray::fromHex("00000018") + "ftyp" + brand;
    bytes += QByteArray(64, '\0');
    const auto checked = checkPicture(bytes);
    if (checked.ok()) continue;  // there is such a module, and it looks further than the brand
    EXPECT_NE(checked.error().text.find(kind), std::string::npos) << checked.error().text;
    EXPECT_NE(checked.error().text.find("JPEG"), std::string::npos);
    EXPECT_FALSE(decodePicture(bytes).ok());
  }
  EXPECT_EQ(checkPicture("\0\0\0\x18"
                         "ftypmp42")
                .error()
                .text,
            "it is no picture of a kind known here");
  EXPECT_TRUE(looksLikePicture(QStringLiteral("/x/print.HEIC")));
}

TEST(PictureDecoder, EndingsOfPictures) {
  EXPECT_TRUE(looksLikePicture("a.PNG"));
  EXPECT_TRUE(looksLikePicture("/x/scan.of.it.jpeg"));
  EXPECT_TRUE(looksLikePicture("sheet.pdf"));
  EXPECT_FALSE(looksLikePicture("plate.inchwright"));
  EXPECT_FALSE(looksLikePicture("png"));
}

}  // namespace
}  // namespace inchwright::app
