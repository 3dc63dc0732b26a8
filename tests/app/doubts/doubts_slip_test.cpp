#include "app/doubts/doubts_slip.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTest>

#include "app/base/look.h"
#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

/// A plate whose chain makes 2 1/16 where the print says 2.
class DoubtsSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge R right", "hole A 1/4", "hole B 1/4", "L A 3/8", "A B 1 3/16",
                "B R 1/2", "L R 2"});
    slip = std::make_unique<DoubtsSlip>(work);
    slip->resize(420, 240);
    slip->show();
    slip->activateWindow();
    slip->list()->setFocus();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
  }

  int rowWith(const QString& words) const {
    for (int row = 0; row < slip->list()->count(); ++row) {
      if (slip->list()->item(row)->text().contains(words)) return row;
    }
    return -1;
  }

  std::unique_ptr<DoubtsSlip> slip;
};

TEST_F(DoubtsSlipTest, AClashShowsItsRunningSumsAndSuspects) {
  ASSERT_EQ(desk.solution().clashes.size(), 1u);
  EXPECT_GE(rowWith("2 1/16"), 0);
  EXPECT_GE(rowWith("▸"), 0);
  EXPECT_GE(rowWith("≠"), 0);
  for (int row = 0; row < slip->list()->count(); ++row) {
    EXPECT_FALSE(slip->list()->item(row)->text().trimmed().isEmpty());
  }
}

TEST_F(DoubtsSlipTest, OfNothingItSaysWhatComesFirst) {
  Job bare;
  bare.parts.emplace_back();
  bare.parts.back().name = "Plate";
  for (const Job& job : {Job(), bare}) {
    desk.take(job, {});
    ASSERT_EQ(slip->list()->count(), 1);
    EXPECT_GE(rowWith("Nothing is on the print yet"), 0);
    EXPECT_GE(rowWith("Ctrl+L"), 0);
    for (const auto* label : slip->findChildren<QLabel*>()) {
      EXPECT_FALSE(label->text().contains(QStringLiteral("none open")));
    }
    for (const auto* button : slip->findChildren<QPushButton*>()) EXPECT_FALSE(button->isEnabled());
  }
  desk.take(bare, {});
  ASSERT_TRUE(work.enter(QStringLiteral("edge L left")));
  EXPECT_EQ(rowWith("Nothing is on the print yet"), -1);
}

TEST_F(DoubtsSlipTest, ChoosingALineShowsThePlace) {
  std::vector<Id> shown;
  QObject::connect(&work, &Work::show,
                   [&](const std::vector<Id>& places, const std::vector<Id>& readings) {
                     shown = places;
                     shown.insert(shown.end(), readings.begin(), readings.end());
                   });
  slip->list()->setCurrentRow(-1);
  slip->list()->setCurrentRow(rowWith("≠"));
  EXPECT_FALSE(shown.empty());
  EXPECT_FALSE(desk.selection().empty());
}

TEST_F(DoubtsSlipTest, EnterOnASuspectReadsItSoInOneStep) {
  const int row = rowWith("▸");
  ASSERT_GE(row, 0);
  slip->list()->setCurrentRow(row);
  const std::string before = writeDocument(desk.job());
  QTest::keyClick(slip->list(), Qt::Key_Return);
  EXPECT_TRUE(desk.solution().clashes.empty());
  EXPECT_EQ(rowWith("≠"), -1);
  desk.undo();
  EXPECT_EQ(writeDocument(desk.job()), before);
}

TEST_F(DoubtsSlipTest, ABlamedReadingIsReadSoWhereverItIsChosen) {
  const Suspect first = desk.solution().suspects[0][0];
  slip->list()->setCurrentRow(rowWith("≠"));
  desk.select({{}, {first.reading}});
  auto* take = slip->findChild<QPushButton*>();
  ASSERT_TRUE(take->isEnabled());
  EXPECT_TRUE(take->toolTip().contains(QString::fromStdString(first.wouldBeText)));
  int settled = 0;
  QObject::connect(slip.get(), &DoubtsSlip::settled, [&] { ++settled; });
  take->click();
  EXPECT_EQ(desk.part().reading(first.reading)->figure.text, first.wouldBeText);
  EXPECT_EQ(settled, 1);
  // One that nobody blames can't be.
  desk.select({{}, {first.reading}});
  EXPECT_FALSE(take->isEnabled());
}

