// Putting right what stands: from the print, from the list under the right button, from lists.

#include <gtest/gtest.h>

#include <QListWidget>
#include <QMenu>
#include <QPushButton>

#include "app/canvas/print_view.h"
#include "app/sheet/sheet_view.h"
#include "app/sheet/sum_slip.h"
#include "app/window/print_menu.h"
#include "app/window/understood_slip.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class PutRightTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    ASSERT_TRUE(window->files().newJob());
    for (const char* text : {"edge L left", "edge R right", "edge F front", "edge K back",
                             "hole A 1/4", "hole B 1/4", "slot S x 1/4 by 1", "L A 3/8",
                             "A B 1 3/16", "B R 7/16", "F A 3/4", "A K 3/4", "in line y A B"}) {
      type(QString::fromUtf8(text));
    }
  }

  Desk& desk() { return window->desk(); }

  /// Chooses from the list under the right button; false when it has no such words.
  bool choose(const Pointed& under, const char* words) {
    QMenu menu;
    fillPrintMenu(menu, *window, under);
    for (QAction* action : menu.actions()) {
      if (!QString(action->text()).remove(QLatin1Char('&')).startsWith(QLatin1String(words))) {
        continue;
      }
      action->trigger();
      return true;
    }
    return false;
  }
  /// The same through lists within lists.
  bool choose(const Pointed& under, const std::vector<const char*>& way) {
    QMenu menu;
    fillPrintMenu(menu, *window, under);
    const QMenu* in = &menu;
    for (const char* words : way) {
      QAction* found = nullptr;
      for (QAction* action : in->actions()) {
        const QString text = QString(action->text()).remove(QLatin1Char('&'));
        if (text.startsWith(QLatin1String(words))) found = action;
      }
      if (found == nullptr) return false;
      if (found->menu() == nullptr) found->trigger();
      in = found->menu();
    }
    return true;
  }
  static Pointed at(const char* place) {
    Pointed pointed;
    pointed.place = place;
    return pointed;
  }
};

TEST_F(PutRightTest, F2TakesWhatIsChosenIntoTheLineToBeTypedOver) {
  desk().select({{}, {"r2"}});
  window->amendChosen();
  EXPECT_EQ(line()->text(), "1 3/16");
  EXPECT_EQ(line()->selectedText(), "1 3/16");
  EXPECT_TRUE(line()->hasFocus());
  desk().select({{"A"}, {}});
  window->amendChosen();
  EXPECT_EQ(line()->text(), "1/4");
}

TEST_F(PutRightTest, DeleteOnThePrintTakesAwayWhatIsChosen) {
  desk().select({{}, {"r3"}});
  window->print().setFocus();
  QTest::keyClick(&window->print(), Qt::Key_Delete);
  EXPECT_EQ(desk().part().reading("r3"), nullptr);
  desk().undo();
  EXPECT_NE(desk().part().reading("r3"), nullptr);
}

TEST_F(PutRightTest, ASlotIsTurned) {
  ASSERT_TRUE(choose(at("S1"), "Turn the slot"));
  EXPECT_EQ(axisOf(*desk().part().feature("S")), Axis::y);
  ASSERT_TRUE(choose(at("S"), "Turn the slot"));
  EXPECT_EQ(axisOf(*desk().part().feature("S")), Axis::x);
  EXPECT_FALSE(choose(at("A"), "Turn the slot"));
}

