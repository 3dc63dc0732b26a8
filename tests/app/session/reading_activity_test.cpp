// Walking a chain: what the strip asks, what it takes for the next piece, and what it refuses.

#include <QStringList>

#include "app/session/picture_edits.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class ReadingActivityTest : public PlateOnDesk {
 protected:
  ReadingActivityTest() {
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
  }
  void SetUp() override {
    PlateOnDesk::SetUp();
    put(
        jobOfPlate("edge L left\nedge R right\nedge F front\nedge K back\nhole A 1/4\nhole B 1/4\n"
                   "hole C 1/4\n"));
    work.read();
  }

  void click(std::initializer_list<const char*> places, bool shift = false) {
    for (const char* place : places) work.point({{}, place, {}, shift});
  }
  const std::vector<Reading>& readings() const { return desk.part().readings; }

  QStringList refused;
};

TEST_F(ReadingActivityTest, EachStepAsksForTheNextPieceByName) {
  EXPECT_TRUE(work.prompt().startsWith("Along X: point at the feature the chain begins at"));
  click({"L"});
  EXPECT_TRUE(work.prompt().startsWith("From L along X: point at the next"));
  click({"A"});
  EXPECT_TRUE(work.prompt().startsWith("From L to A along X: the figure"));
  EXPECT_EQ(work.offer(), "");
  // Another second end takes the place of the first; the beginning stays.
  click({"B"});
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L", "B"}));
  click({"L", ""});
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L", "B"})) << "no chain ends where it begins";
  click({"C"}, true);
  EXPECT_EQ(work.chosen(), std::vector<Id>{"C"}) << "Shift begins another chain";
}

// Two sides that lie across an axis run along no other, whichever is set.
TEST_F(ReadingActivityTest, SidesSayAlongWhichAxisTheChainRuns) {
  click({"F", "K"});
  EXPECT_EQ(work.axis(), Axis::y);
  enterLines({"1"});
  EXPECT_EQ(readings().back().axis, Axis::y);
  click({"L"}, true);
  click({"F"});
  EXPECT_EQ(work.chosen(), std::vector<Id>{"L"});
  ASSERT_EQ(refused.size(), 1);
  EXPECT_FALSE(refused[0].isEmpty());
  EXPECT_EQ(readings().size(), 1u);
}

TEST_F(ReadingActivityTest, WhatIsNoFigureLeavesAllAsItWas) {
  click({"L", "A"});
  const Job before = desk.job();
  for (const char* wrong : {"", "3/x", "three", "3/8 and more", "L", "1/0"}) {
    SCOPED_TRACE(wrong);
    const bool place = QLatin1String(wrong) == QLatin1String("L");
    EXPECT_EQ(work.enter(wrong), place);
    EXPECT_EQ(desk.job(), before);
    EXPECT_EQ(work.chosen(), (std::vector<Id>{"L", "A"}));
    EXPECT_FALSE(desk.canUndo());
  }
  EXPECT_EQ(refused.size(), 4);
  enterLines({"3/8"});
  EXPECT_EQ(readings().size(), 1u);
}

TEST_F(ReadingActivityTest, AClickTakesWhatIsTypedOnlyWhereNothingSpeaksAgainstIt) {
  int taken = 0;
  QObject::connect(&work, &Work::typedTaken, &work, [&] { ++taken; });
  struct Case {
    const char* typed;
    bool takes;
  };
  for (const Case& one : {Case{"3/8", true}, {"1/46", false}, {"3/x", false}}) {
    SCOPED_TRACE(one.typed);
    SetUp();
    taken = 0;
    refused.clear();
    click({"L", "A"});
    work.noteTyped(QString::fromUtf8(one.typed));
    click({"B"});
    EXPECT_EQ(taken, one.takes ? 1 : 0);
    EXPECT_EQ(readings().size(), one.takes ? 1u : 0u);
    EXPECT_EQ(work.chosen(), one.takes ? (std::vector<Id>{"A", "B"}) : (std::vector<Id>{"L", "A"}));
    EXPECT_EQ(refused.isEmpty(), one.takes) << refused.join(' ').toStdString();
    // Enter takes what is only doubted.
    if (one.takes) continue;
    EXPECT_EQ(work.enter(one.typed), QLatin1String(one.typed) == "1/46");
  }
}

TEST_F(ReadingActivityTest, AWholeLineGoesOnFromItsEnd) {
  for (const auto& [first, from] : {std::pair(false, "A"), {true, "L"}}) {
    SetUp();
    work.setFromFirst(first);
    enterLines({"y F A 1/2"});
    EXPECT_EQ(work.axis(), Axis::y);
    EXPECT_EQ(work.chosen(), std::vector<Id>{first ? "F" : "A"});
    work.back();
    enterLines({"x L A 3/8"});
    EXPECT_EQ(work.chosen(), std::vector<Id>{from});
    EXPECT_EQ(readings().size(), 2u);
  }
}

TEST_F(ReadingActivityTest, AnAngleIsReadAsOneAndUndoneInOneStep) {
  enterLines({"line S"});
  work.read();
  click({"A", "B"});
  const Job before = desk.job();
  enterLines({"30°"});
  ASSERT_EQ(readings().size(), 1u);
  EXPECT_EQ(readings()[0].kind, ReadingKind::angle);
  EXPECT_EQ(work.chosen(), std::vector<Id>{"B"});
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

// Of what lies askew, the print may letter the straight distance: the strip says so.
TEST_F(ReadingActivityTest, AFigureThatAgreesStraightAcrossIsSaidToDoSo) {
  Job job = desk.job();
  const auto trace = [&](const Id& id, const char* x, const char* y) {
    for (Feature& one : job.parts[0].features) {
      if (one.id == id) one.traced = {x, y};
    }
  };
  trace("A", "0.500", "0.500");
  trace("B", "3.500", "4.500");  // 3, 4, 5
  job = *layPicture(job, 0, Face::top, "print", "bytes");
  const Lettered none = *readLength("0"), one = *readLength("1");
  desk.take(*setPicturePoints(job, "print", {{0, 0, none, none}, {100, 0, one, none}}), {});
  work.read();
  click({"A", "B"});
  const Echo straight = work.echo("5");
  EXPECT_TRUE(straight.doubtful);
  EXPECT_TRUE(straight.text.contains("type crs behind it")) << straight.text.toStdString();
  EXPECT_FALSE(work.echo("7").text.contains("crs")) << "it agrees neither way";
  EXPECT_FALSE(work.echo("3").doubtful);
  enterLines({"5 crs"});
  EXPECT_EQ(readings()[0].kind, ReadingKind::centres);
  EXPECT_EQ(readings()[0].figure.value, Length::ticks(5 * Length::kTicksPerInch));
}

}  // namespace
}  // namespace inchwright::app