TEST_F(DoubtsSlipTest, AKeyHeldDownReadsNothingSo) {
  slip->list()->setCurrentRow(rowWith("▸"));
  QKeyEvent held(QEvent::KeyPress, Qt::Key_Return, {}, QStringLiteral("\r"), true);
  QApplication::sendEvent(slip->list(), &held);
  EXPECT_EQ(desk.solution().clashes.size(), 1u);
}

TEST_F(DoubtsSlipTest, EnterElsewhereThanOnASuspectReadsNothingSo) {
  slip->list()->setCurrentRow(rowWith("≠"));
  desk.select({{}, {desk.solution().suspects[0][0].reading}});
  QTest::keyClick(slip->list(), Qt::Key_Return);
  EXPECT_EQ(desk.solution().clashes.size(), 1u);
}

TEST_F(DoubtsSlipTest, RedIsForWhatContradictsAlone) {
  int red = 0;
  for (int row = 0; row < slip->list()->count(); ++row) {
    const auto* item = slip->list()->item(row);
    if (item->foreground().color() != Look::now().red) continue;
    ++red;
    EXPECT_TRUE(item->text().startsWith(QStringLiteral("≠"))) << qPrintable(item->text());
  }
  EXPECT_EQ(red, 1);
  EXPECT_GE(rowWith("?"), 0) << "something is not said yet";
}

TEST_F(DoubtsSlipTest, AcceptingAsksForAReasonThatIsKept) {
  slip->list()->setCurrentRow(rowWith("≠"));
  const auto* heading = slip->findChild<QLabel*>();
  const QString before = heading->text();
  slip->toggleAccepted();
  EXPECT_TRUE(desk.part().accepted.empty()) << "not before it is said why";
  EXPECT_EQ(work.doing(), Doing::accepting);
  EXPECT_FALSE(work.enter({})) << "by no key meant for something else";
  EXPECT_TRUE(desk.part().accepted.empty());
  EXPECT_TRUE(work.enter(QStringLiteral("the maker's own plate is so")));
  EXPECT_EQ(work.doing(), Doing::looking);
  ASSERT_EQ(desk.part().accepted.size(), 1u);
  EXPECT_EQ(desk.part().accepted[0].reason, "the maker's own plate is so");
  EXPECT_EQ(desk.undoTitle(), QStringLiteral("Accept a doubt: the maker's own plate is so"));
  EXPECT_NE(heading->text(), before);
  ASSERT_GE(rowWith("✓"), 0);
  EXPECT_TRUE(slip->list()->item(rowWith("✓"))->text().contains("own plate"));
  EXPECT_EQ(*readDocument(writeDocument(desk.job())), desk.job());
  slip->list()->setCurrentRow(rowWith("✓"));
  slip->toggleAccepted();
  EXPECT_TRUE(desk.part().accepted.empty());
  EXPECT_EQ(desk.undoTitle(), QStringLiteral("Take back that a doubt was accepted"));
  EXPECT_EQ(heading->text(), before);
}

TEST_F(DoubtsSlipTest, AReasonAcceptsNothingThatIsNotThereAnyMore) {
  const auto lies = [&] { return work.enter(QStringLiteral("the maker's own plate is so")); };
  slip->list()->setCurrentRow(rowWith("≠"));
  slip->toggleAccepted();
  desk.undo();
  EXPECT_FALSE(lies()) << "the overall figure is gone";
  EXPECT_TRUE(desk.part().accepted.empty());
  desk.redo();
  Job two = desk.job();
  two.parts.push_back(two.parts[0]);
  two.parts[1].name = "Other plate";
  desk.apply(two, "part");
  desk.choosePart(1);
  EXPECT_FALSE(lies()) << "the like doubt of another part was not asked about";
  EXPECT_EQ(desk.job(), two);
  desk.choosePart(0);
  EXPECT_TRUE(lies());
  EXPECT_EQ(desk.part().accepted.size(), 1u);
}

