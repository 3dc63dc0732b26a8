// What holds the work dragged in the picture on my sheet, by the mouse.
#include "app/sheet/held_drag.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QTest>

#include "app/session/held_text.h"
#include "app/sheet/setup_slip.h"
#include "app/sheet/sheet_view.h"
#include "core/lines/pasted.h"
#include "tests/support/by_hand.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

Length inch(const char* text) {
  return readLength(text, {})->value;
}

class HeldDragTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Part part;
    part.name = "Plate";
    const auto read =
        applyLines(part, "hole A 1/4 ream\nL A 2\nL R 4\nF A 1\nF K 2\nU T 1/2\n", {});
    ASSERT_TRUE(read.ok()) << read.error().text;
    inchwright::Setup setup;
    setup.name = "1";
    setup.zero = {{Axis::x, {}, "L", false, {}, {}}, {Axis::y, {}, "F", false, {}, {}}};
    setup.jaw = Side::front;
    setup.held.parallels =
        *readParallels(QStringLiteral("fixed 1/8 x 1 gap 1/4"), std::nullopt, Unit::inch);
    Job job;
    job.parts.push_back(*read);
    job.parts[0].setups = {setup};
    desk.take(job, {});
    view = std::make_unique<SheetView>(desk);
    view->resize(1400, 1000);
    view->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(view.get()));
  }

  PaperTarget target(TargetKind kind) const {
    for (const PaperTarget& one : view->page(0).targets) {
      if (one.kind == kind) return one;
    }
    ADD_FAILURE() << "nothing of the kind is on the page";
    return {};
  }

  /// Of millimetres on the page, told by where a hole is pictured there and on the view.
  QPoint onView(QPointF paper) const {
    for (const PaperTarget& one : view->page(0).targets) {
      if (one.place != "A" || one.kind != TargetKind::pictured) continue;
      const QPointF offset =
          (paper - QPointF(one.from.x, one.from.y)) * view->pixelsPerInch() / 25.4;
      return (*view->whereIs("A") + offset).toPoint();
    }
    return {};
  }

  void press(QPoint at) { QTest::mousePress(view->viewport(), Qt::LeftButton, {}, at); }
  void move(QPoint from, QPoint to, int steps = 8) {
    for (int i = 1; i <= steps; ++i) {
      QTest::mouseMove(view->viewport(), from + (to - from) * i / steps);
    }
  }
  void release(QPoint at) { QTest::mouseRelease(view->viewport(), Qt::LeftButton, {}, at); }

  bool sheetSays(std::string_view words) const {
    std::string all;
    for (int i = 0; i < view->pageCount(); ++i) {
      for (const DrawItem& item : view->page(i).items) {
        if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
      }
    }
    return all.find(words) != std::string::npos;
  }
  const LaidParallel& parallel() const { return desk.setup().held.parallels->front(); }

  Desk desk;
  std::unique_ptr<SheetView> view;
};

