// Saying where a face is drawn on the sheet of another, and looking at what is there.

#include <QStringList>

#include "app/session/picture_edits.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class ViewActivityTest : public PlateOnDesk {
 protected:
  ViewActivityTest() {
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
  }
  void SetUp() override {
    PlateOnDesk::SetUp();
    const Lettered none = *readLength("0"), one = *readLength("1");
    Job job = jobOfPlate("edge L left\n");
    job.parts[0].features[0].traced = {"0.500"};
    for (const char* name : {"print", "second"}) {
      job = *layPicture(job, 0, Face::top, name, name);
      job = *setPicturePoints(job, name, {{0, 0, none, none}, {100, 0, one, none}});
    }
    put(job);
  }
  void click(double x, double y) { work.point({QPointF(x, y), {}, {}, false}); }

  QStringList refused;
};

TEST_F(ViewActivityTest, AFaceWithoutAPictureIsLookedForAsItIsTurnedTo) {
  const Job before = desk.job();
  desk.chooseFace(Face::front);
  ASSERT_EQ(work.doing(), Doing::placingView);
  EXPECT_TRUE(work.prompt().contains("corner of its left and bottom sides"));
  EXPECT_TRUE(work.prompt().contains("Tab shows the next picture"));
  const std::string first = work.viewShown()->picture;
  EXPECT_TRUE(work.pass());
  EXPECT_NE(work.viewShown()->picture, first);
  EXPECT_TRUE(work.pass());
  EXPECT_EQ(work.viewShown()->picture, first) << "the first again behind the last";
  work.turnPicture();
  EXPECT_EQ(work.viewShown()->turn, 270);
  for (int i = 0; i < 3; ++i) work.turnPicture();
  EXPECT_EQ(work.viewShown()->turn, 0);
  EXPECT_EQ(desk.job(), before) << "nothing is placed yet";
  // L is half an inch from the zero: its corner, at 2, puts the zero of the face at 1 1/2.
  click(2, 1);
  const PictureView* placed = viewOf(desk.part(), Face::front);
  ASSERT_NE(placed, nullptr);
  EXPECT_EQ(placed->picture, first);
  EXPECT_EQ(placed->at, (std::vector<std::string>{"1.500", "1.000"}));
  EXPECT_EQ(desk.part().features.size(), 2u) << "the bottom is traced with it";
  EXPECT_EQ(work.doing(), Doing::tracing);
  EXPECT_EQ(work.traceKind(), FeatureKind::edge);
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

TEST_F(ViewActivityTest, EscapeOrAnotherFaceLeavesItUnplaced) {
  const Job before = desk.job();
  desk.chooseFace(Face::front);
  EXPECT_FALSE(work.enter({}));
  EXPECT_EQ(refused.size(), 1);
  EXPECT_EQ(work.doing(), Doing::placingView);
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
  desk.chooseFace(Face::left);
  EXPECT_EQ(work.doing(), Doing::placingView);
  desk.chooseFace(Face::top);
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_FALSE(work.viewShown());
  work.placeView();
  EXPECT_EQ(work.doing(), Doing::looking) << "it has a picture";
  EXPECT_EQ(refused.size(), 2);
  EXPECT_EQ(desk.job(), before);
}

TEST_F(ViewActivityTest, PointingChoosesAndShiftAddsAndTakesAway) {
  enterLines({"edge R right", "hole A 1/4", "L A 3/8"});
  const Id reading = desk.part().readings[0].id;
  const auto point = [&](const char* place, const Id& on, bool shift) {
    work.point({{}, place, on, shift});
  };
  point("A", {}, false);
  point("R", {}, true);
  EXPECT_EQ(desk.selection(), (Selection{{"A", "R"}, {}}));
  EXPECT_EQ(work.prompt(), "Chosen: A, R");
  point("A", {}, true);
  EXPECT_EQ(desk.selection(), (Selection{{"R"}, {}}));
  point("", reading, false);
  EXPECT_EQ(desk.selection(), (Selection{{}, {reading}}));
  EXPECT_TRUE(work.prompt().contains("A figure typed here corrects it"));
  point("A", reading, true);
  EXPECT_EQ(desk.selection(), (Selection{{"A"}, {reading}})) << "a place lies over a dimension";
  work.back();
  EXPECT_TRUE(desk.selection().empty());
  point("A", {}, false);
  point("", {}, false);
  EXPECT_TRUE(desk.selection().empty()) << "bare paper lets go";
  int left = 0;
  QObject::connect(&work, &Work::allLeft, &work, [&] { ++left; });
  work.back();
  EXPECT_EQ(left, 1);
}

TEST_F(ViewActivityTest, AJobBeginsWithTheNameOfItsPart) {
  desk.take(Job(), {});
  EXPECT_EQ(work.prompt(), "Begin with the name of the part");
  EXPECT_FALSE(work.enter("  "));
  EXPECT_FALSE(desk.hasPart());
  enterLines({"  Front plate "});
  EXPECT_EQ(desk.part().name, "Front plate");
  EXPECT_EQ(desk.undoTitle(), "Begin Front plate");
  EXPECT_TRUE(work.prompt().startsWith("Trace a first edge or hole"));
  desk.undo();
  EXPECT_FALSE(desk.hasPart());
}

}  // namespace
}  // namespace inchwright::app
