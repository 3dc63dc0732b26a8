// The document on the desk: what is one step of undo, what is told, what is in sight.
#include "app/session/desk.h"

#include <gtest/gtest.h>

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class DeskTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    QObject::connect(&desk, &Desk::edited, [this] { told << "edited"; });
    QObject::connect(&desk, &Desk::viewChanged, [this] { told << "view"; });
    QObject::connect(&desk, &Desk::selectionChanged, [this] { told << "selection"; });
    QObject::connect(&desk, &Desk::savedChanged, [this] { told << "saved"; });
    QObject::connect(&desk, &Desk::refused, [this] { told << "refused"; });
  }

  /// What was told since it was last asked.
  QString since() { return std::exchange(told, {}).join(QLatin1Char(' ')); }

  Job titled(const char* title) const {
    Job job = desk.job();
    job.title = title;
    return job;
  }
  /// The plate and one more part, each with two setups.
  static Job twoParts() {
    Job job = jobOfPlate("hole A 1/4\n");
    for (const char* name : {"1", "2"}) {
      inchwright::Setup setup;
      setup.name = name;
      job.parts[0].setups.push_back(setup);
    }
    job.parts.push_back(job.parts[0]);
    job.parts[1].name = "Bridge";
    return job;
  }

  QStringList told;
};

TEST_F(DeskTest, EditsThatMergeAreOneStepUntilTheMouseIsReleased) {
  desk.apply(titled("a"), "Drag", "drag");
  desk.apply(titled("b"), "Drag", "drag");
  desk.endMerge();
  desk.apply(titled("c"), "Drag", "drag");
  desk.apply(titled("d"), "Type", "");
  desk.apply(titled("e"), "Type", "");
  for (const char* before : {"d", "c", "b", ""}) {
    ASSERT_TRUE(desk.canUndo());
    desk.undo();
    EXPECT_EQ(desk.job().title, before);
  }
  EXPECT_FALSE(desk.canUndo());
  EXPECT_EQ(desk.undoTitle(), QString());
  desk.undo();
  for (const char* after : {"b", "c", "d", "e"}) {
    EXPECT_EQ(desk.redoTitle(), after[0] < 'd' ? QStringLiteral("Drag") : QStringLiteral("Type"));
    desk.redo();
    EXPECT_EQ(desk.job().title, after);
  }
  EXPECT_FALSE(desk.canRedo());
  desk.redo();
  EXPECT_EQ(desk.job().title, "e");
  // What comes after an undo ends what was undone, and never joins what stood before.
  desk.undo();
  desk.apply(titled("f"), "Other", "drag");
  EXPECT_FALSE(desk.canRedo());
  desk.undo();
  EXPECT_EQ(desk.job().title, "d");
}

TEST_F(DeskTest, WhatWasSavedIsKnownThroughUndoAndRedo) {
  EXPECT_FALSE(desk.unsaved());
  desk.apply(titled("a"), "A", "drag");
  EXPECT_EQ(since(), "edited saved");
  EXPECT_TRUE(desk.unsaved());
  desk.markSaved("plate.inchwright");
  EXPECT_EQ(since(), "saved");
  EXPECT_EQ(desk.file(), "plate.inchwright");
  EXPECT_FALSE(desk.unsaved());
  // A drag that goes on over a save is another step: else the saved one could not be come back to.
  desk.apply(titled("b"), "A", "drag");
  EXPECT_TRUE(desk.unsaved());
  desk.undo();
  EXPECT_EQ(desk.job().title, "a");
  EXPECT_FALSE(desk.unsaved());
  desk.undo();
  EXPECT_TRUE(desk.unsaved());
  desk.redo();
  EXPECT_FALSE(desk.unsaved());
  // With other edits in its place the saved one is gone for good.
  desk.undo();
  desk.apply(titled("c"), "C");
  EXPECT_TRUE(desk.unsaved());
  desk.undo();
  EXPECT_TRUE(desk.unsaved());
}

