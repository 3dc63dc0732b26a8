// What follows from the document, and from what is looked at, is worked anew after each change;
// what an edit has to keep, the desk refuses to lose.

#include <QStringList>
#include <functional>

#include "core/part/edit.h"
#include "tests/support/kit_on_desk.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class DeskFollows : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
    Job job = jobOfPlate(
        "edge L left\nedge F front\nhole A 1/4\nL A 3/8\ny F A 1/2\nzero x L\nzero y F\n");
    job.parts.push_back(job.parts[0]);
    job.parts[1].name = "Bridge";
    put(job);
  }
  std::string x() const {
    const auto* now = desk.table();
    return now && !now->rows.empty() ? now->rows[0].x.text : "none";
  }
  void read(std::size_t part, const char* figure) {
    Job job = desk.job();
    job.parts[part].readings[0].figure = *readLength(figure);
    desk.apply(job, "Read");
  }

  QStringList refused;
};

TEST_F(DeskFollows, TheTableGoesWithEachKindOfEditAndView) {
  struct Case {
    const char* name;
    std::function<void()> edit;
    const char* shows;
  };
  inchwright::Setup second = desk.part().setups[0];
  second.name = "second";
  second.zero[0].at = "A";
  const Case cases[] = {
      {"a figure", [&] { read(0, "5/8"); }, "0.6250"},
      {"the machine's step",
       [&] {
         Job job = desk.job();
         job.machine.step = "0.01";
         desk.apply(job, "Step");
       },
       "0.38"},
      {"the zero",
       [&] {
         Part next = desk.part();
         next.setups[0].zero[0].at = "A";
         desk.applyPart(next, "Zero");
       },
       "0.0000"},
      {"a reading less",
       [&] {
         Part next = desk.part();
         next.readings.clear();
         desk.applyPart(next, "None");
       },
       "none"},
      {"another part",
       [&] {
         read(1, "7/8");
         desk.choosePart(1);
       },
       "0.8750"},
      {"another setup",
       [&] {
         Part next = desk.part();
         next.setups.push_back(second);
         desk.applyPart(next, "Setup");
         desk.chooseSetup(1);
       },
       "0.0000"},
      {"another document", [&] { desk.take(jobOfPlate(), {}); }, "none"},
  };
  for (const Case& one : cases) {
    SCOPED_TRACE(one.name);
    SetUp();
    ASSERT_EQ(x(), "0.3750");
    ASSERT_NE(desk.sheet(), nullptr);
    const std::size_t steps = desk.canUndo();
    one.edit();
    EXPECT_EQ(x(), one.shows);
    EXPECT_EQ(desk.sheet() != nullptr, desk.table() != nullptr);
    EXPECT_EQ(desk.isWorkedOut(), desk.table() != nullptr);
    EXPECT_EQ(steps, 0u);
    desk.choosePart(0);
    desk.chooseSetup(0);
    while (desk.canUndo()) desk.undo();
    const bool same = one.name != std::string_view("another document");
    EXPECT_EQ(x(), same ? "0.3750" : "none");
  }
}

// Where there is no table, the desk says why, and of a bare part there is nothing to say.
TEST_F(DeskFollows, WhyThereIsNoTableIsSaidAndForgotten) {
  EXPECT_FALSE(desk.tableError());
  Part next = desk.part();
  next.readings.erase(next.readings.begin());
  next.setups[0].zero[0] = {};
  next.setups[0].zero[0].middle = {"L", "A"};  // between which nothing is read any more
  desk.applyPart(next, "Less");
  EXPECT_EQ(desk.table(), nullptr);
  ASSERT_TRUE(desk.tableError());
  EXPECT_FALSE(desk.tableError()->text.empty());
  EXPECT_FALSE(desk.step());
  desk.undo();
  EXPECT_FALSE(desk.tableError());
  EXPECT_TRUE(desk.step());
  desk.take(jobOfPlate(), {});
  EXPECT_TRUE(desk.isBare());
  EXPECT_FALSE(desk.tableError());
  EXPECT_EQ(desk.edition(), nullptr);
  desk.notePrinted("2025-01-01");
  EXPECT_FALSE(desk.canUndo()) << "what is not worked out was not printed";
}

