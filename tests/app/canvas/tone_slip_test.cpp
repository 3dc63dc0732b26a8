#include "app/canvas/tone_slip.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QPushButton>
#include <QSlider>
#include <QTest>

#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class ToneSlipTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    QImage grey(80, 60, QImage::Format_RGB32);
    grey.fill(QColor(128, 128, 128));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    grey.save(&buffer, "PNG");
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    const auto laid = layPicture(job, 0, Face::top, QStringLiteral("grey"), bytes);
    ASSERT_TRUE(laid.ok());
    desk.take(*laid, {});
    view = std::make_unique<PrintView>(work);
    view->resize(700, 500);
    slip = new ToneSlip(desk, view.get());
    view->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !view->picture().bounds().isNull(); }));
  }

  QSlider* slider(int index) { return slip->findChildren<QSlider*>()[index]; }
  const PictureTone& tone() { return desk.job().pictures[0].tone; }
  /// The middle of the picture, which the slip does not cover.
  int lightness() {
    slip->hide();
    const QPointF at = view->map().toWidget(view->picture().bounds().center());
    return view->grab().toImage().pixelColor(at.toPoint()).lightness();
  }

  Desk desk;
  Work work{desk};
  std::unique_ptr<PrintView> view;
  ToneSlip* slip = nullptr;
};

TEST_F(ToneSlipTest, WhatIsMovedIsSeenAtOnceAndIsOneStepOfUndo) {
  const int before = lightness();
  ASSERT_TRUE(slip->open());
  for (int i = 0; i < 5; ++i) QTest::keyClick(slider(0), Qt::Key_PageUp);
  for (int i = 0; i < 2; ++i) QTest::keyClick(slider(2), Qt::Key_Right);
  EXPECT_EQ(tone(), (PictureTone{100, 0, 4}));
  EXPECT_GT(lightness(), before + 40);
  desk.undo();
  EXPECT_EQ(tone(), PictureTone());
  EXPECT_EQ(lightness(), before);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(ToneSlipTest, ASecondGoIsAStepOfItsOwn) {
  ASSERT_TRUE(slip->open());
  QTest::keyClick(slider(1), Qt::Key_PageUp);
  QTest::keyClick(slip, Qt::Key_Escape);
  EXPECT_FALSE(slip->isVisible());
  EXPECT_TRUE(view->hasFocus());
  ASSERT_TRUE(slip->open());
  EXPECT_EQ(slider(1)->value(), 20);
  QTest::keyClick(slider(1), Qt::Key_PageUp);
  desk.undo();
  EXPECT_EQ(tone(), (PictureTone{0, 20, 0}));
}

TEST_F(ToneSlipTest, AsItWasTakenClearsAllThree) {
  ASSERT_TRUE(slip->open());
  for (int i = 0; i < 3; ++i) QTest::keyClick(slider(i), Qt::Key_PageUp);
  EXPECT_EQ(tone(), (PictureTone{20, 20, 20}));
  QTest::mouseClick(slip->findChildren<QPushButton*>()[0], Qt::LeftButton);
  EXPECT_EQ(tone(), PictureTone());
  EXPECT_EQ(slider(2)->value(), 0);
}

TEST_F(ToneSlipTest, IsKeptInTheDocument) {
  ASSERT_TRUE(slip->open());
  QTest::keyClick(slider(2), Qt::Key_End);
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again->pictures[0].tone.fade, 100);
}

TEST_F(ToneSlipTest, WithoutAPictureThereIsNothingToTone) {
  QString why;
  QObject::connect(&desk, &Desk::refused, [&why](const QString& text) { why = text; });
  desk.chooseFace(Face::left);
  EXPECT_FALSE(slip->open());
  EXPECT_FALSE(why.isEmpty());
  EXPECT_FALSE(slip->isVisible());
}

TEST_F(ToneSlipTest, FacesTurnedAwayTakeTheSlipAlong) {
  ASSERT_TRUE(slip->open());
  desk.chooseFace(Face::left);
  EXPECT_FALSE(slip->isVisible());
}

}  // namespace
}  // namespace inchwright::app
