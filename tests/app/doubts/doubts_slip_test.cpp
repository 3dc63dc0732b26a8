#include "app/doubts/doubts_slip.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTest>

#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

/// A plate whose chain makes 2 1/16 where the print says 2.
class DoubtsSlipTest : public ::testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    Part part;
    part.name = "Plate";
    job.parts.push_back(part);
    desk.take(job, {});
    for (const char* line : {"edge L left", "edge R right", "hole A 1/4", "hole B 1/4", "L A 3/8",
                             "A B 1 3/16", "B R 1/2", "L R 2"}) {
      EXPECT_TRUE(work.enter(QString::fromUtf8(line))) << line;
    }
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

  Desk desk;
  Work work{desk};
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
      EXPECT_FALSE(label->text().contains(QStringLiteral("nothing in doubt")));
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

TEST_F(DoubtsSlipTest, AcceptingADoubtAndTakingItBack) {
  slip->list()->setCurrentRow(rowWith("≠"));
  const auto* heading = slip->findChild<QLabel*>();
  const QString before = heading->text();
  slip->toggleAccepted();
  EXPECT_EQ(desk.part().accepted.size(), 1u);
  EXPECT_NE(heading->text(), before);
  EXPECT_GE(rowWith("✓"), 0);
  slip->list()->setCurrentRow(rowWith("✓"));
  slip->toggleAccepted();
  EXPECT_TRUE(desk.part().accepted.empty());
  EXPECT_EQ(heading->text(), before);
}

}  // namespace
}  // namespace inchwright::app
