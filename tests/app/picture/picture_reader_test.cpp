#include "app/picture/picture_reader.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QPainter>
#include <QSignalSpy>
#include <QTest>

#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

/// A white sheet with a black rectangle of 300 by 200 pixels, 100 from the left and 80 from the
/// top.
WantedPicture wantedSheet() {
  QImage image(600, 400, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter(&image).fillRect(100, 80, 300, 200, Qt::black);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return {PictureBytes(bytes.toStdString()), {}, 1, {}};
}

class PictureReaderTest : public ::testing::Test {
 protected:
  PictureReaderTest() {
    deskApplication();
    QObject::connect(&reader, &PictureReader::arrived, &reader,
                     [this](const std::shared_ptr<SquaredPicture>& picture) {
                       ++arrivals;
                       last = picture;
                     });
  }

  bool waitForOne() {
    return QTest::qWaitFor([this] { return arrivals > 0; });
  }

  int arrivals = 0;
  std::shared_ptr<SquaredPicture> last;
  PictureReader reader;
};

// What is painted first waits for no picture.
TEST_F(PictureReaderTest, NothingIsReadBeforeThereIsLeave) {
  reader.read(wantedSheet());
  QCoreApplication::processEvents();
  EXPECT_EQ(reader.progress(), 0);
  EXPECT_EQ(arrivals, 0);
  reader.letRead();
  ASSERT_TRUE(waitForOne());
  ASSERT_NE(last, nullptr);
  EXPECT_EQ(last->bounds(), QRectF(0, -4, 6, 4));
  EXPECT_FALSE(reader.progress().has_value());
  EXPECT_TRUE(reader.trouble().isEmpty());
}

TEST_F(PictureReaderTest, OneStoppedBeforeItsTurnNeverComes) {
  PictureReader stopped;
  QSignalSpy came(&stopped, &PictureReader::arrived);
  stopped.read(wantedSheet());
  stopped.stop();
  stopped.letRead();
  reader.letRead();
  reader.read(wantedSheet());
  ASSERT_TRUE(waitForOne());
  EXPECT_EQ(came.count(), 0);
  EXPECT_FALSE(stopped.progress().has_value());
}

TEST_F(PictureReaderTest, WhatIsWantedLastTakesThePlaceOfWhatIsUnderWay) {
  reader.letRead();
  reader.read({{}, QStringLiteral("/nowhere/print.png"), 1, {}});
  reader.read(wantedSheet());
  ASSERT_TRUE(waitForOne());
  EXPECT_NE(last, nullptr);
  EXPECT_EQ(arrivals, 1);
}

TEST_F(PictureReaderTest, SquaredUpByTwoPointsItLiesWhereTheySay) {
  WantedPicture wanted = wantedSheet();
  wanted.points = {{100, 280, *readLength("0"), *readLength("0")},
                   {400, 80, *readLength("3"), *readLength("2")}};
  reader.letRead();
  reader.read(wanted);
  ASSERT_TRUE(waitForOne());
  ASSERT_NE(last, nullptr);
  EXPECT_NEAR(last->bounds().left(), -1, 0.02);
  EXPECT_NEAR(last->bounds().width(), 6, 0.02);
}

TEST_F(PictureReaderTest, WhatCannotBeReadSaysWhy) {
  reader.letRead();
  for (const WantedPicture& wanted :
       {WantedPicture{{}, QStringLiteral("/nowhere/print.png"), 1, {}},
        WantedPicture{PictureBytes("no picture at all"), {}, 1, {}}}) {
    arrivals = 0;
    reader.read(wanted);
    ASSERT_TRUE(waitForOne());
    EXPECT_EQ(last, nullptr);
    EXPECT_FALSE(reader.trouble().isEmpty());
  }
}

}  // namespace
}  // namespace inchwright::app
