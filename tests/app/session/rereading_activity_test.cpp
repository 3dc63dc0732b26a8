// The second, blind reading: which figure is asked next, what settles it, and what does not.

#include <QStringList>

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class RereadingTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
    put(
        jobOfPlate("edge L left\nedge R right\nhole A 1/4\nhole B 1/4\nL A 3/8\nA B 1 3/16\n"
                   "B R 7/16 +.002 -.000\nL R (2)\n"));
    work.reread();
  }
  const Reading& reading(std::size_t i) const { return desk.part().readings[i]; }
  void pointAt(std::size_t i) { work.point({{}, {}, reading(i).id, false}); }
  bool asks(std::size_t i) const {
    return work.chosen() == std::vector<Id>{reading(i).from, reading(i).to};
  }

  QStringList refused;
};

TEST_F(RereadingTest, AnyFigureIsReadAgainByPointingAtIt) {
  EXPECT_TRUE(asks(0));
  pointAt(2);
  EXPECT_TRUE(asks(2));
  work.point({{}, "A", {}, false});
  EXPECT_TRUE(asks(2)) << "a place is no figure";
  // Back where the readings before it are still open.
  enterLines({"7/16 +.002 -.000"});
  EXPECT_EQ(reading(2).again, "7/16 +.002 -.000");
  EXPECT_TRUE(asks(0));
}

// A figure is the same only with its tolerance, and with its brackets.
TEST_F(RereadingTest, WhatMakesAFigureTheSame) {
  struct Case {
    std::size_t reading;
    const char* again;
    bool same;
  };
  for (const Case& one : {Case{0, "3/8", true},
                          {0, ".375", true},
                          {0, "(3/8)", false},
                          {0, "3/8 +.001 -.001", false},
                          {1, "1.1875", true},
                          {1, "1 3/32", false},
                          {2, "7/16", false},
                          {2, ".4375 +.002 -.000", true},
                          {3, "2", false},
                          {3, "(2)", true}}) {
    SCOPED_TRACE(one.again);
    SetUp();
    pointAt(one.reading);
    const std::string text = reading(one.reading).figure.text;
    enterLines({one.again});
    EXPECT_EQ(reading(one.reading).again, one.same ? one.again : "");
    EXPECT_EQ(reading(one.reading).figure.text, text);
    EXPECT_EQ(desk.canUndo(), one.same);
    EXPECT_EQ(work.prompt().contains("Look at the print a third time"), !one.same);
  }
}

TEST_F(RereadingTest, OfThreeThatDifferNoneIsTaken) {
  enterLines({"5/8"});
  EXPECT_FALSE(work.enter("7/8"));
  ASSERT_EQ(refused.size(), 1);
  EXPECT_TRUE(refused[0].startsWith("Three readings, three figures"));
  EXPECT_FALSE(desk.canUndo());
  // It is begun again from the first: the one typed before counts no more.
  enterLines({"5/8"});
  EXPECT_FALSE(desk.canUndo());
  enterLines({"3/8"});
  EXPECT_EQ(reading(0).again, "3/8");
  EXPECT_EQ(reading(0).figure.text, "3/8");
}

TEST_F(RereadingTest, AHalfReadOneIsForgottenByEscapeAndByPointingElsewhere) {
  enterLines({"5/8"});
  work.back();
  EXPECT_EQ(work.doing(), Doing::rereading);
  enterLines({"5/8"});
  EXPECT_EQ(reading(0).figure.text, "3/8") << "twice, but not against the same asking";
  pointAt(1);
  enterLines({"5/8"});
  EXPECT_EQ(reading(1).figure.text, "1 3/16");
  work.back();
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(RereadingTest, EnterAlonePassesAFigureByAndReadsNothing) {
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_TRUE(asks(i));
    enterLines({""});
  }
  EXPECT_TRUE(work.chosen().empty());
  EXPECT_FALSE(desk.canUndo());
  EXPECT_FALSE(work.enter("3/8")) << "nothing is asked any more";
  // Whoever begins anew is asked for all that was passed by.
  work.reread();
  EXPECT_TRUE(asks(0));
}

TEST_F(RereadingTest, WhatIsNoFigureIsRefusedAndAskedAgain) {
  for (const char* wrong : {"3/x", "three", "L A 3/8"}) {
    const Echo echo = work.echo(wrong);
    EXPECT_TRUE(echo.refused) << wrong;
    EXPECT_FALSE(work.enter(wrong)) << wrong;
    EXPECT_TRUE(asks(0)) << wrong;
  }
  EXPECT_EQ(refused.size(), 3);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(RereadingTest, ASettledFigureIsOneStepOfUndo) {
  const Job before = desk.job();
  enterLines({"5/8", "5/8"});
  EXPECT_EQ(reading(0).figure.text, "5/8");
  EXPECT_EQ(reading(0).again, "5/8");
  desk.undo();
  EXPECT_EQ(desk.job(), before);
  EXPECT_FALSE(desk.canUndo());
  desk.redo();
  EXPECT_EQ(reading(0).figure.text, "5/8");
}

}  // namespace
}  // namespace inchwright::app
