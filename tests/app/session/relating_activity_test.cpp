// What the print shows but does not number, pointed at and typed.

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class RelatingTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    QObject::connect(&desk, &Desk::refused, [this](const QString& why) { refused << why; });
    enterLines({"edge L left", "edge R right", "edge F front", "edge K back", "hole A 1/4",
                "hole B 1/4", "hole C 1/4", "L R 2", "F K 1"});
  }

  void click(std::initializer_list<const char*> places) {
    for (const char* place : places) work.point({{}, place, {}, false});
  }
  const Understanding& last() const { return desk.part().understood.back(); }
  std::size_t count() const { return desk.part().understood.size(); }

  QStringList refused;
};

TEST_F(RelatingTest, PointingAndEnterTakeIt) {
  work.relate(UnderstandingKind::inLine);
  work.setAxis(Axis::y);
  click({"A", "B"});
  EXPECT_EQ(work.offer(), QStringLiteral("A B"));
  enterLines({""});
  ASSERT_EQ(count(), 1u);
  EXPECT_EQ(last().kind, UnderstandingKind::inLine);
  EXPECT_EQ(last().axis, Axis::y);
  EXPECT_EQ(last().of, (std::vector<Id>{"A", "B"}));
  EXPECT_FALSE(last().stated) << "what is only seen is assumed";
  EXPECT_TRUE(work.chosen().empty()) << "ready for the next";
  EXPECT_EQ(work.doing(), Doing::relating);
}

TEST_F(RelatingTest, PointingTwiceTakesItAwayAgain) {
  work.relate(UnderstandingKind::inLine);
  click({"A", "B", "A"});
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"B"}));
  click({""});
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"B"})) << "bare paper is nothing";
}

TEST_F(RelatingTest, TooFewAreRefusedAndNothingChanges) {
  work.relate(UnderstandingKind::midway);
  click({"A", "L"});
  EXPECT_FALSE(work.enter({}));
  ASSERT_EQ(refused.size(), 1);
  EXPECT_EQ(refused.front(), work.prompt()) << "what is still asked";
  EXPECT_EQ(count(), 0u);
  click({"R"});
  enterLines({""});
  EXPECT_EQ(last().kind, UnderstandingKind::midway);
  EXPECT_EQ(last().of, (std::vector<Id>{"A"}));
  EXPECT_EQ(last().between, (std::vector<Id>{"L", "R"}));
}

TEST_F(RelatingTest, OfSymmetricOnesTheLastIsTheMiddle) {
  work.relate(UnderstandingKind::symmetric);
  work.setAxis(Axis::x);
  click({"A", "B", "C"});
  enterLines({""});
  EXPECT_EQ(last().kind, UnderstandingKind::symmetric);
  EXPECT_EQ(last().of, (std::vector<Id>{"A", "B"}));
  EXPECT_EQ(last().about, "C");
}

TEST_F(RelatingTest, WhatThePrintStatesIsSaidByALetterAndKept) {
  work.relate(UnderstandingKind::inLine);
  work.setAxis(Axis::y);
  click({"A", "B"});
  enterLines({"s"});
  ASSERT_EQ(count(), 1u);
  EXPECT_TRUE(last().stated);
  click({"B", "C"});
  EXPECT_EQ(work.offer(), QStringLiteral("B C stated")) << "as the last one was";
}

TEST_F(RelatingTest, AWholeLineOfIdsNeedsNoPointing) {
  work.relate(UnderstandingKind::equal);
  work.setAxis(Axis::x);
  const Echo echo = work.echo(QStringLiteral("A B C"));
  EXPECT_FALSE(echo.refused) << echo.text.toStdString();
  EXPECT_EQ(count(), 0u) << "an echo does nothing";
  enterLines({"A B C"});
  EXPECT_EQ(last().kind, UnderstandingKind::equal);
  EXPECT_EQ(last().of, (std::vector<Id>{"A", "B", "C"}));
}

TEST_F(RelatingTest, BackGivesUpOneAtATimeThenWhatOneIsDoing) {
  work.relate(UnderstandingKind::inLine);
  click({"A", "B"});
  work.back();
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"A"}));
  work.back();
  EXPECT_TRUE(work.chosen().empty());
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(RelatingTest, EachIsOneStepOfUndo) {
  work.relate(UnderstandingKind::inLine);
  work.setAxis(Axis::y);
  click({"A", "B"});
  enterLines({""});
  ASSERT_EQ(count(), 1u);
  desk.undo();
  EXPECT_EQ(count(), 0u);
}

TEST_F(RelatingTest, ZeroIsAtOneOrInTheMiddleOfTwo) {
  work.zero();
  click({"L"});
  enterLines({""});
  ASSERT_NE(desk.setup().zeroAlong(Axis::x), nullptr);
  EXPECT_EQ(desk.setup().zeroAlong(Axis::x)->at, "L");
  work.zero();
  click({"F", "K"});
  enterLines({"stock"});
  const ZeroAlong* middle = desk.setup().zeroAlong(Axis::y);
  ASSERT_NE(middle, nullptr);
  EXPECT_EQ(middle->middle, (std::vector<Id>{"F", "K"}));
  EXPECT_TRUE(desk.setup().zeroAlong(Axis::x)) << "the other one stays";
}

TEST_F(RelatingTest, ZeroAtThreeIsRefused) {
  work.zero();
  click({"L", "R", "A"});
  EXPECT_FALSE(work.enter({}));
  EXPECT_EQ(refused.size(), 1);
  EXPECT_TRUE(desk.part().setups.empty());
}

TEST_F(RelatingTest, ASideOfTheOtherAxisTakesTheZeroAndBeginsItsOwn) {
  work.zero();
  click({"L", "R", "F"});
  ASSERT_NE(desk.setup().zeroAlong(Axis::x), nullptr);
  EXPECT_EQ(desk.setup().zeroAlong(Axis::x)->middle, (std::vector<Id>{"L", "R"}));
  EXPECT_EQ(desk.setup().zeroAlong(Axis::y), nullptr);
  enterLines({""});
  ASSERT_NE(desk.setup().zeroAlong(Axis::y), nullptr);
  EXPECT_EQ(desk.setup().zeroAlong(Axis::y)->at, "F");
  EXPECT_EQ(refused.size(), 0);
}

}  // namespace
}  // namespace inchwright::app