TEST_F(DeskFollows, WhatIsPrintedIsNotedAsAStepAndComparedWithWhatComesAfter) {
  ASSERT_NE(desk.edition(), nullptr);
  const int before = desk.edition()->number;
  desk.notePrinted("2025-01-01");
  ASSERT_EQ(desk.part().printed.size(), 1u);
  EXPECT_TRUE(desk.canUndo());
  const int same = desk.edition()->number;
  read(0, "5/8");
  EXPECT_EQ(desk.edition()->number, same + 1) << "another figure is another edition";
  EXPECT_EQ(desk.part().printed.size(), 1u);
  desk.undo();
  EXPECT_EQ(desk.edition()->number, same);
  desk.choosePart(1);
  EXPECT_EQ(desk.edition()->number, before) << "of the other part none was printed";
  desk.choosePart(0);
  desk.undo();
  EXPECT_TRUE(desk.part().printed.empty());
  EXPECT_EQ(desk.edition()->number, before);
}

TEST_F(DeskFollows, OptionsAndClosenessMakeTheSheetAnewAndAreNoEdit) {
  int views = 0;
  QObject::connect(&desk, &Desk::viewChanged, &desk, [&] { ++views; });
  for (const std::function<void()>& change : std::initializer_list<std::function<void()>>{
           [&] { desk.showCloseness(true); }, [&] { desk.setSheetOptions({}); },
           [&] {
             Shop shop = desk.ownShop();
             shop.drills.emplace();
             desk.setOwnShop(shop);
           }}) {
    ASSERT_NE(desk.sheet(), nullptr);
    views = 0;
    change();
    EXPECT_EQ(views, 1);
    EXPECT_NE(desk.sheet(), nullptr);
    EXPECT_EQ(x(), "0.3750");
  }
  EXPECT_FALSE(desk.canUndo());
  EXPECT_FALSE(desk.unsaved());
  views = 0;
  desk.setOwnShop(Shop(desk.ownShop()));
  EXPECT_EQ(views, 0) << "the same tools are no change";
}

TEST_F(DeskFollows, UndoGoesAcrossPartsWhicheverIsLookedAt) {
  read(0, "5/8");
  desk.choosePart(1);
  Part next = desk.part();
  next.readings[0].figure = *readLength("7/8");
  ASSERT_TRUE(desk.applyPart(next, "Read"));
  desk.choosePart(0);
  desk.undo();
  EXPECT_EQ(desk.job().parts[1].readings[0].figure.text, "3/8");
  EXPECT_EQ(desk.partIndex(), 0);
  EXPECT_EQ(x(), "0.6250");
  desk.undo();
  EXPECT_EQ(x(), "0.3750");
  desk.choosePart(1);
  desk.redo();
  EXPECT_EQ(x(), "0.3750") << "the first was another part's";
  desk.redo();
  EXPECT_EQ(x(), "0.8750");
  ASSERT_EQ(desk.solutions().size(), 2u);
}

using KitFollows = KitOnDesk;

// What a mate or gap names can't be taken away from under it, by undo neither.
TEST_F(KitFollows, APlaceThatTheKitNeedsStays) {
  QStringList refused;
  QObject::connect(&desk, &Desk::refused, &desk, [&](const QString& why) { refused << why; });
  ASSERT_FALSE(desk.job().mates.empty());
  const PartPlace hole = std::get<PartPlace>(desk.job().mates[0].hole);
  for (std::size_t i = 0; i < desk.job().parts.size(); ++i) {
    if (desk.job().parts[i].name == hole.part) desk.choosePart(static_cast<int>(i));
  }
  const Job before = desk.job();
  Part less = desk.part();
  std::erase_if(less.features, [&](const Feature& one) { return one.id == hole.place; });
  less.readings.clear();
  less.understood.clear();
  less.setups.clear();
  EXPECT_FALSE(desk.applyPart(less, "Take it away"));
  ASSERT_EQ(refused.size(), 1);
  EXPECT_TRUE(refused[0].contains(QString::fromStdString(hole.place))) << qPrintable(refused[0]);
  EXPECT_EQ(desk.job(), before);
  EXPECT_FALSE(desk.canUndo());
  // Renamed it is still meant, and undo and redo keep both in step.
  ASSERT_TRUE(desk.applyPart(*renameFeature(desk.part(), hole.place, "W9"), "Rename"));
  EXPECT_EQ(std::get<PartPlace>(desk.job().mates[0].hole).place, "W9");
  desk.undo();
  EXPECT_EQ(desk.job(), before);
  desk.redo();
  EXPECT_EQ(std::get<PartPlace>(desk.job().mates[0].hole).place, "W9");
}

}  // namespace
}  // namespace inchwright::app
