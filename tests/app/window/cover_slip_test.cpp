#include "app/window/cover_slip.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <memory>

#include "core/document/document.h"
#include "core/kit/kit_of_part.h"
#include "core/kit/solved_kit.h"
#include "core/lines/pasted.h"
#include "core/part/edit.h"
#include "core/say/done_words.h"
#include "core/say/edition_words.h"
#include "core/turned/cut_done.h"
#include "tests/support/by_hand.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

std::vector<Solution> solutionsOf(const Job& job) {
  SolvedKit kit(job);
  const auto all = kit.solutions();
  return {all.begin(), all.end()};
}

Part plate(const char* name) {
  Part part;
  part.name = name;
  const auto read = applyLines(part,
                               "edge L left\nedge R right\nedge F front\nedge K back\nL R 2\n"
                               "F K 1\nhole A 1/4\nL A 3/8\nF A 1/2",
                               {});
  EXPECT_TRUE(read.ok());
  return read.ok() ? *read : part;
}

class CoverSlipTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    job.parts = {plate("front plate"), plate("back plate"), Part{}};
    job.parts[2].name = "cock";
    Mate mate;
    mate.name = "pillar";
    mate.hole = PartPlace{"back plate", "A", {}};
    mate.shaft = *readLength("0.249");
    mate.least = *readLength("0.001");
    job.mates.push_back(mate);
    desk.take(job, {});
    slip = std::make_unique<CoverSlip>(desk);
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
    list = slip->findChild<QListWidget*>();
  }

  void press(const QString& text) { pressIn(*slip, text); }
  void typeName(const QString& text) {
    auto* field = slip->findChild<QLineEdit*>();
    typeOver(*field, text);
  }
  void chooseRow(int row) {
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                      list->visualItemRect(list->item(row)).center());
    EXPECT_EQ(list->currentRow(), row);
  }
  QString names() const {
    QStringList all;
    for (const Part& part : desk.job().parts) all << QString::fromStdString(part.name);
    return all.join(QStringLiteral(", "));
  }
  QString said() { return slip->findChild<QLabel*>(QStringLiteral("said"))->text(); }

  Desk desk;
  std::unique_ptr<CoverSlip> slip;
  QListWidget* list = nullptr;
};

TEST_F(CoverSlipTest, EveryPartHasItsDrawingAndState) {
  ASSERT_EQ(list->count(), 3);
  EXPECT_TRUE(list->item(2)->text().contains(QStringLiteral("not begun")));
  const QImage drawn = list->item(0)->icon().pixmap(list->iconSize()).toImage();
  const QImage blank = list->item(2)->icon().pixmap(list->iconSize()).toImage();
  EXPECT_NE(drawn, blank);
}

TEST_F(CoverSlipTest, AMovedPartStandsElsewhereInTheDocumentAndTheOneOnTheDeskStays) {
  desk.choosePart(1);
  chooseRow(2);
  press(QStringLiteral("Earlier"));
  EXPECT_EQ(names(), QStringLiteral("front plate, cock, back plate"));
  EXPECT_EQ(desk.part().name, "back plate");
  press(QStringLiteral("Earlier"));
  press(QStringLiteral("Earlier"));
  EXPECT_EQ(names(), QStringLiteral("cock, front plate, back plate"));
  desk.undo();
  desk.undo();
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
}

TEST_F(CoverSlipTest, ARowThatWasDroppedElsewhereTakesItsPartAlong) {
  // What a drop does, to the last part and to the first.
  ASSERT_TRUE(list->model()->moveRow({}, 2, {}, 0));
  QCoreApplication::processEvents();
  EXPECT_EQ(names(), QStringLiteral("cock, front plate, back plate"));
  ASSERT_TRUE(list->model()->moveRow({}, 0, {}, 3));
  QCoreApplication::processEvents();
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
  ASSERT_TRUE(list->model()->moveRow({}, 0, {}, 2));
  QCoreApplication::processEvents();
  EXPECT_EQ(names(), QStringLiteral("back plate, front plate, cock"));
  desk.undo();
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
}

TEST_F(CoverSlipTest, ASimilarPartBeginsAsACopyWithItsOwnName) {
  chooseRow(0);
  press(QStringLiteral("Begin a similar one"));
  EXPECT_EQ(names(), QStringLiteral("front plate, front plate 2, back plate, cock"));
  EXPECT_EQ(list->currentRow(), 1);
  typeName(QStringLiteral("dial plate"));
  press(QStringLiteral("Rename"));
  EXPECT_EQ(names(), QStringLiteral("front plate, dial plate, back plate, cock"));
  desk.undo();
  desk.undo();
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
}

TEST_F(CoverSlipTest, AnOtherHandFollowsItsPartUntilItStandsAlone) {
  chooseRow(0);
  typeName(QStringLiteral("left plate"));
  press(QStringLiteral("Begin its other hand"));
  EXPECT_EQ(names(), QStringLiteral("front plate, left plate, back plate, cock"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("It is the same part turned over")));
  EXPECT_TRUE(list->item(1)->text().contains(QStringLiteral("the other hand of front plate")));
  EXPECT_EQ(list->currentRow(), 1);
  press(QStringLiteral("Begin its other hand"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("Not done: "))) << qPrintable(said());
  press(QStringLiteral("Let it stand alone"));
  EXPECT_FALSE(desk.job().parts[1].opposite);
  EXPECT_TRUE(desk.job().parts[1].feature("A"));
  desk.undo();
  EXPECT_TRUE(desk.job().parts[1].opposite);
  desk.undo();
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
}

