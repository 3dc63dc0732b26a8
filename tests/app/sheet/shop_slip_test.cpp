#include "app/sheet/shop_slip.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <memory>

#include "core/document/document.h"
#include "tests/support/by_hand.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class ShopSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    slip = std::make_unique<ShopSlip>(desk);
    QObject::connect(slip.get(), &ShopSlip::shopKept, slip.get(),
                     [this](const Shop& shop) { kept.push_back(shop); });
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
  }

  template <class Widget>
  Widget* named(const QString& name) {
    return calledIn<Widget>(*slip, name);
  }
  void tick(const QString& name) {
    auto* box = named<QCheckBox>(name);
    ASSERT_NE(box, nullptr);
    QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
  }
  void type(const QString& name, const QString& text) {
    auto* field = named<QLineEdit>(name);
    ASSERT_NE(field, nullptr);
    typeOver(*field, text);
    QTest::keyClick(field, Qt::Key_Return);
  }
  QString told() { return slip->findChild<QLabel*>(QStringLiteral("told"))->text(); }

  std::unique_ptr<ShopSlip> slip;
  std::vector<Shop> kept;
};

TEST_F(ShopSlipTest, NothingSaidIsAllUsualOnesAndChangesNothing) {
  EXPECT_EQ(named<QComboBox>(QStringLiteral("Drills: what is owned"))->currentIndex(), 0);
  slip.reset();
  EXPECT_TRUE(kept.empty());
  EXPECT_TRUE(desk.ownShop().saysNothing());
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(ShopSlipTest, OneTickSaysAWholeSetAndIsKeptForAllJobs) {
  tick(QStringLiteral("Drills: number 1 to 60"));
  ASSERT_EQ(kept.size(), 1u);
  ASSERT_TRUE(kept[0].drills);
  ASSERT_EQ(kept[0].drills->size(), 1u);
  EXPECT_EQ(kept[0].drills->front().set.drills.size(), 60u);
  EXPECT_EQ(desk.ownShop(), kept[0]);
  EXPECT_TRUE(desk.job().shop.saysNothing());
  EXPECT_FALSE(desk.unsaved());
  tick(QStringLiteral("Drills: letters"));
  EXPECT_EQ(desk.ownShop().drills->size(), 2u);
  tick(QStringLiteral("Drills: number 1 to 60"));
  ASSERT_EQ(desk.ownShop().drills->size(), 1u);
  EXPECT_EQ(desk.ownShop().drills->front().set.text, "letter");
}

TEST_F(ShopSlipTest, TypedToolsStandBesideTicked) {
  tick(QStringLiteral("Reamers: 1/8 to 1/2, machine"));
  const QString before = named<QLineEdit>(QStringLiteral("Reamers"))->text();
  type(QStringLiteral("Reamers"), before + QStringLiteral(", 3/8 hand, 6 mm"));
  ASSERT_TRUE(desk.ownShop().reamers);
  ASSERT_EQ(desk.ownShop().reamers->size(), 9u);
  EXPECT_EQ((*desk.ownShop().reamers)[7].by, ReamedBy::hand);
  EXPECT_EQ((*desk.ownShop().reamers)[8].size.value, Length::ticks(600'000'000));
  EXPECT_TRUE(named<QCheckBox>(QStringLiteral("Reamers: 1/8 to 1/2, machine"))->isChecked());
}

TEST_F(ShopSlipTest, WhatCannotBeReadChangesNothingAndSaysWhy) {
  tick(QStringLiteral("Drills: letters"));
  const Shop before = desk.ownShop();
  const std::pair<const char*, const char*> hostile[] = {
      {"Drills", "letter, 7"},          // #7 or 7 mm, never 7 in
      {"Drills", "number 1 to 90"},     // no such drill
      {"Drills", "letter, letter"},     // twice
      {"Reamers", "6"},                 // meant as 6 mm
      {"Reamers", "-1/4"},              // no size
      {"Reamers", "1/4 of a pound"},    // no size
      {"Taps", "1/4-19 XYZ"},           // no thread
      {"Parallels", "1/8"},             // no height
      {"Parallels", "1/8 x 0"},         // lies flat
      {"Gauge pins", "0.250 to 0.061"}  // the wrong way round
  };
  for (const auto& [field, text] : hostile) {
    type(QString::fromLatin1(field), QString::fromLatin1(text));
    EXPECT_EQ(desk.ownShop(), before) << field << ": " << text;
    EXPECT_TRUE(told().startsWith(QStringLiteral("Not taken: "))) << text << qPrintable(told());
    EXPECT_EQ(named<QLineEdit>(QString::fromLatin1(field))->text(), QString::fromLatin1(text));
    // Put right, so that the next field is looked at by itself.
    type(QString::fromLatin1(field),
         field == std::string("Drills") ? QStringLiteral("letter") : QString());
    EXPECT_EQ(desk.ownShop(), before) << field << ": " << text;
  }
}

TEST_F(ShopSlipTest, NoneOwnedIsNotTheSameAsNothingSaid) {
  auto* said = named<QComboBox>(QStringLiteral("Reamers: what is owned"));
  said->setFocus();
  QTest::keyClick(said, Qt::Key_End);
  EXPECT_EQ(said->currentIndex(), 2);
  ASSERT_TRUE(desk.ownShop().reamers);
  EXPECT_TRUE(desk.ownShop().reamers->empty());
  QTest::keyClick(said, Qt::Key_Home);
  EXPECT_FALSE(desk.ownShop().reamers);
}

TEST_F(ShopSlipTest, CarriedItStandsInTheDocumentAndTheUsersOwnIsLeftAlone) {
  tick(QStringLiteral("Drills: letters"));
  tick(QStringLiteral("Carry the shop in this job"));
  ASSERT_TRUE(desk.job().shop.drills);
  EXPECT_TRUE(desk.unsaved());
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok()) << again.error().text;
  EXPECT_EQ(again->shop, desk.job().shop);
  const Shop own = desk.ownShop();
  tick(QStringLiteral("Drills: number 1 to 60"));
  EXPECT_EQ(desk.job().shop.drills->size(), 2u);
  EXPECT_EQ(desk.ownShop(), own);
  EXPECT_EQ(kept.size(), 1u);
}

