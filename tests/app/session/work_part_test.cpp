// What is in hand when another part or face comes under it: the tool stays, and nothing that was
// pointed at or half said on the one is taken for the other.

#include <QCoreApplication>
#include <functional>

#include "app/session/picture_edits.h"
#include "core/part/parts_of_job.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

/// Two parts with the same names on them, each with a reading of its own between two of them.
class OtherPart : public PlateOnDesk {
 protected:
  void SetUp() override {
    Job job = jobOfPlate(
        "edge L left\nedge R right\nedge F front\nedge K back\nhole A 1/4\nhole B 1/4\nL A 3/8\n");
    Job other = jobOfPlate(
        "edge L left\nedge R right\nedge F front\nedge K back\nhole A 1/4\nhole B 1/4\nL A 5/8\n");
    job.parts.push_back(other.parts[0]);
    job.parts[1].name = "Bridge";
    put(job);
  }

  void click(double x, double y, const char* place = "") {
    work.point({QPointF(x, y), place, {}, false});
  }
  const Part& bridge() { return desk.job().parts[1]; }
};

TEST_F(OtherPart, WhatWasPointedAtIsDroppedAndTheToolStays) {
  struct Case {
    const char* name;
    std::function<void()> begin;
    Doing doing;
    const char* text;  ///< what would have ended it
  };
  const Case cases[] = {{"trace",
                         [&] {
                           work.trace(FeatureKind::hole);
                           click(1, 1);
                         },
                         Doing::tracing, ""},
                        {"read",
                         [&] {
                           work.read();
                           click(0, 0, "A");
                           click(0, 0, "B");
                         },
                         Doing::reading, "3/8"},
                        {"relate",
                         [&] {
                           work.relate(UnderstandingKind::inLine);
                           click(0, 0, "A");
                           click(0, 0, "B");
                         },
                         Doing::relating, ""},
                        {"zero",
                         [&] {
                           work.zero();
                           click(0, 0, "L");
                         },
                         Doing::zeroing, ""},
                        {"stack",
                         [&] {
                           work.stack();
                           click(0, 0, "L");
                           click(0, 0, "A");
                         },
                         Doing::stacking, ""},
                        {"centre line",
                         [&] {
                           work.traceCentreLine();
                           click(0, 1);
                         },
                         Doing::tracing, ""},
                        {"turned",
                         [&] {
                           work.trace(FeatureKind::knurl);
                           click(1, 1);
                         },
                         Doing::tracing, ""}};
  for (const Case& one : cases) {
    SCOPED_TRACE(one.name);
    SetUp();
    one.begin();
    ASSERT_TRUE(work.pending() || !work.chosen().empty());
    desk.choosePart(1);
    EXPECT_EQ(work.doing(), one.doing);
    EXPECT_FALSE(work.pending());
    EXPECT_TRUE(work.chosen().empty());
    EXPECT_FALSE(work.stacked());
    const Part before = bridge();
    EXPECT_FALSE(work.enter(QString::fromUtf8(one.text)));
    EXPECT_EQ(bridge(), before);
    EXPECT_FALSE(desk.canUndo());
  }
}

// Looked at once on the other part, it would else have settled this one's figure.
TEST_F(OtherPart, AHalfReadFigureIsNoneOfAnotherParts) {
  work.reread();
  enterLines({"7/8"});
  EXPECT_TRUE(work.prompt().contains("a third time")) << qPrintable(work.prompt());
  desk.choosePart(1);
  EXPECT_EQ(work.doing(), Doing::rereading);
  EXPECT_FALSE(work.prompt().contains("a third time")) << qPrintable(work.prompt());
  enterLines({"7/8"});
  EXPECT_EQ(bridge().readings[0].figure.text, "5/8");
  EXPECT_EQ(bridge().readings[0].again, "");
  enterLines({"5/8"});
  EXPECT_EQ(bridge().readings[0].again, "5/8");
}

TEST_F(OtherPart, APartThatOnlyMovedAmongTheOthersKeepsWhatIsInHand) {
  desk.choosePart(1);
  work.read();
  click(0, 0, "A");
  Job fewer = desk.job();
  std::swap(fewer.parts[0], fewer.parts[1]);
  desk.apply(fewer, "Move");
  desk.choosePart(0);
  EXPECT_EQ(desk.part().name, "Bridge");
  EXPECT_EQ(work.chosen(), std::vector<Id>{"A"});
  // And so does one that was given another name.
  Job renamed = desk.job();
  renamed.parts[0].name = "Cock";
  desk.apply(renamed, "Rename");
  EXPECT_EQ(work.chosen(), std::vector<Id>{"A"});
  std::swap(renamed.parts[0], renamed.parts[1]);
  desk.apply(renamed, "Move back");
  desk.choosePart(1);
  EXPECT_EQ(work.chosen(), std::vector<Id>{"A"});
  desk.choosePart(0);
  EXPECT_TRUE(work.chosen().empty());
}

