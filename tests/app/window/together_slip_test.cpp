#include "app/window/together_slip.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <memory>

#include "tests/support/by_hand.h"
#include "tests/support/kit_on_desk.h"

namespace inchwright::app {
namespace {

class Together : public KitOnDesk {
 protected:
  void SetUp() override {
    KitOnDesk::SetUp();
    slip = std::make_unique<TogetherSlip>(desk);
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
    list = slip->findChild<QListWidget*>();
    line = slip->findChild<QLineEdit*>(QStringLiteral("line"));
  }
  void press(const char* text) { pressIn(*slip, QString::fromLatin1(text)); }
  /// By the keyboard: what is typed chooses the entry that begins so.
  void choose(const char* box, const char* entry) {
    for (QComboBox* one : slip->findChildren<QComboBox*>()) {
      if (one->accessibleName() != QLatin1String(box)) continue;
      const int at = one->findText(QString::fromUtf8(entry), Qt::MatchStartsWith);
      ASSERT_GE(at, 0) << entry;
      one->setFocus();
      while (one->currentIndex() < at) QTest::keyClick(one, Qt::Key_Down);
      while (one->currentIndex() > at) QTest::keyClick(one, Qt::Key_Up);
      return;
    }
    FAIL() << "no " << box;
  }
  void type(const char* field, const char* text) {
    for (QLineEdit* one : slip->findChildren<QLineEdit*>()) {
      if (one->accessibleName() != QLatin1String(field)) continue;
      typeOver(*one, QString::fromUtf8(text));
      return;
    }
    FAIL() << "no " << field;
  }
  QString said() const { return slip->findChild<QLabel*>(QStringLiteral("said"))->text(); }
  const Mate* mate(const char* name) const {
    for (const Mate& one : desk.job().mates) {
      if (one.name == name) return &one;
    }
    return nullptr;
  }

  std::unique_ptr<TogetherSlip> slip;
  QListWidget* list = nullptr;
  QLineEdit* line = nullptr;
};

TEST_F(Together, EachMateAndGapStandsWithHowItGoes) {
  ASSERT_EQ(list->count(), 5);
  EXPECT_TRUE(
      list->item(0)->text().startsWith(QStringLiteral("Mate bush in the plate: clearance ")))
      << qPrintable(list->item(0)->text());
  EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("(as drawn ")));
  EXPECT_TRUE(list->item(3)->text().startsWith(QStringLiteral("Gap side shake of the click: ")));
}

TEST_F(Together, AMateIsClickedTogetherPutRightAndTakenAway) {
  choose("Part", "Bush");
  choose("Place", "B");
  press("It is the hole");
  EXPECT_EQ(line->text(), QStringLiteral("mate : hole B of Bush"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("Not yet: say which shaft"))) << qPrintable(said());
  choose("Part", "Click pivot");
  choose("Place", "P");
  press("It is the shaft");
  type("Least", ".001");
  type("Greatest", ".100");
  press("So much is wanted");
  EXPECT_EQ(line->text(),
            QStringLiteral("mate Click pivot in Bush: hole B of Bush, shaft P of Click "
                           "pivot, least .001, greatest .100"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("Mate Click pivot in Bush: clearance ")));
  EXPECT_EQ(desk.job().mates.size(), 3u) << "nothing before it is written down";
  press("Write it down");
  ASSERT_NE(mate("Click pivot in Bush"), nullptr);
  EXPECT_EQ(list->count(), 6);
  EXPECT_TRUE(line->text().isEmpty());

  list->setCurrentRow(3);
  press("Put it right");
  EXPECT_TRUE(line->text().startsWith(QStringLiteral("change mate Click pivot in Bush: ")));
  choose("Fit by its name", "RC4");
  press("So much is wanted");
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(mate("Click pivot in Bush")->fit, "RC4");
  EXPECT_FALSE(mate("Click pivot in Bush")->least);

  list->setCurrentRow(3);
  press("Take it away");
  EXPECT_EQ(mate("Click pivot in Bush"), nullptr);
  desk.undo();
  desk.undo();
  EXPECT_EQ(mate("Click pivot in Bush")->greatest->text, ".100");
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(*again, desk.job()) << "saved and opened again";
}

TEST_F(Together, AGapIsClickedTogetherMemberByMember) {
  choose("Part", "Click pivot");
  choose("Place", "M");
  choose("To the place", "S");
  press("Adds to a gap");
  choose("Part", "Front click");
  choose("Place", "U");
  choose("To the place", "T");
  choose("Along", "along Z");
  press("Takes from it");
  type("Least", ".003");
  press("So much is wanted");
  EXPECT_EQ(line->text(),
            QStringLiteral("gap gap 3: + x M to S of Click pivot; - z U to T of Front "
                           "click; least .003"));
  press("Write it down");
  ASSERT_EQ(desk.job().gaps.size(), 3u);
  EXPECT_EQ(desk.job().gaps[2].members, desk.job().gaps[0].members);
}

TEST_F(Together, NothingTypedIsLostByAClick) {
  typeOver(*line, QStringLiteral("gap mine: length 1/4 of Bush"));
  choose("Part", "Bush");
  choose("Place", "B");
  press("It is the hole");
  EXPECT_EQ(line->text(), QStringLiteral("gap mine: length 1/4 of Bush"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("The line says something else")));
  list->setCurrentRow(0);
  press("Put it right");
  EXPECT_EQ(line->text(), QStringLiteral("gap mine: length 1/4 of Bush"));
  typeOver(*line, QStringLiteral("mate m: hole 1//4"));
  press("It is the hole");
  EXPECT_EQ(line->text(), QStringLiteral("mate m: hole 1//4"));
  press("Write it down");
  EXPECT_EQ(line->text(), QStringLiteral("mate m: hole 1//4"));
  EXPECT_FALSE(desk.canUndo());
}

}  // namespace
}  // namespace inchwright::app