TEST_F(HeldDragTest, AParallelGoesWithThePointerAndTheChecksRunAsItLies) {
  EXPECT_FALSE(sheetSays("runs into the parallel"));
  const PaperTarget drawn = target(TargetKind::parallel);
  // A third along, where neither the hole nor a name lies on it.
  const QPointF grip(drawn.from.x + (drawn.to.x - drawn.from.x) * 0.15,
                     (drawn.from.y + drawn.to.y) / 2);
  // 5/8 in further from its jaw: from 7/8 to 1 in, under the hole at 1 in.
  const QPointF there = grip + QPointF(drawn.away.x, drawn.away.y) * 25.4 * 5 / 8;
  press(onView(grip));
  move(onView(grip), onView(there));
  EXPECT_EQ(parallel().gap->value, inch("7/8")) << parallel().gap->text;
  EXPECT_TRUE(sheetSays("runs into the parallel at the fixed jaw")) << "before it is let go";
  release(onView(there));
  EXPECT_EQ(parallel().gap->text, "7/8");
  desk.undo();
  EXPECT_EQ(parallel().gap->value, inch("1/4")) << "one drag is one step";
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(HeldDragTest, AParallelDoesNotGoThroughItsJaw) {
  const PaperTarget drawn = target(TargetKind::parallel);
  const QPointF grip(drawn.from.x + (drawn.to.x - drawn.from.x) * 0.15,
                     (drawn.from.y + drawn.to.y) / 2);
  const QPointF there = grip - QPointF(drawn.away.x, drawn.away.y) * 25.4;
  press(onView(grip));
  move(onView(grip), onView(there));
  release(onView(there));
  EXPECT_TRUE(parallel().gap->value.isZero());
}

TEST_F(HeldDragTest, TheJawGoesToTheSideThePointerIsNearestTo) {
  const PaperTarget jaw = target(TargetKind::fixedJaw);
  const QPointF grip((jaw.from.x + jaw.to.x) / 2, (jaw.from.y + jaw.to.y) / 2);
  const QPoint back = view->whereIs("K")->toPoint();
  press(onView(grip));
  move(onView(grip), back);
  release(back);
  EXPECT_EQ(desk.setup().jaw, Side::back);
  desk.undo();
  EXPECT_EQ(desk.setup().jaw, Side::front);
}

TEST_F(HeldDragTest, TheStopAndTheMovingJawGoToASideAsWell) {
  inchwright::Setup setup = desk.setup();
  setup.stop = Side::left;
  desk.applyPart(replaceSetup(desk.part(), "1", setup), QStringLiteral("stop"));
  const auto dragTo = [&](TargetKind kind, const char* edge) {
    const PaperTarget held = target(kind);
    const QPointF grip((held.from.x + held.to.x) / 2, (held.from.y + held.to.y) / 2);
    const QPoint there = view->whereIs(edge)->toPoint();
    press(onView(grip));
    move(onView(grip), there);
    release(there);
  };
  dragTo(TargetKind::stop, "R");
  EXPECT_EQ(desk.setup().stop, Side::right);
  desk.undo();
  EXPECT_EQ(desk.setup().stop, Side::left);
  dragTo(TargetKind::movingJaw, "F");
  EXPECT_EQ(desk.setup().jaw, Side::back) << "the fixed one stands opposite";
  desk.undo();
  EXPECT_EQ(desk.setup().jaw, Side::front);
}

TEST_F(HeldDragTest, AClampGoesAlongBothAxesAndTheChecksRunAsItStands) {
  inchwright::Setup setup = desk.setup();
  Obstacle clamp;
  clamp.along[0] = {readLength("3").value(), readLength("3 1/2").value()};
  clamp.along[1] = {readLength("1 1/2").value(), readLength("2").value()};
  setup.held.clamps = {clamp};
  desk.applyPart(replaceSetup(desk.part(), "1", setup), QStringLiteral("clamp"));
  EXPECT_FALSE(sheetSays("runs into clamp"));
  const PaperTarget drawn = target(TargetKind::clamp);
  const QPointF grip(drawn.from.x + (drawn.to.x - drawn.from.x) * 0.2,
                     drawn.from.y + (drawn.to.y - drawn.from.y) * 0.2);
  // 1 in to the left and 1/2 in towards: over the hole at 2, 1.
  const QPointF there =
      grip - QPointF(drawn.away.x, drawn.away.y) * 25.4 - QPointF(drawn.up.x, drawn.up.y) * 12.7;
  press(onView(grip));
  move(onView(grip), onView(there));
  EXPECT_TRUE(sheetSays("runs into clamp 1")) << "before it is let go";
  release(onView(there));
  const auto& along = desk.setup().held.clamps[0].along;
  EXPECT_EQ(along[0]->first.value, inch("2"));
  EXPECT_EQ(along[0]->second.value, inch("2 1/2")) << "as long as it was";
  EXPECT_EQ(along[1]->first.value, inch("1"));
  desk.undo();
  EXPECT_EQ(desk.setup().held.clamps[0], clamp);
}

TEST_F(HeldDragTest, AClickOnAParallelShiftsNothingAndPointsAtNothing) {
  int pointed = 0;
  QObject::connect(view.get(), &SheetView::pointedAt, [&] { ++pointed; });
  const PaperTarget drawn = target(TargetKind::parallel);
  const QPoint at =
      onView({drawn.from.x + (drawn.to.x - drawn.from.x) * 0.15, (drawn.from.y + drawn.to.y) / 2});
  QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, at);
  EXPECT_EQ(pointed, 0);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(HeldDragTest, ParallelsAreTypedOnTheSlipOfTheSetup) {
  SetupSlip slip(desk);
  slip.show();
  auto* field = calledIn<QLineEdit>(slip, QStringLiteral("Parallels"));
  ASSERT_NE(field, nullptr);
  EXPECT_EQ(field->text(), QStringLiteral("fixed 1/8 x 1 gap 1/4"));
  typeOver(*field, QStringLiteral("1/8 x 1; moving 1/4 x 1 gap 1/2 from 0 to 2"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_EQ(desk.setup().held.parallels->size(), 2u);
  EXPECT_EQ((*desk.setup().held.parallels)[1].jaw, Jaw::moving);
  EXPECT_EQ((*desk.setup().held.parallels)[1].to->value, inch("2"));
  EXPECT_EQ(field->text(), QStringLiteral("fixed 1/8 x 1; moving 1/4 x 1 gap 1/2 from 0 to 2"));
  typeOver(*field, QStringLiteral("two of them"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_EQ(desk.setup().held.parallels->size(), 2u) << "what can't be read changes nothing";
  typeOver(*field, QStringLiteral("bed"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_TRUE(desk.setup().held.parallels.has_value());
  EXPECT_TRUE(desk.setup().held.parallels->empty());
  typeOver(*field, QString());
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_FALSE(desk.setup().held.parallels.has_value());
}

TEST(Parallels, KeepWhatALineDoesNotSay) {
  LaidParallel one;
  one.thick = readLength("1/8").value();
  one.tall = readLength("1").value();
  one.from = readLength("1/2").value();
  one.extra = {{"note", "\"the old pair\""}};
  const auto read =
      readParallels(QStringLiteral("fixed 1/8 x 1 gap 1/4"), std::vector{one}, Unit::inch);
  ASSERT_TRUE(read.ok());
  LaidParallel wanted = one;
  wanted.gap = readLength("1/4").value();
  EXPECT_EQ((*read)->at(0), wanted);
}

TEST(HeldText, IsReadBackAsItIsWritten) {
  for (const char* text : {"bed", "fixed 1/8 x 1", "moving 3 mm x 25 mm gap 2.5 mm",
                           "fixed 1/8 x 1 gap 1/4 from 1/2 to 3; fixed 1/8 x 1"}) {
    const auto read = readParallels(QString::fromLatin1(text), std::nullopt, Unit::inch);
    ASSERT_TRUE(read.ok()) << text;
    EXPECT_EQ(parallelsText(*read), QString::fromLatin1(text));
  }
  for (const char* text : {"1/8", "1/8 x", "x 1", "1/8 x one", "1/8 x 1 gap", "1/8 x 1 from 2"}) {
    EXPECT_FALSE(readParallels(QString::fromLatin1(text), std::nullopt, Unit::inch).ok()) << text;
  }
}

}  // namespace
}  // namespace inchwright::app
