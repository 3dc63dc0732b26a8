// Several pictures under one face, and views that a print draws turned.

#include "app/session/picture_edits.h"

#include <gtest/gtest.h>

#include "app/session/work.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

Job plate() {
  Job job;
  job.parts.emplace_back();
  job.parts[0].name = "Plate";
  return job;
}

std::vector<std::string> namesUnder(const Job& job, Face face) {
  std::vector<std::string> names;
  for (const PictureView* view : viewsOf(job.parts[0], face)) names.push_back(view->picture);
  return names;
}

TEST(PictureEdits, AnotherPictureLiesInFrontAndTheFirstIsKept) {
  const Job one = *layPicture(plate(), 0, Face::top, "half", "left bytes");
  const Job two = *layPicture(one, 0, Face::top, "half", "right bytes");
  EXPECT_EQ(namesUnder(two, Face::top), (std::vector<std::string>{"half 2", "half"}));
  ASSERT_NE(two.picture("half"), nullptr);
  EXPECT_EQ(two.picture("half")->data.get(), "left bytes");
  EXPECT_EQ(pictureUnder(two, two.parts[0], Face::top)->name, "half 2");
  // Only the one in front is taken away.
  EXPECT_EQ(liftPicture(two, 0, Face::top), one);
}

TEST(PictureEdits, EachComesInFrontInTurnAndNothingElseMoves) {
  Job job = plate();
  for (const char* name : {"a", "b", "c"}) job = *layPicture(job, 0, Face::top, name, name);
  job = *layPicture(job, 0, Face::front, "side", "side");
  Job turned = job;
  for (const char* front : {"b", "a", "c"}) {
    turned = nextInFront(turned, 0, Face::top);
    EXPECT_EQ(namesUnder(turned, Face::top).front(), front);
    EXPECT_EQ(namesUnder(turned, Face::front), std::vector<std::string>{"side"});
    EXPECT_EQ(turned.pictures, job.pictures);
  }
  EXPECT_EQ(namesUnder(turned, Face::top), namesUnder(job, Face::top));
  EXPECT_EQ(nextInFront(plate(), 0, Face::top), plate());
}

// A job from somewhere else must not reach for files about the house: only what lies beside it or
// below is opened.
TEST(PictureEdits, ALinkLeadsNowhereButBesideOrBelowTheJob) {
  const auto leadsTo = [](const char* link) {
    Picture picture;
    picture.file = link;
    return linkedFile(QStringLiteral("/jobs/clock/plate.inchwright"), picture);
  };
  EXPECT_EQ(leadsTo("print.png"), QStringLiteral("/jobs/clock/print.png"));
  EXPECT_EQ(leadsTo("prints/a/../front.png"), QStringLiteral("/jobs/clock/prints/front.png"));
  EXPECT_EQ(leadsTo("..png"), QStringLiteral("/jobs/clock/..png")) << "an odd name, and no way up";
  for (const char* away : {"..", "../print.png", "prints/../..", "prints/../../print.png",
                           "/jobs/clock/print.png", "/etc/hostname"}) {
    EXPECT_EQ(leadsTo(away), QString()) << away;
  }
}

TEST(PictureEdits, FourQuarterTurnsAreNone) {
  const Job job = *layPicture(plate(), 0, Face::top, "photo", "bytes");
  Job turned = job;
  for (const int degrees : {90, 180, 270, 0}) {
    turned = *turnAsTaken(turned, "photo");
    EXPECT_EQ(turned.pictures[0].turn, degrees);
  }
  EXPECT_EQ(turned, job);
  EXPECT_FALSE(turnAsTaken(job, "other").ok());
}

TEST(PictureEdits, FromATurnedViewToThePrintAndBack) {
  PictureView view;
  view.at = {"5", "1"};
  // Y of the face runs to the left on the print, and X up.
  view.turn = 90;
  EXPECT_EQ(onPrint({2, 0.5}, view), QPointF(4.5, 3));
  for (const int turn : {0, 90, 180, 270}) {
    view.turn = turn;
    EXPECT_EQ(inView(onPrint({2, 0.5}, view), view), QPointF(2, 0.5)) << turn;
  }
}