TEST_F(OtherPart, AReasonIsKeptForItsOwnDoubtOnly) {
  ASSERT_FALSE(desk.solution().doubts.empty());
  const Doubt doubt = desk.solution().doubts.front();
  AcceptedDoubt asked(doubt.key.text());
  asked.about = doubt.about;
  work.accept({asked}, QStringLiteral("the first"));
  desk.choosePart(1);
  EXPECT_FALSE(work.enter(QStringLiteral("measured")));
  EXPECT_TRUE(bridge().accepted.empty());
  desk.choosePart(0);
  EXPECT_TRUE(work.enter(QStringLiteral("measured")));
  ASSERT_EQ(desk.part().accepted.size(), 1u);
  EXPECT_EQ(desk.part().accepted[0].reason, "measured");
}

TEST_F(OtherPart, APictureThatWasBeingPlacedOrSquaredUpIsLeft) {
  Job job = *layPicture(desk.job(), 0, Face::top, "print", "bytes");
  desk.take(job, {});
  work.squareUp();
  ASSERT_EQ(work.doing(), Doing::squaring);
  desk.choosePart(1);
  EXPECT_EQ(work.doing(), Doing::looking);
  const Lettered none = *readLength("0"), one = *readLength("1");
  desk.take(*setPicturePoints(job, "print", {{0, 0, none, none}, {100, 0, one, none}}), {});
  work.turnPicture();
  ASSERT_EQ(work.doing(), Doing::placingView);
  desk.choosePart(1);
  EXPECT_EQ(work.doing(), Doing::looking);
  click(0.5, 0.5);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(OtherPart, AnUndoThatTakesThePartAwayTakesWhatIsInHandWithIt) {
  Job more = desk.job();
  more.parts.push_back(more.parts[1]);
  more.parts[2].name = "Cock";
  desk.apply(more, "One more");
  desk.choosePart(2);
  work.read();
  click(0, 0, "A");
  desk.undo();
  EXPECT_EQ(desk.part().name, "Bridge");
  EXPECT_EQ(work.doing(), Doing::reading);
  EXPECT_TRUE(work.chosen().empty());
}

// A point lies on the face where it was pointed at; a place that has a name is known on others too.
TEST_F(OtherPart, OfAnotherFaceOnlyNamesAreCarriedOver) {
  work.trace(FeatureKind::hole);
  click(1, 1);
  desk.chooseFace(Face::front);
  EXPECT_EQ(work.doing(), Doing::tracing);
  EXPECT_FALSE(work.pending());
  EXPECT_FALSE(work.enter({}) && !desk.part().features.back().traced.empty());
  work.read();
  click(0, 0, "A");
  desk.chooseFace(Face::top);
  EXPECT_EQ(work.chosen(), std::vector<Id>{"A"});
}

// Found by reading: the row in the list of parts stays the same where the part on the desk is taken
// away, and where another document is opened.
TEST_F(OtherPart, ADocumentOpenedOrAPartTakenAwayLeavesNothingPointedAt) {
  const Job both = desk.job();
  const auto pointAtTwo = [&] {
    work.read();
    click(0, 0, "A");
    click(0, 0, "B");
    ASSERT_EQ(work.chosen(), (std::vector<Id>{"A", "B"}));
  };
  pointAtTwo();
  desk.apply(*removePart(desk.job(), desk.part().name), "Take a part away");
  EXPECT_EQ(desk.part().name, "Bridge");
  EXPECT_EQ(work.doing(), Doing::reading);
  EXPECT_TRUE(work.chosen().empty());
  pointAtTwo();
  desk.undo();
  EXPECT_TRUE(work.chosen().empty());
  pointAtTwo();
  Part renamed = desk.part();
  renamed.name = "Plate again";
  desk.applyPart(renamed, "Rename the part");
  EXPECT_EQ(work.chosen().size(), 2u) << "it is the same part";
  // Others moved past the part on the desk, and it was not chosen anew.
  const std::string name = desk.part().name;
  desk.apply(*movePart(desk.job(), name, 1), "Move a part");
  EXPECT_NE(desk.part().name, name);
  QCoreApplication::processEvents();
  EXPECT_TRUE(work.chosen().empty());
  put(both);
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_TRUE(work.chosen().empty());
  EXPECT_EQ(desk.job(), both);
}

}  // namespace
}  // namespace inchwright::app