TEST_F(CoverSlipTest, ANameThatIsTakenOrEmptyIsRefusedAndMatesFollowANewOne) {
  chooseRow(1);
  typeName(QStringLiteral("cock"));
  press(QStringLiteral("Rename"));
  EXPECT_TRUE(said().startsWith(QStringLiteral("Not done: "))) << qPrintable(said());
  typeName(QString());
  press(QStringLiteral("Rename"));
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate, cock"));
  typeName(QStringLiteral("rear plate"));
  press(QStringLiteral("Rename"));
  EXPECT_EQ(std::get<PartPlace>(desk.job().mates[0].hole).part, "rear plate");
}

TEST_F(CoverSlipTest, WhatAMateNeedsIsNotTakenAway) {
  chooseRow(1);
  press(QStringLiteral("Take it away"));
  EXPECT_EQ(desk.job().parts.size(), 3u);
  EXPECT_TRUE(said().contains(QStringLiteral("mate pillar"))) << qPrintable(said());
  chooseRow(2);
  press(QStringLiteral("Take it away"));
  EXPECT_EQ(names(), QStringLiteral("front plate, back plate"));
}

TEST(PartStates, FollowWhatWasDoneAndWhatCameOut) {
  Job job;
  job.parts = {plate("plate")};
  const auto solution = solve(job.parts[0]);
  ASSERT_TRUE(solution.ok());
  job.parts[0].setups = {defaultSetup(job.parts[0], *solution)};
  job.parts[0].setups[0].name = "1";
  const PartState before = partStates(job, solutionsOf(job))[0];
  EXPECT_EQ(before, solution->isDraft() ? PartState::inDoubt : PartState::ready);
  MadePlace made;
  made.place = "A";
  made.setup = "1";
  made.size = *readLength("0.300");
  job.parts[0] = withMade(job.parts[0], made);
  EXPECT_EQ(partStates(job, solutionsOf(job))[0], PartState::wrong);
  Mended mended;
  mended.place = "A";
  mended.way = WayOut::leave;
  Job left = job;
  left.parts[0] = withMended(job.parts[0], mended);
  EXPECT_EQ(partStates(left, solutionsOf(left))[0], PartState::made)
      << "nothing is left to be done";
  mended.way = WayOut::nextSize;
  job.parts[0] = withMended(job.parts[0], mended);
  EXPECT_EQ(partStates(job, solutionsOf(job))[0], solution->isDraft() ? before : PartState::begun);
  const auto table = makeTable(job, job.parts[0], *solution, job.parts[0].setups[0]);
  ASSERT_TRUE(table.ok());
  ASSERT_EQ(table->rows.size(), 1u);
  const std::vector<const HoleStep*> steps = fittingsOf(*table->rows[0].plan);
  ASSERT_FALSE(steps.empty());
  for (const HoleStep* step : steps) made = withDone(made, *step, true);
  job.parts[0] = withMade(job.parts[0], made);
  EXPECT_EQ(partStates(job, solutionsOf(job))[0], PartState::made);
}

TEST(PartStates, TellWhetherTheSheetPrintedStillHolds) {
  auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright");
  ASSERT_TRUE(job.ok());
  const auto state = [&](std::size_t part) { return partStates(*job, solutionsOf(*job))[part]; };
  Part& click = job->parts[2];
  ASSERT_EQ(state(2), PartState::ready);
  const auto solution = solve(click);
  click = withPrinted(click, sheetNow(click, *makeTable(*job, click, *solution, click.setups[0])),
                      "2026-11-20");
  EXPECT_EQ(state(2), PartState::printed);
  click.readings[0].figure = *readLength("1");
  EXPECT_EQ(state(2), PartState::printed);  // no figure on the sheet is another
  click.readings[3].figure = *readLength("7/16");
  EXPECT_EQ(state(2), PartState::outdated);
}

TEST(PartStates, APartOfTheLatheIsMadeWhenItsCutsAreTicked) {
  auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright");
  ASSERT_TRUE(job.ok());
  Part& arbor = job->parts[5];
  const auto state = [&] { return partStates(*job, solutionsOf(*job))[5]; };
  ASSERT_EQ(state(), PartState::ready);
  const auto solution = solve(arbor);
  for (const inchwright::Setup& setup : std::vector<inchwright::Setup>(arbor.setups)) {
    const auto work = latheWorkToSuit(*job, arbor, *solution, setup);
    ASSERT_TRUE(work.ok());
    for (const Cut& cut : work->cuts) {
      EXPECT_NE(state(), PartState::made);
      arbor = withCutDone(arbor, setup.name, cut, true);
    }
  }
  EXPECT_EQ(state(), PartState::made);
}

}  // namespace
}  // namespace inchwright::app
