#include "app/machine/made_slip.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <memory>

#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/support/by_hand.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class MadeSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    Job job =
        jobOfPlate("hole A 1/4 ream\nhole B 1/4 ream\nL A 3/8\nF A 1/2\nA B 1\nin line y A B");
    for (Feature& feature : job.parts[0].features) {
      if (feature.id == "A") feature.drilled()->limits = "0.2500/0.2506";
    }
    Mate mate;
    mate.name = "arbor";
    mate.hole = PartPlace{"Plate", "A", {}};
    mate.shaft = *readLength("0.2490/0.2493");
    mate.least = *readLength("0.0002");
    mate.greatest = *readLength("0.0013");
    job.mates.push_back(mate);
    put(job);
    ASSERT_NE(desk.table(), nullptr);
    slip = std::make_unique<MadeSlip>(desk, "A");
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
  }

  template <class Widget>
  Widget* named(const QString& name) {
    return calledIn<Widget>(*slip, name);
  }
  void type(const QString& name, const QString& text) {
    auto* field = named<QLineEdit>(name);
    ASSERT_NE(field, nullptr);
    typeOver(*field, text);
    QTest::keyClick(field, Qt::Key_Return);
  }
  void press(const QString& text) { pressIn(*slip, text); }
  QString label(const char* name) { return slip->findChild<QLabel*>(QLatin1String(name))->text(); }
  MadePlace made(const char* piece = "") {
    return madeOfPiece(desk.part(), "A", desk.setup().name, piece);
  }

  std::unique_ptr<MadeSlip> slip;
};

TEST_F(MadeSlipTest, ASizeStandsBesideTheWantedOneWithItsVerdict) {
  EXPECT_TRUE(label("found").contains(QStringLiteral("Nothing was measured")));
  type(QStringLiteral("Size as found"), QStringLiteral(".2518"));
  type(QStringLiteral("How far that may be wrong, either way"), QStringLiteral(".0003"));
  type(QStringLiteral("Measured with"), QStringLiteral("small hole gauge"));
  ASSERT_TRUE(made().size);
  EXPECT_EQ(made().size->text, ".2518");
  EXPECT_EQ(made().with->name, "small hole gauge");
  const QString found = label("found");
  EXPECT_TRUE(found.contains(QStringLiteral("0.2515 to 0.2521"))) << qPrintable(found);
  EXPECT_TRUE(found.contains(QStringLiteral("wanted 0.2500 to 0.2506"))) << qPrintable(found);
  EXPECT_TRUE(found.contains(QStringLiteral("over size"))) << qPrintable(found);
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok()) << again.error().text;
  EXPECT_EQ(again->parts[0].made, desk.part().made);
  desk.undo();
  desk.undo();
  desk.undo();
  EXPECT_TRUE(desk.part().made.empty());
  EXPECT_EQ(named<QLineEdit>(QStringLiteral("Size as found"))->text(), QString());
}

TEST_F(MadeSlipTest, PinsGiveOneEndEachByTheirClassAndSign) {
  type(QStringLiteral("Pin that goes in"), QStringLiteral(".2500"));
  auto* pinClass = named<QComboBox>(QStringLiteral("Pin that goes in: its class"));
  pinClass->setFocus();
  QTest::keyClick(pinClass, Qt::Key_End);
  auto* sign = named<QComboBox>(QStringLiteral("Pin that goes in: its sign"));
  sign->setFocus();
  QTest::keyClick(sign, Qt::Key_End);
  ASSERT_TRUE(made().go);
  EXPECT_EQ(made().go->pinClass, "ZZ");
  EXPECT_EQ(made().go->sign, PinSign::minus);
  EXPECT_TRUE(label("found").contains(QStringLiteral("at least 0.2498")))
      << qPrintable(label("found"));
  // A smaller pin that does not go in is a slip of the keys.
  type(QStringLiteral("Pin that does not go in"), QStringLiteral(".2490"));
  EXPECT_FALSE(made().noGo);
  EXPECT_TRUE(label("said").startsWith(QStringLiteral("Not taken: "))) << qPrintable(label("said"));
  type(QStringLiteral("Pin that does not go in"), QStringLiteral(".2510"));
  EXPECT_TRUE(made().noGo);
}

