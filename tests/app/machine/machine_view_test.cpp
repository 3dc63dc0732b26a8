#include "app/machine/machine_view.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include "app/base/look.h"
#include "core/document/document.h"
#include "core/lines/pasted.h"
#include "core/part/edit.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class MachineViewTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    put(jobOfPlate("hole A 1/4 ream\nhole B 1/4 ream\nL A 3/8\nF A 1/2\nA B 1\nin line y A B"));
    ASSERT_NE(desk.table(), nullptr);
    ASSERT_EQ(desk.table()->rows.size(), 2u);
    view = std::make_unique<MachineView>(desk);
    view->resize(1280, 720);
    view->show();
    view->go(0);
  }

  /// The view as one comes back to it.
  void comeBack() {
    view = std::make_unique<MachineView>(desk);
    view->resize(1280, 720);
    view->show();
  }
  bool says(const QString& words) const {
    for (const auto* label : view->findChildren<QLabel*>()) {
      if (label->text().contains(words)) return true;
    }
    return false;
  }
  void tickAll() {
    for (std::size_t i = 0; i < fittingsOf(*desk.table()->rows[0].plan).size(); ++i) {
      QTest::keyClick(view.get(), Qt::Key_Space);
      QCoreApplication::processEvents();
    }
  }

  const Id& place(int row) const { return desk.table()->rows[row].id; }
  MadePlace made(int row) const { return madeAt(desk.part(), place(row), desk.setup().name); }

  std::unique_ptr<MachineView> view;
};

