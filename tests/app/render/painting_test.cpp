#include "app/render/painting.h"

#include <gtest/gtest.h>

#include <QByteArray>
#include <QImage>
#include <QtEndian>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/base/headless.h"
#include "app/render/faces.h"
#include "app/render/font_name.h"
#include "app/render/render.h"
#include "core/sheet/text_measure.h"

namespace inchwright::app {
namespace {

constexpr double kPixels = 10;  // a millimetre

class Painting : public testing::Test {
 protected:
  void SetUp() override { headlessApplication(); }
};

QImage painted(std::vector<DrawItem> items, double pixels = kPixels) {
  Page page;
  page.width = 60;
  page.height = 40;
  page.items = std::move(items);
  return QImage::fromData(*renderPng(page, pixels), "PNG");
}

QRgb at(const QImage& image, double x, double y) {
  return image.pixel(static_cast<int>(x * kPixels), static_cast<int>(y * kPixels));
}

constexpr QRgb kWhite = qRgb(255, 255, 255), kBlack = qRgb(0, 0, 0);

/// Where the ink is, mm.
QRectF inked(const QImage& image) {
  QRect box;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      if (qGray(image.pixel(x, y)) < 128) box |= QRect(x, y, 1, 1);
    }
  }
  return {box.x() / kPixels, box.y() / kPixels, box.width() / kPixels, box.height() / kPixels};
}

PolylineItem corner() {
  PolylineItem item;
  item.points = {{10, 10}, {30, 10}, {30, 30}};
  item.stroke.width = 1;
  return item;
}

TEST_F(Painting, InksAreTheirColours) {
  const std::pair<Ink, QRgb> inks[] = {
      {Ink::black, kBlack},
      {Ink::grey, qRgb(110, 110, 110)},
      {Ink::red, qRgb(178, 34, 34)},
      {Ink::blue, qRgb(32, 78, 150)},
      {Ink::pale, qRgb(236, 236, 236)},
      {Ink::white, kWhite},
  };
  for (const auto& [ink, colour] : inks) {
    PolylineItem line = corner();
    line.stroke.ink = ink;
    EXPECT_EQ(at(painted({line}), 20, 10), colour);
    CircleItem disc;
    disc.centre = {30, 20};
    disc.radius = 5;
    disc.stroked = false;
    disc.filled = true;
    disc.fill = ink;
    EXPECT_EQ(at(painted({disc}), 30, 20), colour);
  }
}

// Only what is closed has its last side, and only what is filled its inside.
TEST_F(Painting, WhatIsClosedAndFilled) {
  for (const bool closed : {false, true}) {
    for (const bool filled : {false, true}) {
      PolylineItem item = corner();
      item.closed = closed;
      item.filled = filled;
      item.fill = Ink::red;
      const QImage image = painted({item});
      EXPECT_EQ(at(image, 20, 10), kBlack);
      EXPECT_EQ(at(image, 30, 20), kBlack);
      EXPECT_EQ(at(image, 19.95, 20) == kBlack, closed);
      if (closed) {
        EXPECT_EQ(at(image, 27, 15), filled ? qRgb(178, 34, 34) : kWhite);
      }
      EXPECT_EQ(at(image, 12, 28), kWhite);
    }
  }
  PolylineItem bare = corner();
  bare.stroked = false;
  EXPECT_EQ(inked(painted({bare})).width(), 0);
}

TEST_F(Painting, StrokesAreAsWideAsAskedAndStopAtTheirEnds) {
  for (const double width : {0.3, 1.0, 2.4}) {
    PolylineItem line;
    line.points = {{10, 20}, {40, 20}};
    line.stroke.width = width;
    const QRectF box = inked(painted({line}));
    EXPECT_NEAR(box.height(), width, 0.11);
    EXPECT_NEAR(box.center().y(), 20, 0.11);
    EXPECT_NEAR(box.left(), 10, 0.11);
    EXPECT_NEAR(box.right(), 40, 0.11);
  }
}

// Half a pixel of ink is half as dark: on a screen or in a picture no line has steps.
TEST_F(Painting, EdgesAreSmooth) {
  PolylineItem line;
  line.points = {{10, 10}, {40, 25}};
  const QImage image = painted({line});
  int between = 0;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      const int grey = qGray(image.pixel(x, y));
      between += grey > 32 && grey < 224 ? 1 : 0;
    }
  }
  EXPECT_GT(between, 200);
}

// 4 mm of ink and 2 of none, whatever the line's width.
TEST_F(Painting, DashesAreInMillimetres) {
  for (const double width : {0.4, 1.5}) {
    PolylineItem line;
    line.points = {{10, 20}, {40, 20}};
    line.stroke.width = width;
    line.stroke.dash = {4, 2};
    const QImage image = painted({line});
    for (int k = 0; k < 5; ++k) {
      EXPECT_EQ(at(image, 10.3 + 6 * k, 20), kBlack) << k;
      EXPECT_EQ(at(image, 13.7 + 6 * k, 20), kBlack) << k;
      EXPECT_EQ(at(image, 14.3 + 6 * k, 20), kWhite) << k;
      EXPECT_EQ(at(image, 15.7 + 6 * k, 20), kWhite) << k;
    }
  }
}