class TwoPictures : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    desk.take(plate(), {});
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused = why; });
    lay("left");
    point(0, -2, "0, 0");
    point(4, 0, "4, 2");
    ASSERT_TRUE(work.enter({}));
    desk.applyPart(traced(), "trace");
  }

  void lay(const char* name) {
    desk.apply(*layPicture(desk.job(), 0, Face::top, name, name), "lay");
    work.squareUp();
    ASSERT_EQ(work.doing(), Doing::squaring);
  }

  Part traced() const {
    Part next = desk.part();
    const auto add = [&next](const char* id, auto shape, std::vector<std::string> traced) {
      Feature feature;
      feature.id = id;
      feature.shape = shape;
      feature.traced = std::move(traced);
      next.features.push_back(std::move(feature));
    };
    add("A", kind::Hole{}, {"3.500", "0.500"});
    add("B", kind::Hole{}, {"3.750", "1.750"});
    add("L", kind::Edge{Axis::x, Side::left}, {"0.000"});
    add("F", kind::Edge{Axis::y, Side::front}, {"0.000"});
    return next;
  }

  void point(double x, double y, const char* place) {
    Pointed pointed;
    pointed.at = QPointF(x, y);
    work.point(pointed);
    ASSERT_TRUE(work.enter(QString::fromUtf8(place))) << place << ": " << qPrintable(refused);
  }

  const std::vector<SquaringPoint>& points() {
    return pictureUnder(desk.job(), desk.part(), Face::top)->points;
  }

  Desk desk;
  Work work{desk};
  QString refused;
};

TEST_F(TwoPictures, TheSecondIsSquaredUpByWhatIsTracedOnTheFirst) {
  lay("right");
  Pointed pointed;
  pointed.at = QPointF(1, -3);
  work.point(pointed);
  EXPECT_TRUE(work.prompt().endsWith(QStringLiteral("traced there: A")))
      << qPrintable(work.prompt());
  ASSERT_TRUE(work.enter("A"));
  point(2, 0, "B");
  ASSERT_TRUE(work.enter({}));
  ASSERT_EQ(points().size(), 2u);
  EXPECT_EQ(points()[0].x.value, readLength("3 1/2")->value);
  EXPECT_EQ(points()[0].y.value, readLength("1/2")->value);
  EXPECT_EQ(points()[1].x.value, readLength("3.75")->value);
}

TEST_F(TwoPictures, TwoEdgesAreACornerAndTwoLengthsWhatTheyWere) {
  lay("right");
  point(1, -3, "L, F");
  point(3.5, -1.25, "2 1/2, 1 3/4");
  point(1, -1.25, "L, B");
  ASSERT_TRUE(work.enter({}));
  EXPECT_EQ(points()[2].x.value, Length());
  EXPECT_EQ(points()[2].y.value, readLength("1.75")->value);
  EXPECT_EQ(points()[0].x.value, Length());
  EXPECT_EQ(points()[1].y.value, readLength("1 3/4")->value);
}

TEST_F(TwoPictures, WhatIsNoPlaceOfThisFaceIsRefused) {
  lay("right");
  for (const char* wrong : {"C", "L", "A, F, L", "L, F, A", "F, L"}) {
    Pointed pointed;
    pointed.at = QPointF(1, -3);
    work.point(pointed);
    refused.clear();
    EXPECT_FALSE(work.enter(wrong)) << wrong;
    EXPECT_FALSE(refused.isEmpty()) << wrong;
  }
}

TEST_F(TwoPictures, NothingIsTracedOnOneThatIsNotSquaredUpYet) {
  lay("right");
  work.look();
  work.trace(FeatureKind::hole);
  Pointed pointed;
  pointed.at = QPointF(1, -3);
  work.point(pointed);
  EXPECT_FALSE(work.pending());
  EXPECT_TRUE(refused.contains(QStringLiteral("not squared up"))) << qPrintable(refused);
  work.nextPictureInFront();
  work.point(pointed);
  EXPECT_TRUE(work.pending());
}

TEST_F(TwoPictures, APhotoTakenSidewaysIsTurnedToBeLookedAtAndItsPixelsStay) {
  lay("right");
  work.turnPicture();
  EXPECT_EQ(pictureUnder(desk.job(), desk.part(), Face::top)->turn, 90);
  // What is shown at 3, 1 is the pixel 100 to the right and 300 down.
  point(3, 1, "0, 0");
  EXPECT_EQ(work.marks(), std::vector<QPointF>{QPointF(3, 1)});
  work.turnPicture();
  EXPECT_EQ(work.marks(), std::vector<QPointF>{QPointF(-1, 3)});
  point(-0.5, 2, "1/2, -1");
  ASSERT_TRUE(work.enter({}));
  EXPECT_EQ(points()[0].pixelX, 100);
  EXPECT_EQ(points()[0].pixelY, 300);
  EXPECT_EQ(points()[1].pixelX, 50);
  EXPECT_EQ(points()[1].pixelY, 200);
}