TEST_F(ShopSlipTest, EveryStepIsUndoneAndNothingElse) {
  tick(QStringLiteral("Drills: letters"));
  tick(QStringLiteral("Carry the shop in this job"));
  tick(QStringLiteral("Drills: number 1 to 60"));
  QTest::keyClick(slip.get(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(desk.job().shop.drills->size(), 1u);
  QTest::keyClick(slip.get(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_TRUE(desk.job().shop.saysNothing());
  EXPECT_TRUE(desk.ownShop().drills);
  QTest::keyClick(slip.get(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_TRUE(desk.ownShop().saysNothing());
  EXPECT_TRUE(kept.back().saysNothing());
  // What was done on the desk before is not undone from here.
  Job job = desk.job();
  job.title = "Another";
  desk.apply(job, QStringLiteral("another title"));
  QTest::keyClick(slip.get(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(desk.job().title, "Another");
}

TEST_F(ShopSlipTest, WhatIsKnownOfAToolIsKeptAndItsBoringHeadSaid) {
  Job job = desk.job();
  OwnedCutter cutter;
  cutter.size = *readLength("3/8");
  cutter.flutes = 4;
  job.shop.cutters = std::vector{cutter};
  desk.take(job, {});
  type(QStringLiteral("End mills"), QStringLiteral("3/8, 1/2"));
  ASSERT_EQ(desk.job().shop.cutters->size(), 2u);
  EXPECT_EQ(desk.job().shop.cutters->front().flutes, 4);
  type(QStringLiteral("Least hole to bore"), QStringLiteral("3/8"));
  type(QStringLiteral("One division of the boring head"), QStringLiteral(".001"));
  ASSERT_TRUE(desk.job().shop.boring);
  EXPECT_EQ(desk.job().shop.boring->front().least->text, "3/8");
  EXPECT_EQ(desk.job().shop.boring->front().division->text, ".001");
  EXPECT_FALSE(desk.job().shop.drills);
}

}  // namespace
}  // namespace inchwright::app