TEST_F(Painting, ACircleIsRoundAndAnArcRunsAnticlockwiseFromItsStart) {
  CircleItem circle;
  circle.centre = {30, 20};
  circle.radius = 8;
  circle.stroke.width = 0.6;
  const auto isInked = [&](const CircleItem& item, double degrees) {
    const double turn = degrees * std::numbers::pi / 180;
    return at(painted({item}), 30 + 8 * std::cos(turn), 20 - 8 * std::sin(turn)) == kBlack;
  };
  for (int degrees = 5; degrees < 360; degrees += 50) EXPECT_TRUE(isInked(circle, degrees));
  EXPECT_NEAR(inked(painted({circle})).width(), 16.6, 0.11);
  circle.start = 30;
  circle.sweep = 90;
  EXPECT_TRUE(isInked(circle, 32));
  EXPECT_TRUE(isInked(circle, 118));
  for (const double beside : {28.0, 122.0, 240.0}) EXPECT_FALSE(isInked(circle, beside)) << beside;
  circle.sweep = -90;
  EXPECT_TRUE(isInked(circle, -45));
  EXPECT_FALSE(isInked(circle, 45));
  // Nearly whole is an arc still; whole is a circle that can be filled.
  circle.start = 0;
  circle.sweep = 350;
  circle.filled = true;
  EXPECT_FALSE(isInked(circle, 355));
  EXPECT_EQ(at(painted({circle}), 30, 20), kWhite);
  circle.sweep = 360;
  circle.fill = Ink::pale;
  EXPECT_EQ(at(painted({circle}), 30, 20), qRgb(236, 236, 236));
}

TextItem eights() {
  TextItem text;
  text.at = {30, 20};
  text.text = "888";
  text.height = 5;
  return text;
}

TEST_F(Painting, TextStandsOnItsPlaceAsAligned) {
  const double width = textWidth("888", 5, Typeface::regular);
  const std::pair<TextAlign, double> aligns[] = {
      {TextAlign::left, 0}, {TextAlign::centre, -width / 2}, {TextAlign::right, -width}};
  for (const auto& [align, start] : aligns) {
    TextItem text = eights();
    text.align = align;
    const QRectF box = inked(painted({text}));
    // Figures leave a tenth of their height on either side.
    EXPECT_NEAR(box.left(), 30 + start, 0.8);
    EXPECT_NEAR(box.right(), 30 + start + width, 0.8);
    EXPECT_NEAR(box.bottom(), 20, 0.2);
    EXPECT_NEAR(box.height(), 5, 0.3);
  }
}

TEST_F(Painting, TextTurnsAnticlockwiseAboutItsPlace) {
  const double width = textWidth("888", 5, Typeface::regular);
  TextItem text = eights();
  text.turn = 90;
  QRectF box = inked(painted({text}));
  EXPECT_NEAR(box.bottom(), 20, 0.8);
  EXPECT_NEAR(box.top(), 20 - width, 0.8);
  EXPECT_NEAR(box.right(), 30, 0.2);
  text.turn = 180;
  box = inked(painted({text}));
  EXPECT_NEAR(box.right(), 30, 0.8);
  EXPECT_NEAR(box.top(), 20, 0.2);
}

// What the face lacks is left to another; the figures beside it stay where they are.
TEST_F(Painting, ACharacterThatTheFaceLacksTakesNothingElseAway) {
  TextItem text = eights();
  text.at.x = 5;
  const QRectF own = inked(painted({text}));
  text.text = "888\u6f22";
  const QRectF with = inked(painted({text}));
  EXPECT_NEAR(with.left(), own.left(), 0.3);
  EXPECT_GE(with.right(), own.right() - 0.3);
}

TEST_F(Painting, TextThatIsPartlyOffThePageIsThereInPart) {
  const double width = textWidth("888", 5, Typeface::regular);
  struct Case {
    double x, y, turn;
  };
  for (const Case& one : {Case{-width / 2, 20, 0}, Case{60 - width / 2, 20, 0}, Case{20, 2.5, 0},
                          Case{20, 42.5, 0}, Case{20, 40 + width / 2, 90}}) {
    TextItem text = eights();
    text.at = {one.x, one.y};
    text.turn = one.turn;
    EXPECT_GT(inked(painted({text})).width(), 0) << one.x << " " << one.y;
  }
  for (const Case& one : {Case{-width - 1, 20, 0}, Case{61, 20, 0}, Case{20, -1, 0}}) {
    TextItem text = eights();
    text.at = {one.x, one.y};
    EXPECT_EQ(inked(painted({text})).width(), 0) << one.x << " " << one.y;
  }
}

