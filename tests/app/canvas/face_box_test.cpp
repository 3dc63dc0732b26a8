#include "app/canvas/face_box.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QTest>

#include "app/canvas/print_view.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class FaceBoxTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
    for (const char* line : {"edge L left", "edge R right", "hole A 1/4", "hole B 1/4", "L R 2"}) {
      ASSERT_TRUE(work.enter(QString::fromUtf8(line))) << line;
    }
    view = std::make_unique<PrintView>(work);
    view->resize(700, 500);
    box = new FaceBox(desk, view.get());
    view->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
  }

  QPushButton* face(const char* name) {
    for (auto* button : box->findChildren<QPushButton*>()) {
      if (button->accessibleName().startsWith(QLatin1String(name))) return button;
    }
    return nullptr;
  }
  QPushButton* angle() { return face("Layout of the views"); }
  QPoint placeOf(const char* name) { return face(name)->pos(); }

  /// How many columns by the left or the right border of a face are blue pencil between the
  /// borders above and below.
  int blueAt(const char* name, bool right) {
    const QImage picture = face(name)->grab().toImage();
    int count = 0;
    for (int x = right ? picture.width() - 6 : 0; x < (right ? picture.width() : 6); ++x) {
      bool blue = true;
      for (int y = 5; y < picture.height() - 5; ++y) {
        blue = blue && picture.pixelColor(x, y) == Look::now().blue;
      }
      if (blue) ++count;
    }
    return count;
  }

  Desk desk;
  Work work{desk};
  std::unique_ptr<PrintView> view;
  FaceBox* box = nullptr;
};

TEST_F(FaceBoxTest, AClickTurnsToAFaceAndTheBoxSaysWhichItIs) {
  EXPECT_TRUE(face("top")->isChecked());
  QTest::mouseClick(face("front"), Qt::LeftButton);
  EXPECT_EQ(desk.face(), Face::front);
  EXPECT_TRUE(face("front")->isChecked());
  EXPECT_FALSE(face("top")->isChecked());
}

TEST_F(FaceBoxTest, ArrowKeysWalkTheFaces) {
  face("top")->setFocus();
  QTest::keyClick(face("top"), Qt::Key_Right);
  EXPECT_NE(desk.face(), Face::top);
  EXPECT_TRUE(desk.face() == Face::left || desk.face() == Face::right);
}

TEST_F(FaceBoxTest, EachFaceSaysHowManyFeaturesItHas) {
  EXPECT_TRUE(face("top")->accessibleName().contains(QLatin1Char('2')));
  EXPECT_TRUE(face("left")->accessibleName().contains(QLatin1Char('0')));
  desk.chooseFace(Face::left);
  ASSERT_TRUE(work.enter(QStringLiteral("hole C 1/8")));
  EXPECT_TRUE(face("left")->accessibleName().contains(QLatin1Char('1')));
}

TEST_F(FaceBoxTest, TheAngleIsKeptInTheJobAndMovesTheViews) {
  EXPECT_FALSE(desk.job().projection);
  EXPECT_TRUE(angle()->text().contains(QLatin1Char('?')));
  const QPoint asked = placeOf("right");
  EXPECT_LT(asked.x(), placeOf("top").x());
  QTest::mouseClick(angle(), Qt::LeftButton);
  EXPECT_EQ(desk.job().projection, Projection::first);
  EXPECT_FALSE(angle()->text().contains(QLatin1Char('?')));
  QTest::mouseClick(angle(), Qt::LeftButton);
  EXPECT_EQ(desk.job().projection, Projection::third);
  QCoreApplication::processEvents();
  EXPECT_GT(placeOf("right").x(), placeOf("top").x());
  EXPECT_GT(placeOf("front").y(), placeOf("top").y());
  desk.undo();
  QCoreApplication::processEvents();
  EXPECT_LT(placeOf("right").x(), placeOf("top").x());
}

TEST_F(FaceBoxTest, AnEdgeThatIsChosenLightsInEveryViewThatShowsIt) {
  desk.chooseFace(Face::bottom);
  const char* showing[] = {"top", "front", "back"};
  for (const char* name : showing) EXPECT_EQ(blueAt(name, false), 0) << name;
  desk.select({{"L"}, {}});
  for (const char* name : showing) {
    EXPECT_GE(blueAt(name, false), 2) << name;
    EXPECT_EQ(blueAt(name, true), 0) << name;
  }
  // Seen square on, the plane is the whole face and no line.
  EXPECT_EQ(blueAt("left", false) + blueAt("left", true), 0);
}

TEST_F(FaceBoxTest, StaysInItsCornerAndGoesAwayWhenAsked) {
  EXPECT_LT(box->geometry().left(), 20);
  EXPECT_GT(box->geometry().bottom(), view->height() - 20);
  view->resize(900, 600);
  EXPECT_LT(box->geometry().left(), 20);
  EXPECT_GT(box->geometry().bottom(), 580);
  box->toggle();
  EXPECT_FALSE(box->isVisible());
  box->toggle();
  EXPECT_TRUE(box->isVisible());
}

}  // namespace
}  // namespace inchwright::app