TEST_F(MachineViewTest, SpaceTicksEachToolThenGoesOn) {
  const std::size_t tools = fittingsOf(*desk.table()->rows[0].plan).size();
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

TEST_F(MachineViewTest, TheBoxesLieWhereTheyBelongBeforeAnythingIsPaintedRoundThem) {
  QCoreApplication::processEvents();
  const auto boxes = [&] {
    std::vector<QRect> all;
    for (const auto* box : view->findChildren<QCheckBox*>()) {
      all.emplace_back(box->mapTo(view.get(), QPoint()), box->size());
    }
    return all;
  };
  QTest::keyClick(view.get(), Qt::Key_Space);
  // The tick alone, and nothing of what it leads to.
  QCoreApplication::sendPostedEvents(view.get(), QEvent::MetaCall);
  const auto atOnce = boxes();
  ASSERT_FALSE(atOnce.empty());
  QCoreApplication::processEvents();
  EXPECT_EQ(atOnce, boxes());
}

TEST_F(MachineViewTest, NothingMakesItWiderThanTheScreen) {
  enterLines({"hole D 1/4-20 tap", "x L D 1/2", "y F D 1/4"});
  comeBack();
  view->resize(700, 420);
  for (int row = 0; row < 3; ++row) {
    view->go(row);
    QCoreApplication::processEvents();
    EXPECT_EQ(view->width(), 700);
    EXPECT_LE(view->minimumSize().width(), 700);
    for (const auto* box : view->findChildren<QCheckBox*>()) {
      EXPECT_LE(box->mapTo(view.get(), QPoint(box->width(), 0)).x(), 700)
          << qPrintable(box->text());
      EXPECT_GE(box->width(), box->sizeHint().width()) << qPrintable(box->text());
    }
  }
}

TEST_F(MachineViewTest, TheReadoutAndZeroComeFirst) {
  comeBack();
  EXPECT_LT(view->row(), 0);
  EXPECT_TRUE(view->accessibleDescription().contains(QStringLiteral("Readout in inches")));
  QString seen;
  while (view->row() < 0) {
    seen += view->accessibleDescription();
    QTest::keyClick(view.get(), Qt::Key_Space);
  }
  EXPECT_EQ(view->row(), 0);
  EXPECT_TRUE(seen.contains(QStringLiteral("X zero"))) << qPrintable(seen);
  EXPECT_TRUE(seen.contains(QStringLiteral("Y zero")));
  QTest::keyClick(view.get(), Qt::Key_Home);
  EXPECT_LT(view->row(), -1);
}

TEST_F(MachineViewTest, ItOpensWhereOneLeftOff) {
  tickAll();
  const std::string kept = writeDocument(desk.job());
  // As after a power cut: only the document is left.
  view.reset();
  desk.take(*readDocument(kept), {});
  comeBack();
  EXPECT_EQ(view->row(), 1);
}

TEST_F(MachineViewTest, APlaceWhoseFiguresChangedIsUntickedAndSaysSo) {
  tickAll();
  EXPECT_FALSE(says(QStringLiteral("the ticks are taken off")));
  Part part = desk.part();
  for (Reading& reading : part.readings) {
    if (reading.to == place(0) && reading.axis == Axis::y) reading.figure = *readLength("5/8");
  }
  ASSERT_TRUE(desk.applyPart(part, "another figure"));
  view->go(0);
  for (const auto* tick : view->findChildren<QCheckBox*>()) EXPECT_FALSE(tick->isChecked());
  EXPECT_TRUE(says(QStringLiteral("the ticks are taken off")));
  desk.undo();
  for (const auto* tick : view->findChildren<QCheckBox*>()) EXPECT_TRUE(tick->isChecked());
  // Another step of the readout is no other figure.
  Job job = desk.job();
  job.machine.step = "0.001";
  desk.apply(job, "step");
  EXPECT_FALSE(says(QStringLiteral("the ticks are taken off")));
}

TEST_F(MachineViewTest, WhatIsMeasuredOffIsSaidByHowMuch) {
  auto fields = view->findChildren<QLineEdit*>();
  QTest::keyClicks(fields[0], QStringLiteral("0.3770"));
  QTest::keyClick(fields[0], Qt::Key_Return);
  EXPECT_TRUE(says(QStringLiteral("X is +0.0020 off")));
}

TEST_F(MachineViewTest, TabIsNoAnswerWhetherASignIsRight) {
  ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
  auto fields = view->findChildren<QLineEdit*>();
  fields[0]->setFocus();
  QTest::keyClicks(fields[0], QStringLiteral("-0.3752"));
  QTest::keyClick(fields[0], Qt::Key_Tab);
  QCoreApplication::processEvents();
  EXPECT_FALSE(made(0).x.has_value());
  EXPECT_TRUE(says(QStringLiteral("is the sign right?")));
  EXPECT_TRUE(fields[0]->hasFocus());
}

TEST_F(MachineViewTest, ASlipOfTheSignIsAskedAboutFirst) {
  ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
  auto fields = view->findChildren<QLineEdit*>();
  fields[0]->setFocus();
  QTest::keyClicks(fields[0], QStringLiteral("-0.3752"));
  QTest::keyClick(fields[0], Qt::Key_Return);
  EXPECT_FALSE(made(0).x.has_value());
  EXPECT_TRUE(says(QStringLiteral("is the sign right?")));
  view->go(1);
  EXPECT_EQ(view->row(), 1) << "once more keeps it so";
  ASSERT_TRUE(made(0).x.has_value());
  EXPECT_EQ(made(0).x->text, "-0.3752");
}

TEST_F(MachineViewTest, ADraftIsAsLargeAsTheFigures) {
  const auto red = [&] {
    const QImage seen = view->grab().toImage();
    int first = seen.height(), last = -1;
    for (int y = 0; y < seen.height(); ++y) {
      for (int x = 0; x < seen.width(); ++x) {
        const QColor at = seen.pixelColor(x, y);
        if (at.red() - std::max(at.green(), at.blue()) < 80) continue;
        first = std::min(first, y);
        last = std::max(last, y);
      }
    }
    return last - first + 1;
  };
  const bool draft = desk.solution().isDraft();
  ASSERT_TRUE(draft) << "nothing says where the sides are";
  // Read from across the shop: no smaller than a digit of the figures beside it would be.
  EXPECT_GT(red(), view->height() / 12);
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
  // With nothing in doubt the two figures have the view to themselves.
  Part settled = desk.part();
  for (const Doubt& doubt : desk.solution().doubts) settled.accepted.emplace_back(doubt.key.text());
  ASSERT_TRUE(desk.applyPart(settled, "settled"));
  ASSERT_FALSE(desk.solution().isDraft());
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