TEST_F(Painting, TextHasItsInkAndItsWeight) {
  const auto inkOf = [](const TextItem& text, double pixels = kPixels) {
    const QImage image = painted({text}, pixels);
    double sum = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) sum += 255 - qGray(image.pixel(x, y));
    }
    return sum / (pixels * pixels);
  };
  TextItem text = eights();
  text.height = 2.5;
  EXPECT_LT(inkOf(text, 5), 0.95 * inkOf(text, 40)) << "no pixel is painted twice over";
  text = eights();
  const double regular = inkOf(text);
  text.face = Typeface::bold;
  EXPECT_GT(inkOf(text), 1.15 * regular);
  text.face = Typeface::mono;
  const double mono = inkOf(text);
  text.face = Typeface::monoBold;
  EXPECT_GT(inkOf(text), 1.15 * mono);
  text.ink = Ink::red;
  const QImage red = painted({text});
  bool any = false;
  for (int y = 150; y < 200; ++y) {
    for (int x = 300; x < 400; ++x) any = any || red.pixel(x, y) == qRgb(178, 34, 34);
  }
  EXPECT_TRUE(any);
}

TEST_F(Painting, PicturesSayHowLargeTheyAreAndWhoMadeThem) {
  const QImage image = painted({});
  EXPECT_EQ(image.dotsPerMeterX(), 10'000);
  EXPECT_EQ(image.dotsPerMeterY(), 10'000);
  EXPECT_TRUE(image.text(QStringLiteral("Software")).startsWith(QStringLiteral("Inchwright ")));
}

TEST_F(Painting, APictureHasBetweenOneAndTwentyThousandPixelsEitherWay) {
  const auto isTaken = [](double width, double height) {
    Page page;
    page.width = width;
    page.height = height;
    return renderPng(page, 1).ok();
  };
  EXPECT_TRUE(isTaken(1, 1));
  EXPECT_TRUE(isTaken(20'000, 1));
  EXPECT_TRUE(isTaken(1, 20'000));
  EXPECT_FALSE(isTaken(20'001, 1));
  EXPECT_FALSE(isTaken(1, 20'001));
  EXPECT_FALSE(isTaken(0.9, 100));
  EXPECT_FALSE(isTaken(100, 0.9));
}

// A made font: a table that is not looked at, then names: a family for each platform, a style that
// stays, and a typographic family that is too short for the new one.
QByteArray madeFont() {
  const auto number = [](auto value) {
    QByteArray bytes(sizeof value, '\0');
    qToBigEndian(value, bytes.data());
    return bytes;
  };
  const auto two = [&](int value) { return number(static_cast<quint16>(value)); };
  const auto four = [&](int value) { return number(static_cast<quint32>(value)); };
  QByteArray font = "OTTO" + two(2) + two(0) + two(0) + two(0);
  font += "head" + four(0) + four(44) + four(0);
  font += "name" + four(0) + four(44) + four(86);
  const auto record = [&](int platform, int kind, int length, int offset) {
    return two(platform) + two(0) + two(0) + two(kind) + two(length) + two(offset);
  };
  font += two(0) + two(4) + two(6 + 4 * 12);
  font += record(1, 1, 4, 0);    // Macintosh: "Olde"
  font += record(3, 1, 8, 4);    // "Olde" in UTF-16
  font += record(3, 2, 8, 12);   // "Bold"
  font += record(3, 16, 6, 20);  // "Old"
  const auto wide = [](const QByteArray& text) {
    QByteArray out;
    for (const char one : text) out.append('\0').append(one);
    return out;
  };
  return font + "Olde" + wide("Olde") + wide("Bold") + wide("Old");
}

TEST_F(Painting, AFontIsRenamedInPlaceAndNothingElseOfItChanges) {
  const QByteArray font = madeFont();
  QByteArray wanted = font;
  wanted.replace("Olde", "Newe");
  wanted.replace(QByteArray("\0O\0l\0d\0e", 8), QByteArray("\0N\0e\0w\0e", 8));
  EXPECT_EQ(withFamily(font, "Newe"), wanted);
  // A shorter name says its own length; a longer one finds no room.
  const QByteArray shorter = withFamily(font, "No");
  EXPECT_EQ(shorter.size(), font.size());
  EXPECT_EQ(qFromBigEndian<quint16>(shorter.constData() + 44 + 6 + 8), 2);
  EXPECT_EQ(qFromBigEndian<quint16>(shorter.constData() + 44 + 6 + 12 + 8), 4);
  EXPECT_EQ(withFamily(font, "Longer"), font);
}

TEST_F(Painting, ABrokenFontIsLeftAsItIsWhereItEnds) {
  const QByteArray font = madeFont();
  for (qsizetype size = 0; size < font.size(); ++size) {
    const QByteArray cut = withFamily(font.left(size), "Newe");
    ASSERT_EQ(cut.size(), size);
    // Up to the first name there is nothing that may change.
    if (size < 98 + 4) {
      EXPECT_EQ(cut, font.left(size)) << size;
    }
  }
  EXPECT_EQ(withFamily("no font at all", "Newe"), "no font at all");
}

}  // namespace
}  // namespace inchwright::app
