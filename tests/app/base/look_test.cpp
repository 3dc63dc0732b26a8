#include "app/base/look.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cstdlib>
#include <random>

#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr QSize kPane{300, 400};

QImage bareDesk(qreal ratio = 1) {
  QImage image(kPane * ratio, QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(ratio);
  image.fill(Look::now().desk);
  return image;
}

/// The most by which a channel differs.
int apart(QRgb a, QRgb b) {
  return std::max({std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)),
                   std::abs(qBlue(a) - qBlue(b))});
}

TEST(FillBlended, IsTheSameAsFillingAtOnce) {
  deskApplication();
  std::mt19937 random(2027);
  const auto upTo = [&](double most) {
    return most * std::uniform_real_distribution<double>(0, 1)(random);
  };
  for (int i = 0; i < 60; ++i) {
    // Whole and broken edges, plain and scaled, and now and then turned.
    QRectF box(upTo(150), upTo(100), upTo(140), upTo(290));
    if (i % 2 == 0) box = box.toAlignedRect();
    QTransform way = QTransform::fromScale(i % 3 == 0 ? 1 : 0.5 + upTo(1), i % 3 == 0 ? 1 : 0.8);
    if (i % 5 == 0) way.rotate(7);
    QImage atOnce = bareDesk(), inPieces = bareDesk();
    for (const bool pieces : {false, true}) {
      QPainter painter(pieces ? &inPieces : &atOnce);
      painter.setRenderHint(QPainter::Antialiasing);
      painter.setTransform(way);
      if (pieces) {
        fillBlended(painter, box, Look::now().wash);
      } else {
        painter.fillRect(box, Look::now().wash);
      }
    }
    ASSERT_NE(inPieces, bareDesk()) << i;
    int worst = 0;
    for (int y = 0; y < kPane.height(); ++y) {
      for (int x = 0; x < kPane.width(); ++x) {
        worst = std::max(worst, apart(atOnce.pixel(x, y), inPieces.pixel(x, y)));
      }
    }
    EXPECT_LE(worst, 1) << i;
  }
}

/// What the shadow darkens the desk by, so far outside the middle of each side of the paper: left,
/// top, right, below.
std::array<int, 4> shades(const QImage& image, const QRect& paper, int outside) {
  const qreal ratio = image.devicePixelRatio();
  const auto shade = [&](int x, int y) {
    const QPoint at(static_cast<int>((x + 0.5) * ratio), static_cast<int>((y + 0.5) * ratio));
    return apart(image.pixel(at), Look::now().desk.rgb());
  };
  const QPoint middle = paper.center();
  return {shade(paper.left() - outside, middle.y()), shade(middle.x(), paper.top() - outside),
          shade(paper.right() + outside, middle.y()), shade(middle.x(), paper.bottom() + outside)};
}

TEST(PaperShadow, IsAlikeRoundSmallAndLargePaper) {
  deskApplication();
  for (const qreal ratio : {1.0, 2.0}) {
    // Small paper is shaded line by line, large paper from a tile.
    const QRect small(120, 150, 30, 30), large(60, 70, 171, 253);
    QImage bySmall = bareDesk(ratio), byLarge = bareDesk(ratio);
    for (const bool isLarge : {false, true}) {
      QPainter painter(isLarge ? &byLarge : &bySmall);
      painter.setRenderHint(QPainter::Antialiasing);
      paintPaperShadow(painter, isLarge ? large : small);
    }
    EXPECT_GT(shades(byLarge, large, 1)[0], 8) << "no shadow to speak of";
    EXPECT_EQ(shades(byLarge, large, 20), (std::array<int, 4>{})) << "shadow far away";
    for (int outside = 1; outside < 12; ++outside) {
      const auto aSmall = shades(bySmall, small, outside), aLarge = shades(byLarge, large, outside);
      for (std::size_t side = 0; side < 4; ++side) {
        EXPECT_NEAR(aSmall[side], aLarge[side], 5) << "side " << side << ", " << outside << " out";
      }
    }
  }
}

TEST(PaperShadow, HasNoSeams) {
  deskApplication();
  // Longer than the tile by several runs: along a side the shade stays the same.
  const QRect paper(30, 40, 241, 317);
  QImage image = bareDesk();
  QPainter painter(&image);
  paintPaperShadow(painter, paper);
  painter.end();
  for (int outside = 1; outside < 8; ++outside) {
    const QRgb above = image.pixel(paper.center().x(), paper.top() - outside);
    for (int x = paper.left() + 40; x < paper.right() - 40; ++x) {
      ASSERT_EQ(image.pixel(x, paper.top() - outside), above) << x << ", " << outside << " out";
    }
    const QRgb left = image.pixel(paper.left() - outside, paper.center().y());
    for (int y = paper.top() + 40; y < paper.bottom() - 40; ++y) {
      ASSERT_EQ(image.pixel(paper.left() - outside, y), left) << y << ", " << outside << " out";
    }
  }
}

}  // namespace
}  // namespace inchwright::app