TEST_F(PutRightTest, AHoleSaysHowItFindsItsPlace) {
  Job job = desk().job();
  Part back = job.parts[0];
  back.name = "Back plate";
  job.parts.push_back(back);
  desk().apply(job, QStringLiteral("Another part"));
  const auto drilled = [&]() -> const Drilled& { return *desk().part().feature("A")->drilled(); };
  ASSERT_TRUE(choose(at("A"), {"Located by", "A hole of Back plate", "Spotted through B"}));
  EXPECT_EQ(drilled().locate, Locate::mate);
  ASSERT_TRUE(drilled().mate);
  EXPECT_EQ(drilled().mate->part, "Back plate");
  EXPECT_EQ(drilled().mate->place, "B");
  ASSERT_TRUE(choose(at("A"), {"Located by", "A hole of Back plate", "Drilled together with A"}));
  EXPECT_EQ(drilled().locate, Locate::pair);
  ASSERT_TRUE(choose(at("A"), {"Located by", "Assembly"}));
  EXPECT_EQ(drilled().locate, Locate::assembly);
  EXPECT_FALSE(drilled().mate);
  ASSERT_TRUE(choose(at("A"), {"Located by", "Coordinates"}));
  EXPECT_EQ(drilled().locate, Locate::coordinate);
  desk().undo();
  EXPECT_EQ(drilled().locate, Locate::assembly) << "each is a step";
  EXPECT_FALSE(choose(at("S"), {"Located by"}));
}

TEST_F(PutRightTest, ZeroIsSetAndAChainBegunFromTheList) {
  ASSERT_TRUE(choose(at("B"), "Zero here"));
  for (const Axis axis : {Axis::x, Axis::y}) {
    ASSERT_NE(desk().setup().zeroAlong(axis), nullptr);
    EXPECT_EQ(desk().setup().zeroAlong(axis)->at, "B");
  }
  ASSERT_TRUE(choose(at("A"), "Read a chain"));
  EXPECT_EQ(window->work().doing(), Doing::reading);
  EXPECT_EQ(window->work().chosen(), std::vector<Id>{"A"});
}

TEST_F(PutRightTest, WhatIsUnderstoodIsListedAndTakenAway) {
  UnderstoodSlip slip(desk());
  slip.show();
  const auto* list = slip.findChild<QListWidget*>();
  ASSERT_EQ(list->count(), 1);
  EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("A, B")));
  EXPECT_EQ(desk().selection().places, (std::vector<Id>{"A", "B"}));
  QTest::mouseClick(named<QPushButton>(&slip, QStringLiteral("Take it away")), Qt::LeftButton);
  EXPECT_TRUE(desk().part().understood.empty());
  EXPECT_EQ(list->count(), 0);
}

TEST_F(PutRightTest, AClickOnAFigureOpensItsSumWithItsPlacesLit) {
  auto* sheet = window->findChild<SheetView*>();
  const auto figure = sheet->whereIsFigure("B", MachineAxis::x);
  ASSERT_TRUE(figure);
  EXPECT_EQ(window->findChild<SumSlip*>(), nullptr);
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, {}, figure->toPoint());
  const auto* sum = window->findChild<SumSlip*>();
  ASSERT_TRUE(sum != nullptr && sum->isVisible());
  EXPECT_EQ(desk().selection().readings, (std::vector<Id>{"r1", "r2"}));
  auto* list = sum->findChild<QListWidget*>();
  list->setCurrentRow(1);
  EXPECT_EQ(desk().selection().readings, std::vector<Id>{"r2"});
  EXPECT_EQ(desk().selection().places, (std::vector<Id>{"A", "B"}));
  QTest::keyClick(list, Qt::Key_Escape);
  EXPECT_FALSE(sum->isVisible());
}

TEST_F(PutRightTest, ARowAndItsPlaceLightUpTogether) {
  auto* sheet = window->findChild<SheetView*>();
  Id onPrint, onSheet;
  QObject here;  // listens no longer than the two are there
  QObject::connect(sheet, &SheetView::hovered, &here, [&](const Id& id) { onPrint = id; });
  QObject::connect(&window->print(), &PrintView::hovered, &here,
                   [&](const Id& id) { onSheet = id; });
  QTest::mouseMove(sheet->viewport(), sheet->whereIsFigure("A", MachineAxis::y)->toPoint());
  EXPECT_EQ(onPrint, "A");
  const QImage before = sheet->viewport()->grab().toImage();
  QTest::mouseMove(&window->print(), window->print().whereIs("B")->toPoint());
  EXPECT_EQ(onSheet, "B");
  EXPECT_NE(sheet->viewport()->grab().toImage(), before);
}

}  // namespace
}  // namespace inchwright::app
