// The next picture in front, as an edit of its own.

#include "app/session/picture_edits.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class WorkPicture : public PlateOnDesk {
 protected:
  void SetUp() override {
    put(*layPicture(jobOfPlate("hole A 1/4\n"), 0, Face::top, "print", "bytes"));
  }
};

// The next picture in front is a step of its own too, and undo brings the one before back.
TEST_F(WorkPicture, TheNextPictureInFrontIsAStepOfItsOwn) {
  int refused = 0;
  QObject::connect(&desk, &Desk::refused, &desk, [&] { ++refused; });
  work.nextPictureInFront();
  EXPECT_EQ(refused, 1);
  EXPECT_FALSE(desk.canUndo());
  desk.take(*layPicture(desk.job(), 0, Face::top, "second", "more"), {});
  const auto front = [&] { return pictureUnder(desk.job(), desk.part(), Face::top)->name; };
  const std::string first = front();
  Part moved = desk.part();
  moved.features[0].traced = {"0.400", "0.500"};
  ASSERT_TRUE(desk.applyPart(moved, "Move A", "move A"));
  const Job dragged = desk.job();
  work.nextPictureInFront();
  EXPECT_NE(front(), first);
  EXPECT_EQ(desk.undoTitle(), "The next picture in front");
  desk.undo();
  EXPECT_EQ(front(), first);
  EXPECT_EQ(desk.job(), dragged);
  desk.redo();
  EXPECT_NE(front(), first);
  // What is dragged once that is undone does not join the drag before it.
  desk.undo();
  moved.features[0].traced = {"0.450", "0.500"};
  ASSERT_TRUE(desk.applyPart(moved, "Move A", "move A"));
  desk.undo();
  EXPECT_EQ(desk.job(), dragged);
  work.nextPictureInFront();
  EXPECT_NE(front(), first);
  // While one is squared up its points are of that one: turning to the next leaves it.
  work.nextPictureInFront();
  EXPECT_EQ(front(), first);
  work.squareUp();
  ASSERT_EQ(work.doing(), Doing::squaring);
  work.point({QPointF(1, 1), {}, {}, false});
  work.nextPictureInFront();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_FALSE(work.pending());
}

}  // namespace
}  // namespace inchwright::app
