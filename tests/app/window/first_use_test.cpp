// The first minutes: what lies on the desk, the tour by doing, and what is said of what was done.

#include <gtest/gtest.h>

#include <QBuffer>
#include <QDropEvent>
#include <QImage>
#include <QMimeData>
#include <QPainter>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTimer>
#include <QUrl>

#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "app/window/note_slip.h"
#include "app/window/start_slip.h"
#include "app/window/tour_slip.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class FirstUseTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    QImage sheet(300, 200, QImage::Format_RGB32);
    sheet.fill(Qt::white);
    QPainter(&sheet).drawRect(50, 50, 200, 100);
    ASSERT_TRUE(sheet.save(photo()));
  }

  QString photo() const { return folder_.filePath(QStringLiteral("print.png")); }
  TourSlip* tour() { return window->findChild<TourSlip*>(); }
  NoteSlip* note() { return window->findChild<NoteSlip*>(); }

  void drop(QWidget* on) {
    QMimeData mime;
    mime.setUrls({QUrl::fromLocalFile(photo())});
    const QPoint middle = on->rect().center();
    QDragEnterEvent enter(middle, Qt::CopyAction, &mime, Qt::LeftButton, {});
    QApplication::sendEvent(on, &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent event(middle, Qt::CopyAction, &mime, Qt::LeftButton, {});
    QApplication::sendEvent(on, &event);
  }

  QTemporaryDir folder_;
};

TEST_F(FirstUseTest, FourPapersOfEqualWeightLieOnTheDesk) {
  StartSlip start;
  start.show();
  std::vector<QSize> sizes;
  for (const char* name : {"A picture", "Blank paper", "A saved job", "The sample"}) {
    for (const auto* button : start.findChildren<QPushButton*>()) {
      if (button->accessibleName().startsWith(QLatin1String(name))) sizes.push_back(button->size());
    }
  }
  ASSERT_EQ(sizes.size(), 4u);
  for (const QSize& size : sizes) {
    EXPECT_NEAR(size.width(), sizes[0].width(), 2);
    EXPECT_EQ(size.height(), sizes[0].height());
  }
}

TEST_F(FirstUseTest, APhotoDroppedOnTheChoiceIsThePictureOfANewJob) {
  StartSlip start;
  start.show();
  drop(&start);
  EXPECT_EQ(start.result(), QDialog::Accepted);
  EXPECT_EQ(start.choice(), StartSlip::Choice::picture);
  EXPECT_EQ(start.picture(), photo());
}

TEST_F(FirstUseTest, APhotoOnTheSampleAsksWhetherItIsAJobOfItsOwn) {
  ASSERT_TRUE(window->files().openSample());
  const std::size_t features = window->desk().part().features.size();
  pick = QStringLiteral("Leave");
  drop(&window->print());
  EXPECT_EQ(window->desk().part().features.size(), features);
  EXPECT_FALSE(window->desk().unsaved());
  pick = QStringLiteral("Begin a");
  drop(&window->print());
  EXPECT_TRUE(window->desk().part().features.empty());
  EXPECT_EQ(window->work().doing(), Doing::squaring);
  EXPECT_EQ(questions.size(), 2);
  // In a job of one's own nothing is asked.
  drop(&window->print());
  EXPECT_EQ(questions.size(), 2);
}

TEST_F(FirstUseTest, TheTourGoesOnAsItsStepsAreDone) {
  ASSERT_TRUE(window->files().openSample());
  window->startTour();
  EXPECT_EQ(tour()->step(), 0);
  type(QStringLiteral("hole W 1/8"));
  EXPECT_EQ(tour()->step(), 1);
  type(QStringLiteral("L W 2 1/4"));
  EXPECT_EQ(tour()->step(), 2);
  type(QStringLiteral("A B 2"));
  ASSERT_EQ(tour()->step(), 3) << "the slip makes a contradiction";
  EXPECT_FALSE(window->desk().solution().clashes.empty());
  window->desk().undo();
  EXPECT_EQ(tour()->step(), 4);
  window->work().zero();
  type(QStringLiteral("A"));
  EXPECT_EQ(tour()->step(), 5);
  EXPECT_TRUE(tour()->isVisible());
  // It never takes the keys away from the line.
  EXPECT_TRUE(line()->hasFocus());
}

TEST_F(FirstUseTest, WhatWasWrittenAndCopiedIsSaid) {
  ASSERT_TRUE(window->files().openSample());
  toWrite = folder_.filePath(QStringLiteral("plate.csv"));
  ASSERT_TRUE(window->files().writeSheet(QStringLiteral("csv")));
  EXPECT_TRUE(note()->isVisible());
  EXPECT_TRUE(note()->text().contains(QStringLiteral("plate.csv"))) << qPrintable(note()->text());
  window->copyTable();
  EXPECT_TRUE(note()->text().contains(QStringLiteral("clipboard")));
  EXPECT_FALSE(note()->text().contains(QStringLiteral("(s)")));
}

}  // namespace
}  // namespace inchwright::app
