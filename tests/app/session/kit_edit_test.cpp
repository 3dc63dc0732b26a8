// Mates, gaps and other hands typed into the strip.
#include "app/session/kit_edit.h"

#include <gtest/gtest.h>

#include "app/session/work.h"
#include "tests/support/kit_on_desk.h"

namespace inchwright::app {
namespace {

class KitTyped : public KitOnDesk {
 protected:
  void SetUp() override {
    KitOnDesk::SetUp();
    QObject::connect(&desk, &Desk::refused, [this](const QString& why) { refused << why; });
  }
  QString echo(const char* line) const { return work.echo(QString::fromUtf8(line)).text; }

  Work work{desk};
  QStringList refused;
};

TEST_F(KitTyped, TheStripSaysWhatComesOfItBeforeItIsTaken) {
  const char* line = "mate again: hole A of Click plate, shaft P of Bush, fit LN2";
  // The hole was found .3145 to .3151 where .3125 to .3131 is drawn.
  EXPECT_EQ(echo(line).toStdString(),
            "Mate again: clearance 0.0010 to 0.0020 (as drawn -0.0010 to 0.0000), wanted -0.0010 "
            "to 0.0000; too loose; its shaft is still to be made to suit");
  EXPECT_TRUE(work.echo(QString::fromUtf8(line)).doubtful);
  EXPECT_EQ(desk.job().mates.size(), 3u);
  EXPECT_TRUE(work.enter(QString::fromUtf8(line)));
  EXPECT_EQ(desk.job().mates.size(), 4u);
  EXPECT_EQ(desk.undoTitle(), QStringLiteral("The mate again"));
  desk.undo();
  EXPECT_EQ(desk.job().mates.size(), 3u);
}

TEST_F(KitTyped, WhatIsWrongIsRefusedWithItsPlace) {
  const Echo echo =
      work.echo(QStringLiteral("mate m: hole P of Bush, shaft A of Click plate, fit LN2"));
  EXPECT_TRUE(echo.refused);
  EXPECT_EQ(echo.text, QStringLiteral("`P` of `Bush` is no hole: is it the shaft?"));
  EXPECT_FALSE(work.enter(QStringLiteral("mate m: hole A of Clock plate")));
  ASSERT_EQ(refused.size(), 1);
  EXPECT_EQ(refused.front(), QStringLiteral("the job has no part `Clock plate`"));
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(KitTyped, AGapThatCannotKeepToItsLimitsStandsAmongTheDoubts) {
  work.trace(FeatureKind::hole);  // whatever is being done
  EXPECT_TRUE(
      work.enter(QStringLiteral("gap play: x A to B of Click plate; least 1/2; greatest 5/8")));
  EXPECT_EQ(work.doing(), Doing::tracing);
  for (std::size_t i = 0; i < desk.job().parts.size(); ++i) {
    if (desk.job().parts[i].name == "Click plate") desk.choosePart(static_cast<int>(i));
  }
  const auto& doubts = desk.kitDoubts();
  EXPECT_TRUE(std::any_of(doubts.begin(), doubts.end(), [](const std::string& one) {
    return one.find("Gap play: at worst") == 0 && one.find("may not keep to it") != one.npos;
  }));
}

TEST_F(KitTyped, AGapThatNothingJoinsIsToldAmongTheDoubtsOfItsPart) {
  EXPECT_TRUE(work.enter(QStringLiteral("gap play: x A to B of Click plate; least 1/2")));
  for (std::size_t i = 0; i < desk.job().parts.size(); ++i) {
    if (desk.job().parts[i].name == "Click plate") desk.choosePart(static_cast<int>(i));
  }
  Part bare = desk.part();
  bare.readings.clear();
  bare.understood.clear();
  ASSERT_TRUE(desk.applyPart(bare, QStringLiteral("forget the readings")));
  const auto& doubts = desk.kitDoubts();
  EXPECT_TRUE(std::any_of(doubts.begin(), doubts.end(),
                          [](const std::string& one) { return one.find("Gap play: ") == 0; }));
}

TEST_F(KitTyped, APartThatBeginsBeforeTheOneOnTheDeskDoesNotTakeItsPlace) {
  desk.choosePart(static_cast<int>(desk.job().parts.size()) - 1);
  const std::string onDesk = desk.part().name;
  ASSERT_NE(onDesk, "Front click");
  EXPECT_TRUE(work.enter(QStringLiteral("other hand of Front click across x called Left click")));
  EXPECT_EQ(desk.part().name, onDesk);
}

TEST_F(KitTyped, AnOtherHandBeginsBehindItsPartAndTheOneOnTheDeskStays) {
  const std::string onDesk = desk.part().name;
  EXPECT_TRUE(work.enter(QStringLiteral("other hand of Front click across x called Left click")));
  EXPECT_EQ(desk.part().name, onDesk);
  const Part* left = desk.job().part("Left click");
  ASSERT_NE(left, nullptr);
  EXPECT_EQ(left->opposite->part, "Front click");
  desk.undo();
  EXPECT_EQ(desk.job().part("Left click"), nullptr);
}

TEST_F(KitTyped, WordsOfOnesOwnAreNoLineAboutTheKit) {
  const std::vector<Doubt>& doubts = desk.solution().doubts;
  ASSERT_FALSE(doubts.empty());
  work.accept({AcceptedDoubt(doubts[0].key.text())}, QStringLiteral("the first"));
  ASSERT_TRUE(work.enter(QStringLiteral("mate it: looked at with the other plate")));
  EXPECT_EQ(desk.job().mates.size(), 3u);
  EXPECT_EQ(desk.part().accepted.back().reason, "mate it: looked at with the other plate");
}

TEST_F(KitTyped, ARenamedHoleIsStillTheOneThatTheMateMeans) {
  for (std::size_t i = 0; i < desk.job().parts.size(); ++i) {
    if (desk.job().parts[i].name == "Click plate") desk.choosePart(static_cast<int>(i));
  }
  EXPECT_TRUE(work.enter(QStringLiteral("rename A W")));
  EXPECT_EQ(std::get<PartPlace>(desk.job().mates[0].hole).place, "W");
  // And it can't be taken away from under it, for a new one to be called so.
  EXPECT_FALSE(work.enter(QStringLiteral("delete W")));
  EXPECT_TRUE(refused.back().startsWith(QStringLiteral("gap ")) ||
              refused.back().startsWith(QStringLiteral("mate ")))
      << qPrintable(refused.back());
  EXPECT_NE(desk.part().feature("W"), nullptr);
}

}  // namespace
}  // namespace inchwright::app