TEST_F(DoubtsSlipTest, WhatIsTakenByTheButtonIsOfTheReadingChosenLast) {
  const std::vector<Suspect>& suspects = desk.solution().suspects[0];
  ASSERT_GE(suspects.size(), 2u);
  slip->list()->setCurrentRow(rowWith("▸"));
  const Suspect other = suspects[1];
  ASSERT_NE(other.reading, suspects[0].reading);
  desk.select({{}, {other.reading}});
  slip->findChild<QPushButton*>()->click();
  EXPECT_EQ(desk.part().reading(other.reading)->figure.text, other.wouldBeText);
  desk.undo();
  // One that nobody blames is no reason to change another.
  enterLines({"hole C 1/8", "B C 1/8"});
  slip->list()->setCurrentRow(rowWith("▸"));
  desk.select({{}, {desk.part().readings.back().id}});
  EXPECT_FALSE(slip->findChild<QPushButton*>()->isEnabled());
}

TEST_F(DoubtsSlipTest, AfterASuspectIsReadSoNoOtherOneIsChosenByItself) {
  enterLines({"edge F front", "edge K back", "y F A 1/4", "y A B 1/4", "y B K 1/2", "y F K 2"});
  ASSERT_EQ(desk.solution().clashes.size(), 2u);
  slip->list()->setCurrentRow(rowWith("▸"));
  QTest::keyClick(slip->list(), Qt::Key_Return);
  ASSERT_EQ(desk.solution().clashes.size(), 1u);
  const std::string before = writeDocument(desk.job());
  QTest::keyClick(slip->list(), Qt::Key_Return);
  slip->findChild<QPushButton*>()->click();
  EXPECT_EQ(writeDocument(desk.job()), before);
}

TEST_F(DoubtsSlipTest, EscapeLeavesADoubtAsItIs) {
  slip->list()->setCurrentRow(rowWith("≠"));
  slip->toggleAccepted();
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_TRUE(desk.part().accepted.empty());
}

/// Holes whose centre distances and an angle do not meet, and one with two answers.
class SlantedDoubtsTest : public DoubtsSlipTest {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge F front", "hole A 1/4", "hole B 1/4", "L A 1/2", "y F A 3/4",
                "A B 3", "in line y A B stated", "hole C 1/8", "hole D 1/8"});
    slip = std::make_unique<DoubtsSlip>(work);
    slip->show();
  }
};

TEST_F(SlantedDoubtsTest, EachSuspectOfAContradictionIsReadSoInOneStep) {
  // 2 and 2 over 3 make 41.41°; 48.59 is measured from the other axis.
  enterLines({"centres A C 2", "centres B C 2", "angle A C 48.59"});
  desk.applyPart(moveTrace(desk.part(), "C", {"2", "2.07"}), "trace");
  const int row = rowWith(QStringLiteral("▸ 48.59"));
  ASSERT_GE(row, 0);
  EXPECT_TRUE(slip->list()->item(row)->text().contains(QStringLiteral("41.41°")))
      << qPrintable(slip->list()->item(row)->text());
  slip->list()->setCurrentRow(row);
  const Job before = desk.job();
  QTest::keyClick(slip->list(), Qt::Key_Return);
  EXPECT_EQ(desk.part().reading("r6")->figure.text, "41.41°");
  EXPECT_NEAR(desk.part().reading("r6")->angle->value.toDegrees(), 41.41, 1e-9);
  EXPECT_TRUE(desk.solution().beyond.clashes.empty());
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

TEST_F(SlantedDoubtsTest, OfTwoAnswersOneIsChosen) {
  enterLines({"centres A C 2", "centres B C 2"});
  const int row = rowWith(QStringLiteral("▸ 2: the print shows C at"));
  ASSERT_GE(row, 0);
  slip->list()->setCurrentRow(row);
  auto* take = slip->findChild<QPushButton*>();
  EXPECT_EQ(take->text().remove('&'), "It lies there");
  const auto wanted = desk.solution().beyond.answers[0].answers[1];
  QTest::mouseClick(take, Qt::LeftButton);
  ASSERT_EQ(desk.part().understood.size(), 2u);
  EXPECT_TRUE(desk.solution().beyond.answers.empty());
  EXPECT_NEAR(desk.solution().between("F", "C", Axis::y)->toDouble(),
              static_cast<double>(wanted[1].ticks()), 100);
}

}  // namespace
}  // namespace inchwright::app
