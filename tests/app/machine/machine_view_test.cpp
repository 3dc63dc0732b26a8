#include "app/machine/machine_view.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLineEdit>
#include <QTest>

#include "core/lines/pasted.h"
#include "core/part/edit.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class MachineViewTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Part part;
    part.name = "Plate";
    const auto read = applyLines(
        part, "hole A 1/4 ream\nhole B 1/4 ream\nL A 3/8\nF A 1/2\nA B 1\nin line y A B", {});
    ASSERT_TRUE(read.ok()) << read.error().text;
    Job job;
    job.parts.push_back(*read);
    desk.take(job, {});
    ASSERT_NE(desk.table(), nullptr);
    ASSERT_EQ(desk.table()->rows.size(), 2u);
    view = std::make_unique<MachineView>(desk);
    view->resize(1280, 720);
    view->show();
    view->setFocus();
  }

  const Id& place(int row) const { return desk.table()->rows[row].id; }
  MadePlace made(int row) const { return madeAt(desk.part(), place(row), desk.setup().name); }

  Desk desk;
  std::unique_ptr<MachineView> view;
};

TEST_F(MachineViewTest, SpaceTicksEachToolThenGoesOn) {
  const std::size_t tools = desk.table()->rows[0].steps.size();
  ASSERT_GT(tools, 0u);
  for (std::size_t i = 0; i < tools; ++i) {
    QTest::keyClick(view.get(), Qt::Key_Space);
    QCoreApplication::processEvents();
    EXPECT_EQ(made(0).ticks.size(), i + 1);
    EXPECT_EQ(view->row(), 0);
  }
  QTest::keyClick(view.get(), Qt::Key_Space);
  EXPECT_EQ(view->row(), 1);
  EXPECT_TRUE(desk.unsaved());
}

TEST_F(MachineViewTest, ArrowsAndHalvesOfTheFiguresWalk) {
  QTest::keyClick(view.get(), Qt::Key_Right);
  EXPECT_EQ(view->row(), 1);
  QTest::keyClick(view.get(), Qt::Key_Right);
  EXPECT_EQ(view->row(), 1);
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, {200, 300});
  EXPECT_EQ(view->row(), 0);
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, {1100, 300});
  EXPECT_EQ(view->row(), 1);
}

TEST_F(MachineViewTest, LettersStandBelowOneAnotherWhateverTheFiguresAre) {
  const auto far = applyLines(desk.part(), "hole C 1/4\nL C 12 3/8\nF C 3/8", {});
  ASSERT_TRUE(far.ok()) << far.error().text;
  ASSERT_TRUE(desk.applyPart(*far, "far"));
  while (desk.table()->rows[static_cast<std::size_t>(view->row())].id != "C") {
    QTest::keyClick(view.get(), Qt::Key_Right);
  }
  const QImage seen = view->grab().toImage().convertToFormat(QImage::Format_Grayscale8);
  const QRect box = view->rect().adjusted(view->width() / 3, 120, -30, -160);
  const auto firstInk = [&](int top, int bottom) {
    for (int x = box.left(); x < box.right(); ++x) {
      for (int y = top; y < bottom; ++y) {
        if (qGray(seen.pixel(x, y)) < 128) return x;
      }
    }
    return -1;
  };
  const int upper = firstInk(box.top(), box.center().y());
  const int lower = firstInk(box.center().y(), box.bottom());
  ASSERT_GT(upper, 0);
  // An X and a Y begin within a stroke of one another.
  EXPECT_NEAR(upper, lower, 6);
}

TEST_F(MachineViewTest, MeasuredFigureIsKept) {
  auto fields = view->findChildren<QLineEdit*>();
  ASSERT_EQ(fields.size(), 2);
  QTest::keyClicks(fields[0], QStringLiteral("0.3752"));
  QTest::keyClick(fields[0], Qt::Key_Return);
  ASSERT_TRUE(made(0).x.has_value());
  EXPECT_EQ(made(0).x->text, "0.3752");
  EXPECT_FALSE(made(0).y.has_value());
}

TEST_F(MachineViewTest, WhatWasTypedIsKeptWhicheverWayOneGoesOn) {
  auto fields = view->findChildren<QLineEdit*>();
  fields[1]->setFocus();
  QTest::keyClicks(fields[1], QStringLiteral("0.5003"));
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, {1100, 300});
  EXPECT_EQ(view->row(), 1);
  ASSERT_TRUE(made(0).y.has_value());
  EXPECT_EQ(made(0).y->text, "0.5003");
  EXPECT_FALSE(made(1).y.has_value());
}

TEST_F(MachineViewTest, TakenAwayWhileAFigureIsBeingTypedItKeepsIt) {
  auto fields = view->findChildren<QLineEdit*>();
  ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
  fields[0]->setFocus();
  QTest::keyClicks(fields[0], QStringLiteral("0.3751"));
  view.reset();
  ASSERT_TRUE(made(0).x.has_value());
  EXPECT_EQ(made(0).x->text, "0.3751");
}

}  // namespace
}  // namespace inchwright::app