TEST_F(MadeSlipTest, WhatIsNoSizeChangesNothing) {
  for (const char* text : {"0", "-.25", "a quarter", ".25 +- .001", "1/0"}) {
    type(QStringLiteral("Size as found"), QLatin1String(text));
    EXPECT_FALSE(made().size) << text;
    EXPECT_TRUE(label("said").startsWith(QStringLiteral("Not taken: "))) << text;
    EXPECT_EQ(named<QLineEdit>(QStringLiteral("Size as found"))->text(), QLatin1String(text));
  }
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(MadeSlipTest, EachPieceKeepsItsOwn) {
  type(QStringLiteral("Size as found"), QStringLiteral(".2503"));
  type(QStringLiteral("Which piece"), QStringLiteral("2"));
  EXPECT_EQ(named<QLineEdit>(QStringLiteral("Size as found"))->text(), QString());
  type(QStringLiteral("Size as found"), QStringLiteral(".2518"));
  EXPECT_EQ(made().size->text, ".2503");
  EXPECT_EQ(made("2").size->text, ".2518");
  EXPECT_TRUE(label("found").contains(QStringLiteral("over size")));
  type(QStringLiteral("Which piece"), QString());
  EXPECT_FALSE(label("found").contains(QStringLiteral("over size"))) << qPrintable(label("found"));
}

TEST_F(MadeSlipTest, AHoleThatWentOverHasItsWaysOutAndTheChosenOneIsWrittenDownWithItsReason) {
  type(QStringLiteral("Size as found"), QStringLiteral(".2518"));
  type(QStringLiteral("How far that may be wrong, either way"), QStringLiteral(".0003"));
  auto* list = named<QListWidget>(QStringLiteral("Ways out"));
  // Not off its place: no eccentric bush. A shaft, a bush, a plug, the next size, leave it.
  ASSERT_EQ(list->count(), 5);
  // Found .2515 to .2521, clearance .0002 to .0013: the shaft .2508 to .2513.
  EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("0.2508 to 0.2513")))
      << qPrintable(list->item(0)->text());
  EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("arbor")));
  list->setFocus();
  QTest::keyClick(list, Qt::Key_Home);
  press(QStringLiteral("Write it down"));
  EXPECT_TRUE(desk.part().mended.empty());
  EXPECT_TRUE(label("said").contains(QStringLiteral("why")));
  type(QStringLiteral("Reason for the way out"), QStringLiteral("the arbor is not turned yet"));
  press(QStringLiteral("Write it down"));
  ASSERT_EQ(desk.part().mended.size(), 1u);
  EXPECT_EQ(desk.part().mended[0].way, WayOut::shaft);
  EXPECT_EQ(desk.part().mended[0].reason, "the arbor is not turned yet");
  // .2508 in, exactly; the readout's step shows less of it.
  EXPECT_NE(desk.part().mended[0].figures.find("637032000"), std::string::npos)
      << desk.part().mended[0].figures;
  EXPECT_TRUE(label("said").contains(QStringLiteral("Written down: a shaft to suit")));
  // Another choice takes its place.
  list->setFocus();
  QTest::keyClick(list, Qt::Key_Down);
  press(QStringLiteral("Write it down"));
  ASSERT_EQ(desk.part().mended.size(), 1u);
  EXPECT_EQ(desk.part().mended[0].way, WayOut::bush);
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok()) << again.error().text;
  EXPECT_EQ(again->parts[0].mended, desk.part().mended);
  desk.undo();
  EXPECT_EQ(desk.part().mended[0].way, WayOut::shaft);
}

TEST_F(MadeSlipTest, AJobCanBeSavedWhicheverWayOutIsChosen) {
  type(QStringLiteral("Size as found"), QStringLiteral(".2518"));
  type(QStringLiteral("Reason for the way out"), QStringLiteral("it went over"));
  auto* list = named<QListWidget>(QStringLiteral("Ways out"));
  ASSERT_GT(list->count(), 3);
  for (int row = 0; row < list->count(); ++row) {
    list->setCurrentRow(row);
    type(QStringLiteral("Reason for the way out"), QStringLiteral("it went over"));
    press(QStringLiteral("Write it down"));
    ASSERT_EQ(desk.part().mended.size(), 1u);
    const auto saved = savableDocument(desk.job());
    EXPECT_TRUE(saved.ok()) << nameOf(desk.part().mended[0].way) << ": " << saved.error().text;
  }
}

}  // namespace
}  // namespace inchwright::app
