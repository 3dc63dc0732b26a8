// A photo of 24 megapixels squared up in the background: its progress is told, and it can be
// stopped from wherever one types.

#include <gtest/gtest.h>

#include <QPainter>
#include <QTemporaryDir>
#include <algorithm>
#include <vector>

#include "app/canvas/print_view.h"
#include "core/document/document.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class SquaringTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    const QString file = folder.filePath(QStringLiteral("photo.jpg"));
    QImage photo(6000, 4000, QImage::Format_RGB32);
    photo.fill(Qt::white);
    {
      QPainter painter(&photo);
      painter.fillRect(1000, 800, 4000, 2400, Qt::gray);
    }
    ASSERT_TRUE(photo.save(file, "JPEG", 80));
    photo = {};
    print = window->findChild<PrintView*>();
    ASSERT_TRUE(window->files().newJob());
    ASSERT_TRUE(print->picture().takeFile(file));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
    asTaken = print->picture().bounds();
    ASSERT_FALSE(asTaken.isNull());
    before = window->desk().job();
  }

  void squareUp() {
    const auto at = [this](double x, double y) {
      return print->map().toWidget(QPointF(x / 100, -y / 100)).toPoint();
    };
    QTest::mouseClick(print, Qt::LeftButton, Qt::ControlModifier, at(1000, 3200));
    type(QStringLiteral("0, 0"));
    QTest::mouseClick(print, Qt::LeftButton, Qt::ControlModifier, at(5000, 800));
    type(QStringLiteral("10, 6"));
    ASSERT_EQ(window->desk().job(), before);
    type({});
    ASSERT_NE(window->desk().job(), before);
    ASSERT_TRUE(window->busy());
  }

  QTemporaryDir folder;
  PrintView* print = nullptr;
  QRectF asTaken;
  Job before;
};

TEST_F(SquaringTest, ProgressIsToldUntilItIsDone) {
  squareUp();
  std::vector<int> percents;
  QObject::connect(&print->picture(), &PrintPicture::changed, print, [&] {
    if (const auto percent = print->picture().progress()) percents.push_back(*percent);
  });
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
  ASSERT_FALSE(percents.empty());
  EXPECT_TRUE(std::is_sorted(percents.begin(), percents.end()));
  EXPECT_GE(percents.front(), 0);
  EXPECT_LE(percents.back(), 100);
  // 4000 pixels are 10 inches now, and were 40.
  EXPECT_NEAR(print->picture().bounds().width(), 15, 0.1);
}

TEST_F(SquaringTest, StoppedHalfWayTheWorkIsAsBeforeAndNothingArrivesLate) {
  squareUp();
  ASSERT_TRUE(
      QTest::qWaitFor([this] { return print->picture().progress().value_or(100) > 0; }, 60000));
  ASSERT_TRUE(window->busy()) << "it was too fast to be stopped";
  QTest::keyClick(line(), Qt::Key_Escape);
  EXPECT_EQ(window->desk().job(), before);
  EXPECT_TRUE(print->picture().bounds().isNull()) << "nothing is shown that is not there";
  // The picture is read again as it was taken; what was stopped never shows.
  QRectF shown;
  bool other = false;
  QObject::connect(&print->picture(), &PrintPicture::changed, print, [&] {
    shown = print->picture().bounds();
    other = other || (!shown.isNull() && shown != asTaken);
  });
  // One picture is read after the other, so that what was stopped would have arrived before this.
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
  EXPECT_FALSE(other);
  EXPECT_EQ(shown, asTaken);
  EXPECT_EQ(window->desk().job(), before);
  // It can be done again.
  QTest::keyClick(line(), Qt::Key_Y, Qt::ControlModifier);
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
  EXPECT_NEAR(print->picture().bounds().width(), 15, 0.1);
}

TEST_F(SquaringTest, OfADocumentJustOpenedItIsStoppedAndTakenUpAgain) {
  squareUp();
  const QString file = folder.filePath(QStringLiteral("plate.inchwright"));
  ASSERT_TRUE(saveDocument(window->desk().job(), file.toStdString()).ok());
  window->desk().markSaved({});
  ASSERT_TRUE(window->files().newJob());
  ASSERT_TRUE(window->files().open(file));
  const Job opened = window->desk().job();
  ASSERT_TRUE(window->busy());
  // A line that is being typed has the key first.
  QTest::keyClicks(line(), QStringLiteral("L"));
  QTest::keyClick(line(), Qt::Key_Escape);
  ASSERT_TRUE(window->busy());
  QTest::keyClick(line(), Qt::Key_Escape);
  EXPECT_FALSE(window->busy());
  EXPECT_TRUE(print->picture().stopped());
  int arrived = 0;
  QObject::connect(&print->picture(), &PrintPicture::changed, print, [&] {
    if (!print->picture().bounds().isNull() && window->busy()) ++arrived;
  });
  EXPECT_EQ(window->desk().job(), opened);
  EXPECT_FALSE(window->desk().unsaved());
  QTest::keyClick(line(), Qt::Key_U, Qt::ControlModifier);
  ASSERT_TRUE(window->busy());
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
  EXPECT_FALSE(print->picture().stopped());
  EXPECT_EQ(arrived, 0) << "what was stopped came after all";
  EXPECT_NEAR(print->picture().bounds().width(), 15, 0.1);
  EXPECT_EQ(window->desk().job(), opened);
}

TEST_F(SquaringTest, AnEscapeLaterTakesNothingBack) {
  squareUp();
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
  const Job squared = window->desk().job();
  QTest::keyClick(line(), Qt::Key_Escape);
  EXPECT_EQ(window->desk().job(), squared);
  EXPECT_FALSE(print->picture().bounds().isNull());
}

TEST_F(SquaringTest, StoppedWhileItIsStillDecodedTheWorkIsAsBefore) {
  squareUp();
  ASSERT_TRUE(window->busy());
  QTest::keyClick(line(), Qt::Key_Escape);
  EXPECT_EQ(window->desk().job(), before);
}

}  // namespace
}  // namespace inchwright::app