TEST_F(TwoPictures, AWayFromTheLastPointRunsAsItIsSeenOnATurnedPhoto) {
  lay("right");
  work.turnPicture();
  point(1, 1, "0, 0");
  point(4, 1, "3");  // to the right as it is shown: along the pixels' own columns
  EXPECT_TRUE(work.echo({}).text.isEmpty());
  point(4, 3, "2");
  ASSERT_TRUE(work.enter({}));
  ASSERT_EQ(points().size(), 3u);
  EXPECT_EQ(points()[1].x.value, readLength("3")->value);
  EXPECT_EQ(points()[1].y.value, Length());
  EXPECT_EQ(points()[2].x.value, readLength("3")->value);
  EXPECT_EQ(points()[2].y.value, readLength("2")->value);
}

// What was named wrongly would put every trace wrong: no photo is stretched so, nor mirrored.
TEST_F(TwoPictures, PlacesThatNoPhotoCanShowSoAreRefused) {
  lay("right");
  point(0, -3, "0, 0");
  point(3, -3, "3, 0");
  point(0, 0, "0, -3");
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(refused.contains(QStringLiteral("mirrored"))) << qPrintable(refused);
  EXPECT_EQ(work.doing(), Doing::squaring);
  work.back();
  point(0, 0, "2, 1");
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(refused.contains(QStringLiteral("leans"))) << qPrintable(refused);
  work.back();
  point(0, 0, "0, 3");
  EXPECT_TRUE(work.enter({}));
}

TEST_F(TwoPictures, AViewThatThePrintDrawsTurnedIsPlacedSo) {
  const Job before = desk.job();
  desk.chooseFace(Face::right);
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_EQ(work.viewShown()->turn, 0);
  // The print draws Y of the side view upwards and Z to the left: turned by 90 degrees.
  for (int i = 0; i < 3; ++i) work.turnPicture();
  EXPECT_EQ(work.viewShown()->turn, 90);
  EXPECT_EQ(desk.job(), before) << "nothing is said before the corner is pointed at";
  Pointed pointed;
  pointed.at = QPointF(0.25, -5);
  work.point(pointed);
  const PictureView* view = viewOf(desk.part(), Face::right);
  ASSERT_NE(view, nullptr);
  EXPECT_EQ(view->turn, 90);
  EXPECT_EQ(view->picture, "left");
  EXPECT_EQ(offsetOf(*view), QPointF(5, 0.25));
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

TEST_F(TwoPictures, TheNextPictureIsLookedAtWhereAFaceIsOnAnother) {
  lay("right");
  point(1, -3, "A");
  point(2, 0, "B");
  ASSERT_TRUE(work.enter({}));
  desk.chooseFace(Face::front);
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_EQ(work.viewShown()->picture, "right");
  ASSERT_TRUE(work.pass());
  EXPECT_EQ(work.viewShown()->picture, "left");
  ASSERT_TRUE(work.pass());
  EXPECT_EQ(work.viewShown()->picture, "right");
  // Once it is placed it is turned there, and goes to no other picture.
  Pointed pointed;
  pointed.at = QPointF(5, 0);
  work.point(pointed);
  work.look();
  work.turnPicture();
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_FALSE(work.pass());
  EXPECT_EQ(work.viewShown()->picture, "right");
  // Whoever turns to another face meanwhile is asked anew, of that face.
  desk.chooseFace(Face::top);
  EXPECT_EQ(work.doing(), Doing::looking);
}

// What was pointed at to square one face up says nothing of another.
TEST(PictureEdits, SquaringUpEndsWhereAnotherFaceIsTurnedTo) {
  deskApplication();
  Desk desk;
  Work work{desk};
  desk.take(plate(), {});
  desk.apply(*layPicture(desk.job(), 0, Face::top, "photo", "bytes"), "lay");
  work.squareUp();
  ASSERT_EQ(work.doing(), Doing::squaring);
  desk.chooseFace(Face::front);
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(TwoPictures, OfOnePictureThereIsNoOther) {
  desk.chooseFace(Face::right);
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_FALSE(work.pass());
  EXPECT_EQ(work.viewShown()->picture, "left");
}

TEST_F(TwoPictures, AViewThatIsTurnedLaterIsPlacedAgainAndEscapeLeavesItAsItWas) {
  desk.chooseFace(Face::right);
  Pointed pointed;
  pointed.at = QPointF(5, 0);
  work.point(pointed);
  const Job placed = desk.job();
  work.look();
  work.turnPicture();
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_EQ(work.viewShown()->turn, 270);
  work.back();
  EXPECT_EQ(desk.job(), placed);
  work.turnPicture();
  pointed.at = QPointF(0, 0);
  work.point(pointed);
  EXPECT_EQ(viewOf(desk.part(), Face::right)->turn, 270);
  EXPECT_EQ(desk.part().views.size(), placed.parts[0].views.size());
  EXPECT_EQ(desk.part().features.size(), placed.parts[0].features.size());
}

}  // namespace
}  // namespace inchwright::app