TEST_F(DeskTest, NothingChangedIsNoStepAndTellsNothing) {
  desk.apply(desk.job(), "Nothing");
  EXPECT_FALSE(desk.canUndo());
  desk.choosePart(0);
  desk.chooseSetup(0);
  desk.chooseFace(Face::top);
  desk.select({});
  desk.showCloseness(desk.showsCloseness());
  EXPECT_EQ(since(), "");
  EXPECT_FALSE(desk.applyPart(Error{ErrorCode::badText, "no", {}}, "Refused"));
  EXPECT_EQ(since(), "refused");
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(DeskTest, AnotherPartIsLookedAtAfresh) {
  put(twoParts());
  desk.chooseSetup(1);
  desk.chooseFace(Face::front);
  desk.select({{"A"}, {}});
  since();
  desk.choosePart(1);
  EXPECT_EQ(desk.part().name, "Bridge");
  EXPECT_EQ(desk.setupIndex(), 0);
  EXPECT_EQ(desk.face(), Face::top);
  EXPECT_TRUE(desk.selection().empty());
  EXPECT_EQ(since(), "view selection");
  // As a document is taken, whatever was in sight of the one before.
  desk.chooseSetup(1);
  desk.chooseFace(Face::left);
  desk.select({{"A"}, {}});
  desk.take(twoParts(), "other.inchwright");
  EXPECT_EQ(desk.partIndex(), 0);
  EXPECT_EQ(desk.setupIndex(), 0);
  EXPECT_EQ(desk.face(), Face::top);
  EXPECT_TRUE(desk.selection().empty());
  EXPECT_FALSE(desk.canUndo());
  EXPECT_EQ(desk.file(), "other.inchwright");
}

TEST_F(DeskTest, WhatIsLookedAtStaysWithinTheJob) {
  put(twoParts());
  desk.choosePart(1);
  desk.chooseSetup(1);
  Job fewer = desk.job();
  fewer.parts[1].setups.pop_back();
  desk.apply(fewer, "One setup less");
  EXPECT_EQ(desk.setupIndex(), 0);
  desk.undo();
  desk.chooseSetup(1);
  desk.redo();
  EXPECT_EQ(desk.setupIndex(), 0);
  fewer.parts.pop_back();
  desk.apply(fewer, "One part less");
  EXPECT_EQ(desk.partIndex(), 0);
  EXPECT_EQ(desk.part().name, "Plate");
  desk.undo();
  desk.choosePart(1);
  EXPECT_EQ(desk.part().name, "Bridge");
  desk.redo();
  EXPECT_EQ(desk.partIndex(), 0);
  Job more = desk.job();
  more.parts.push_back(twoParts().parts[1]);
  desk.apply(more, "One part more");
  desk.choosePart(1);
  desk.undo();
  EXPECT_EQ(desk.partIndex(), 0);
  desk.choosePart(7);
  EXPECT_EQ(desk.partIndex(), 0);
  desk.chooseSetup(-3);
  EXPECT_EQ(desk.setupIndex(), 0);
}

// What follows is worked out anew after each edit, undo and redo.
TEST_F(DeskTest, WhatFollowsGoesWithTheDocument) {
  put(jobOfPlate(
      "edge L left\nedge F front\nhole A 1/4\nL A 3/8\ny F A 1/2\nzero x L\nzero y F\n"));
  const auto shown = [&] {
    return desk.table() == nullptr ? std::string("none") : desk.table()->rows[0].x.text;
  };
  EXPECT_EQ(shown(), "0.3750");
  Job other = desk.job();
  other.parts[0].readings[0].figure = *readLength("5/8");
  desk.apply(other, "Another figure");
  EXPECT_EQ(shown(), "0.6250");
  desk.undo();
  EXPECT_EQ(shown(), "0.3750");
  desk.redo();
  EXPECT_EQ(shown(), "0.6250");
}

}  // namespace
}  // namespace inchwright::app
