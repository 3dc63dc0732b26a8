#include "app/picture/askew.h"

#include <gtest/gtest.h>

#include <QPainter>
#include <QTransform>
#include <cmath>
#include <numbers>

#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr QSize kSheet(1400, 1000);

/// A print: a border, a plate with holes, extension and dimension lines, and lettering; `way` is
/// how it is seen.
QImage print(const QTransform& way, QColor paper = Qt::white, QColor ink = Qt::black) {
  deskApplication();
  QImage image(kSheet, QImage::Format_RGB32);
  image.fill(paper);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(way);
  painter.setPen(QPen(ink, 3));
  painter.drawRect(120, 100, 1160, 800);
  painter.drawRect(300, 250, 700, 420);
  painter.drawEllipse(QPoint(450, 400), 60, 60);
  painter.drawEllipse(QPoint(800, 520), 90, 90);
  painter.setPen(QPen(ink, 2));
  for (const int x : {300, 450, 800, 1000}) painter.drawLine(x, 400, x, 800);
  for (const int y : {250, 400, 520, 670}) painter.drawLine(800, y, 1180, y);
  painter.drawLine(300, 760, 1000, 760);
  painter.drawLine(1120, 250, 1120, 670);
  // A slanted edge, as prints have.
  painter.drawLine(300, 250, 560, 205);
  painter.setFont(QFont(QStringLiteral("B612"), 20));
  painter.drawText(560, 745, QStringLiteral("2 7/16"));
  painter.drawText(1130, 460, QStringLiteral("1 1/2"));
  return image;
}

/// Seen from an angle: the right side is so much smaller than the left.
QTransform fromTheLeft(double share) {
  const double w = kSheet.width(), h = kSheet.height(), in = h * share / 2;
  QTransform way;
  const bool possible =
      QTransform::quadToQuad(QPolygonF({{0, 0}, {w, 0}, {w, h}, {0, h}}),
                             QPolygonF({{0, 0}, {w, in}, {w, h - in}, {0, h}}), way);
  EXPECT_TRUE(possible);
  return way;
}

QTransform turned(double degrees) {
  return QTransform()
      .translate(kSheet.width() / 2.0, kSheet.height() / 2.0)
      .rotate(-degrees)
      .translate(-kSheet.width() / 2.0, -kSheet.height() / 2.0);
}

TEST(Askew, AScanIsFlatHoweverItLayOnTheGlass) {
  for (const double degrees : {0.0, 0.7, -2.0, 4.0}) {
    const auto askew = askewOf(print(turned(degrees)));
    ASSERT_TRUE(askew.has_value()) << degrees;
    EXPECT_TRUE(askew->isFlat()) << degrees << ": " << askew->worst() / kDegree;
  }
}

TEST(Askew, ABlueprintIsReadAsWellAsBlackOnWhite) {
  const QColor blue(30, 60, 140);
  ASSERT_TRUE(askewOf(print(turned(1), blue, Qt::white)).has_value());
  EXPECT_TRUE(askewOf(print(turned(1), blue, Qt::white))->isFlat());
  EXPECT_FALSE(askewOf(print(fromTheLeft(0.1), blue, Qt::white))->isFlat());
}

TEST(Askew, APhotoFromAnAngleRunsTogether) {
  for (const double share : {0.03, 0.08, 0.2}) {
    const auto askew = askewOf(print(fromTheLeft(share)));
    ASSERT_TRUE(askew.has_value()) << share;
    EXPECT_FALSE(askew->isFlat()) << share;
    EXPECT_TRUE(askew->runsTogether()) << share;
    // From the upper to the lower border the level lines differ by twice the slope of one.
    const double drawn = 2 * std::atan(kSheet.height() * share / 2 / kSheet.width());
    EXPECT_NEAR(std::abs(askew->levels), drawn, 0.25 * drawn + 0.2 * kDegree) << share;
  }
}

TEST(Askew, AShearedPictureIsOutOfSquareAndDoesNotRunTogether) {
  const auto askew = askewOf(print(QTransform(1, 0, 0.03, 1, 0, 0)));
  ASSERT_TRUE(askew.has_value());
  EXPECT_FALSE(askew->isFlat());
  EXPECT_FALSE(askew->runsTogether());
  EXPECT_NEAR(std::abs(askew->square), 0.03, 0.004);
}

TEST(Askew, OfAnEmptySheetNothingIsSaid) {
  deskApplication();
  QImage image(kSheet, QImage::Format_RGB32);
  image.fill(Qt::white);
  EXPECT_FALSE(askewOf(image).has_value());
  EXPECT_FALSE(leanOf(image, 100).has_value());
  EXPECT_TRUE(longLines(image).empty());
}

TEST(Askew, ALineIsFoundWhereItRuns) {
  deskApplication();
  QImage image(kSheet, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setPen(QPen(Qt::black, 3));
  painter.drawLine(QPointF(200, 300), QPointF(1200, 265));
  painter.end();
  const auto lines = longLines(image);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_FALSE(lines[0].upright);
  // Up to the right is anticlockwise. Half a pixel of a picture made smaller, over its length.
  EXPECT_NEAR(lines[0].lean, std::atan(0.035), 0.002);
  EXPECT_NEAR(lines[0].at, 282.5, 3);
  EXPECT_NEAR(lines[0].length, 1000, 30);
}

// A print squared up well has next to no lean, one squared up with a corner pointed at badly has.
TEST(Askew, WhatWasSquaredUpBadlyLeans) {
  const double perInch = 100;
  const auto well = leanOf(print({}), perInch), badly = leanOf(print(fromTheLeft(0.04)), perInch);
  ASSERT_TRUE(well && badly);
  EXPECT_LT(*well, 0.01);
  EXPECT_GT(*badly, 0.02);
  EXPECT_LT(*badly, 0.2);
}

}  // namespace
}  // namespace inchwright::app
