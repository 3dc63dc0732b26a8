#include "app/canvas/view_slip.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QTest>

#include "app/canvas/print_view.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class ViewSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge R right", "hole A 1/4", "hole B 1/4", "L R 2"});
    view = std::make_unique<PrintView>(work);
    view->resize(700, 500);
    slip = new ViewSlip(desk, view.get());
    view->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
  }

  /// The one of the six words, or the lone one that stays when the slip is closed.
  QPushButton* word(const char* name, bool ofChoice = true) {
    for (auto* button : slip->findChildren<QPushButton*>()) {
      if (button->isCheckable() == ofChoice &&
          button->accessibleName().startsWith(QLatin1String(name))) {
        return button;
      }
    }
    return nullptr;
  }
  QPushButton* angle() { return word("Layout of the views", false); }

  std::unique_ptr<PrintView> view;
  ViewSlip* slip = nullptr;
};

TEST_F(ViewSlipTest, SaysInWordsWhichViewItIsAndOpensToAskForAnother) {
  QPushButton* now = word("seen from above", false);
  ASSERT_NE(now, nullptr);
  EXPECT_FALSE(slip->isOpen());
  const int closed = slip->height();
  QTest::mouseClick(now, Qt::LeftButton);
  EXPECT_TRUE(slip->isOpen());
  EXPECT_GT(slip->height(), 3 * closed);
  QPushButton* front = word("seen from the front");
  ASSERT_NE(front, nullptr);
  EXPECT_TRUE(word("seen from above")->isChecked());
  QTest::mouseClick(front, Qt::LeftButton);
  EXPECT_EQ(desk.face(), Face::front);
  EXPECT_TRUE(now->accessibleName().startsWith(QStringLiteral("seen from the front")));
}

TEST_F(ViewSlipTest, ArrowKeysWalkTheViewsAndEscapeCloses) {
  slip->setOpen(true);
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
  EXPECT_NE(desk.face(), Face::top);
  EXPECT_TRUE(slip->isOpen());
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
  EXPECT_FALSE(slip->isOpen());
}

TEST_F(ViewSlipTest, EachViewSaysHowMuchIsDrawnThere) {
  slip->setOpen(true);
  EXPECT_TRUE(word("seen from above")->accessibleName().contains(QLatin1Char('2')));
  EXPECT_TRUE(word("seen from the left")->accessibleName().contains(QLatin1Char('0')));
  desk.chooseFace(Face::left);
  ASSERT_TRUE(work.enter(QStringLiteral("hole C 1/8")));
  EXPECT_TRUE(word("seen from the left")->accessibleName().contains(QLatin1Char('1')));
}

TEST_F(ViewSlipTest, TheLayoutOfTheViewsIsKeptInTheJob) {
  slip->setOpen(true);
  EXPECT_FALSE(desk.job().projection);
  EXPECT_TRUE(angle()->text().contains(QLatin1Char('?')));
  QTest::mouseClick(angle(), Qt::LeftButton);
  EXPECT_EQ(desk.job().projection, Projection::first);
  EXPECT_FALSE(angle()->text().contains(QLatin1Char('?')));
  QTest::mouseClick(angle(), Qt::LeftButton);
  EXPECT_EQ(desk.job().projection, Projection::third);
  desk.undo();
  EXPECT_EQ(desk.job().projection, Projection::first);
}

TEST_F(ViewSlipTest, AnEdgeThatIsChosenLightsInThePictures) {
  slip->setOpen(true);
  const auto blueIn = [this](const char* name) {
    const QImage picture = word(name)->grab().toImage();
    int count = 0;
    for (int y = 0; y < picture.height(); ++y) {
      for (int x = 0; x < picture.width() / 3; ++x) {
        count += picture.pixelColor(x, y) == Look::now().blue;
      }
    }
    return count;
  };
  const int before = blueIn("seen from the front");
  desk.select({{"L"}, {}});
  EXPECT_GT(blueIn("seen from the front"), before);
  desk.select({});
  EXPECT_EQ(blueIn("seen from the front"), before);
}

TEST_F(ViewSlipTest, ThePartIsAsLongAsItsEdgesSay) {
  for (const char* line : {"edge F front", "edge K back", "y F K 1"}) {
    ASSERT_TRUE(work.enter(QString::fromUtf8(line))) << line;
  }
  const TurnedPart part = turnedPart(desk);
  EXPECT_DOUBLE_EQ(part.size[0], 1);
  EXPECT_DOUBLE_EQ(part.size[1], 0.5);
  EXPECT_TRUE(part.lit.empty());
  desk.select({{"K"}, {}});
  EXPECT_EQ(turnedPart(desk).lit, (std::vector<TurnedPart::Plane>{{Axis::y, 1}}));
}

TEST_F(ViewSlipTest, StaysInItsCornerAndGoesAwayWhenAsked) {
  EXPECT_LT(slip->geometry().left(), 20);
  EXPECT_GT(slip->geometry().bottom(), view->height() - 20);
  view->resize(900, 600);
  EXPECT_LT(slip->geometry().left(), 20);
  EXPECT_GT(slip->geometry().bottom(), 580);
  slip->toggle();
  EXPECT_FALSE(slip->isVisible());
  slip->toggle();
  EXPECT_TRUE(slip->isVisible());
}

}  // namespace
}  // namespace inchwright::app
