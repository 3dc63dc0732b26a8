#include "app/picture/line_snap.h"

#include <gtest/gtest.h>

#include <QPainter>
#include <cmath>
#include <random>

namespace inchwright::app {
namespace {

/// Paper of the tone of a scan, to be drawn on.
QImage paper() {
  QImage image(400, 300, QImage::Format_RGB32);
  image.fill(QColor(228, 226, 220));
  return image;
}

void ink(QImage& image, const std::vector<QLineF>& lines, double width) {
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(QColor(60, 60, 60), width));
  for (const QLineF& line : lines) painter.drawLine(line);
}

double off(QPointF a, QPointF b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y());
}

TEST(LineSnap, ACornerIsFoundFromAnySide) {
  QImage image = paper();
  ink(image, {{100, 80, 100, 280}, {100, 280, 380, 280}}, 4);
  std::mt19937 random(20'261'125);
  std::uniform_real_distribution<double> away(-6, 6);
  for (int i = 0; i < 200; ++i) {
    const QPointF at(100 + away(random), 280 + away(random));
    SCOPED_TRACE(testing::Message() << at.x() << ' ' << at.y());
    EXPECT_LT(off(snapToLines(image, at, 18), {100, 280}), 0.6);
  }
}

TEST(LineSnap, CentreLinesLeadToTheMiddleOfAHole) {
  QImage image = paper();
  ink(image, {{200, 100, 200, 200}, {150, 150, 250, 150}}, 2);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(QColor(40, 40, 40), 5));
  painter.drawEllipse(QPointF(200, 150), 22, 22);
  painter.end();
  EXPECT_LT(off(snapToLines(image, {205, 146}, 30), {200, 150}), 0.6);
}

TEST(LineSnap, ACircleAloneIsNoLine) {
  QImage image = paper();
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(QColor(40, 40, 40), 4));
  painter.drawEllipse(QPointF(200, 150), 22, 22);
  painter.end();
  EXPECT_EQ(snapToLines(image, {203, 148}, 30), QPointF(203, 148));
}

TEST(LineSnap, AlongALineOnlyTheDistanceToItChanges) {
  QImage image = paper();
  ink(image, {{200, 0, 200, 299}}, 3);
  const QPointF at = snapToLines(image, {207, 140.3}, 20);
  EXPECT_NEAR(at.x(), 200, 0.5);
  EXPECT_EQ(at.y(), 140.3);
}

TEST(LineSnap, BarePaperAndPlacesOffThePictureStay) {
  const QImage image = paper();
  EXPECT_EQ(snapToLines(image, {100.5, 100.25}, 20), QPointF(100.5, 100.25));
  EXPECT_EQ(snapToLines(image, {-5, 10}, 20), QPointF(-5, 10));
  EXPECT_EQ(snapToLines(image, {1e9, 10}, 20), QPointF(1e9, 10));
}

}  // namespace
}  // namespace inchwright::app
