#include "app/picture/kept_picture.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QRandomGenerator>
#include <random>

#include "app/base/headless.h"
#include "app/picture/picture_decoder.h"

namespace inchwright::app {
namespace {

QByteArray fileOf(const QImage& image, const char* format) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, format, 100);
  return bytes;
}

/// A scan of 24 megapixels: paper with its grain, and lines two pixels wide.
QImage scan() {
  QImage image(6000, 4000, QImage::Format_RGB32);
  std::mt19937 random(20261125);
  for (int y = 0; y < image.height(); ++y) {
    auto* pixel = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < image.width(); ++x) {
      const int grain = 225 + static_cast<int>(random() % 24);
      pixel[x] = qRgb(grain, grain, grain - 10);
    }
  }
  QPainter painter(&image);
  painter.setPen(QPen(Qt::black, 2));
  for (int x = 100; x < image.width(); x += 8) painter.drawLine(x, 1000, x, 1100);
  return image;
}

TEST(KeptPicture, AScanOf24MegapixelsIsSmallAndAsSharp) {
  headlessApplication();
  const QImage image = scan();
  const QByteArray bytes = fileOf(image, "TIFF");
  ASSERT_GT(bytes.size(), 60'000'000) << "as large as scanners make them";
  const auto kept = keptPicture(bytes);
  ASSERT_TRUE(kept.ok()) << kept.error().text;
  EXPECT_LE(kept->bytes.size(), kMostKeptPicture);
  const auto again = decodePicture(kept->bytes);
  ASSERT_TRUE(again.ok());
  ASSERT_EQ(again->size(), image.size()) << "no pixel fewer";
  // The lines are still as dark, and what lies between them as light, as they were.
  int darkest = 255, lightest = 0;
  for (int x = 1000; x < 1800; ++x) {
    const int grey = qGray(again->pixel(x, 1050));
    darkest = std::min(darkest, grey);
    lightest = std::max(lightest, grey);
  }
  EXPECT_LT(darkest, 40);
  EXPECT_GT(lightest, 200);
}

TEST(KeptPicture, ASmallOneIsKeptToTheByte) {
  headlessApplication();
  QImage image(200, 100, QImage::Format_RGB32);
  image.fill(Qt::white);
  const QByteArray bytes = fileOf(image, "PNG");
  EXPECT_EQ(keptPicture(bytes)->bytes, bytes);
  EXPECT_EQ(keptPicture(bytes, 3)->page, 3) << "all pages are still there";
}

TEST(KeptPicture, NoiseThatCannotBeKeptSmallGetsFewerPixels) {
  headlessApplication();
  QImage image(6000, 5000, QImage::Format_RGB32);
  QRandomGenerator random(1);
  for (int y = 0; y < image.height(); ++y) {
    random.fillRange(reinterpret_cast<quint32*>(image.scanLine(y)), image.width());
  }
  const auto kept = keptPicture(fileOf(image, "BMP"));
  ASSERT_TRUE(kept.ok());
  EXPECT_LE(kept->bytes.size(), kMostKeptPicture);
  const auto again = decodePicture(kept->bytes);
  ASSERT_TRUE(again.ok());
  EXPECT_LT(again->width(), 6000);
  EXPECT_EQ(kept->scale, QSizeF(again->width() / 6000.0, again->height() / 5000.0));
}

TEST(KeptPicture, WhatIsNoPictureIsRefused) {
  headlessApplication();
  EXPECT_FALSE(keptPicture(QByteArray(kMostKeptPicture + 1, 'x')).ok());
}

}  // namespace
}  // namespace inchwright::app
