#include "app/canvas/loupe.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

TEST(Loupe, LiesWithinThePaneAndNeverOverThePointer) {
  const QSize pane(500, 400);
  for (int x = 0; x < pane.width(); x += 20) {
    for (int y = 0; y < pane.height(); y += 20) {
      const QRect box = Loupe::boxFor(QPointF(x, y), pane);
      EXPECT_TRUE(QRect(QPoint(0, 0), pane).contains(box)) << x << ", " << y;
      EXPECT_FALSE(box.contains(x, y)) << x << ", " << y;
    }
  }
}

TEST(Loupe, ShowsThePictureCloseUp) {
  deskApplication();
  // A black square of 0.2 inches in the middle of a white sheet of 4 by 4.
  SquaredPicture picture;
  QImage image(400, 400, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter(&image).fillRect(190, 190, 20, 20, Qt::black);
  picture.levels.push_back(image);
  picture.pixelsPerInch = 100;
  picture.top = 4;
  PictureLayer layer;
  layer.show(picture);
  const PrintMap map(100, QPointF(0, 400));
  const QPointF pointer = map.toWidget(QPointF(2, 2));
  QImage pane(400, 400, QImage::Format_RGB32);
  pane.fill(Qt::white);
  QPainter painter(&pane);
  Loupe::paint(painter, layer, map, pointer, pointer, pane.size());
  painter.end();
  int dark = 0;
  const QRect box = Loupe::boxFor(pointer, pane.size());
  for (int y = box.top() + 2; y < box.bottom() - 1; ++y) {
    for (int x = box.left() + 2; x < box.right() - 1; ++x) dark += qGray(pane.pixel(x, y)) < 90;
  }
  // 20 pixels across, four times as large; the cross of the aim lies on it as well.
  EXPECT_NEAR(dark, 80 * 80, 1200);
}

}  // namespace
}  // namespace inchwright::app
