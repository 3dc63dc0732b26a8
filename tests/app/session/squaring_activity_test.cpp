// How many known places a picture needs, by how askew it was taken.

#include <gtest/gtest.h>

#include <QTest>

#include "app/session/picture_edits.h"
#include "app/session/work.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class SquaringActivityTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
    desk.apply(*layPicture(desk.job(), 0, Face::top, QStringLiteral("print"), "bytes"), "lay");
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused = why; });
    work.squareUp();
    ASSERT_EQ(work.doing(), Doing::squaring);
  }

  void known(double x, double y, const char* place) {
    Pointed pointed;
    pointed.at = QPointF(x, y);
    work.point(pointed);
    ASSERT_TRUE(work.enter(QString::fromUtf8(place))) << place;
  }

  Desk desk;
  Work work{desk};
  QString refused;
};

TEST_F(SquaringActivityTest, TwoPlacesDoForAScan) {
  work.noteAskew(Askew{0.002, -0.001, 0.001});
  known(0, 0, "0, 0");
  known(3, 2, "3, 2");
  EXPECT_TRUE(work.enter({}));
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(desk.job().pictures[0].points.size(), 2u);
}

TEST_F(SquaringActivityTest, APhotoNeedsFour) {
  work.noteAskew(Askew{0.05, 0.01, 0.002});
  known(0, 0, "0, 0");
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("a photo needs four")));
  known(3, 0, "3, 0");
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(refused.contains(QStringLiteral("a photo needs four")));
  EXPECT_TRUE(refused.contains(QStringLiteral("2.9°"))) << qPrintable(refused);
  known(3, 2, "3, 2");
  EXPECT_FALSE(work.enter({}));
  EXPECT_EQ(work.doing(), Doing::squaring);
  known(0.1, 1.9, "0, 2");
  EXPECT_TRUE(work.enter({}));
  EXPECT_EQ(desk.job().pictures[0].points.size(), 4u);
}

TEST_F(SquaringActivityTest, TheOverallFiguresSaidAtTheCornersAreReadFromSideToSide) {
  work.noteAskew(Askew{0.05, 0.01, 0.002});
  known(0, 0, "0, 0");
  known(3.9, 0, "3 7/8 0");
  known(3.9, 2.1, "3-7/8, 2 1/8");
  known(0.1, 2, "0, 2 1/8");
  if (work.doing() == Doing::squaring) {
    ASSERT_TRUE(work.enter({}));
  }
  ASSERT_EQ(work.doing(), Doing::tracing);
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("reads 3 7/8 and 2 1/8 from side to side")))
      << qPrintable(work.prompt());
  QTest::qWait(360);  // Enter is deaf to the second press of what went before
  ASSERT_TRUE(work.enter({}));
  ASSERT_EQ(desk.part().readings.size(), 2u);
  EXPECT_EQ(desk.part().readings[0].figure.text, "3 7/8");
  EXPECT_EQ(desk.part().readings[1].figure.text, "2 1/8");
  EXPECT_EQ(desk.part().readings[1].axis, Axis::y);
}

TEST_F(SquaringActivityTest, OnlyTheCornersOfARectangleAreItsSides) {
  struct Case {
    std::array<const char*, 4> places;
    bool sides;
  };
  for (const Case& one : {Case{{"0, 0", "3, 0", "3, 2", "0, 2"}, true},
                          Case{{"0, 0", "3, 0", "3, 2", "1/2, 2"}, false},
                          Case{{"0, 0", "3, 0", "2 1/2, 2", "0, 2"}, false},
                          Case{{"0, 1/8", "3, 0", "3, 2", "0, 2"}, false},
                          Case{{"0, 0", "3, 0", "3, 2", "0, 1 7/8"}, false}}) {
    SetUp();
    work.noteAskew(Askew{0.05, 0.01, 0.002});
    const std::array<QPointF, 4> at{QPointF(0, 0), {3, 0}, {3, 2}, {0.1, 1.9}};
    for (std::size_t i = 0; i < 4; ++i) known(at[i].x(), at[i].y(), one.places[i]);
    if (work.doing() == Doing::squaring) {
      EXPECT_TRUE(work.enter({}));
    }
    EXPECT_EQ(work.doing(), one.sides ? Doing::tracing : Doing::looking) << one.places[3];
  }
}

TEST_F(SquaringActivityTest, WhatIsOnlyOutOfSquareNeedsThree) {
  work.noteAskew(Askew{0.001, 0.001, 0.03});
  known(0, 0, "0, 0");
  known(3, 0, "3, 0");
  EXPECT_FALSE(work.enter({}));
  known(3, 2, "3, 2");
  EXPECT_TRUE(work.enter({}));
}

TEST_F(SquaringActivityTest, WhereNothingTellsTwoAreTaken) {
  work.noteAskew({});
  known(0, 0, "0, 0");
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("a photo needs four")));
  known(3, 2, "3, 2");
  EXPECT_TRUE(work.enter({}));
}

// What is squared up badly explains more.
TEST_F(SquaringActivityTest, TheErrorOfTheSquaringUpWidensWhatIsPlausible) {
  EXPECT_GT(tracingBound(2, 0.05), tracingBound(2) + 0.1);
  EXPECT_DOUBLE_EQ(tracingBound(2, 0), tracingBound(2));
}

}  // namespace
}  // namespace inchwright::app
