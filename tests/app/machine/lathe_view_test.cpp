#include "app/machine/lathe_view.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <memory>

#include "app/base/look.h"
#include "core/turned/cut_done.h"
#include "tests/support/kit_on_desk.h"

namespace inchwright::app {
namespace {

/// The arbor of the sample, which is turned from both ends.
class LatheViewTest : public KitOnDesk {
 protected:
  void SetUp() override {
    KitOnDesk::SetUp();
    desk.choosePart(5);
    ASSERT_EQ(desk.part().name, "Ratchet arbor");
    ASSERT_NE(desk.lathe(), nullptr);
    open();
  }
  void open() {
    view = std::make_unique<LatheView>(desk);
    view->resize(1280, 720);
    view->show();
  }
  void key(Qt::Key one) { QTest::keyClick(view.get(), one); }
  const std::vector<Cut>& cuts() const { return desk.lathe()->cuts; }
  bool done(std::size_t cut) const {
    return isCutDone(desk.part(), desk.setup().name, cuts()[cut]);
  }
  QString head() const { return view->findChild<QLabel*>()->text(); }

  std::unique_ptr<LatheView> view;
};

TEST_F(LatheViewTest, BeginsWithWhatToMindAndGoesOnCutByCut) {
  EXPECT_EQ(view->cut(), -1);
  EXPECT_TRUE(view->accessibleDescription().contains(QStringLiteral("held by the left end")));
  EXPECT_TRUE(view->accessibleDescription().contains(QStringLiteral("counts the diameter")));
  key(Qt::Key_Space);
  EXPECT_EQ(view->cut(), 0);
  EXPECT_EQ(cuts()[0].op, CutOp::face);
  EXPECT_TRUE(view->accessibleDescription().startsWith(QStringLiteral("face R, Z 0.000")))
      << qPrintable(view->accessibleDescription());
  for (std::size_t i = 0; i < cuts().size(); ++i) {
    EXPECT_FALSE(done(i));
    key(Qt::Key_Space);
    EXPECT_TRUE(done(i)) << i;
  }
}

TEST_F(LatheViewTest, OpensWhereOneLeftOffAndUndoTakesTheTickBack) {
  for (const Qt::Key one : {Qt::Key_Right, Qt::Key_Space, Qt::Key_Space}) key(one);
  open();
  EXPECT_EQ(view->cut(), 2);
  desk.undo();
  EXPECT_FALSE(done(1));
  open();
  EXPECT_EQ(view->cut(), 1);
}

TEST_F(LatheViewTest, ACutThatHasOtherFiguresIsNotDone) {
  key(Qt::Key_Right);
  for (std::size_t i = 0; i < cuts().size(); ++i) key(Qt::Key_Space);
  Part part = desk.part();
  for (Feature& feature : part.features) {
    if (feature.id == "B") feature.as<kind::Outside>()->diameter = *readLength("7/16");
  }
  desk.applyPart(part, QStringLiteral("change"));
  open();
  const Cut& open = cuts()[static_cast<std::size_t>(view->cut())];
  EXPECT_EQ(open.op, CutOp::rough);
  EXPECT_EQ(open.of, std::vector<Id>{"B"});
}

TEST_F(LatheViewTest, ALimitIsSaidBesideTheFinishingCut) {
  key(Qt::Key_Right);
  while (cuts()[static_cast<std::size_t>(view->cut())].op != CutOp::finish ||
         cuts()[static_cast<std::size_t>(view->cut())].of != std::vector<Id>{"P"}) {
    const int before = view->cut();
    key(Qt::Key_Right);
    ASSERT_NE(view->cut(), before);
  }
  bool said = false;
  for (const auto* label : view->findChildren<QLabel*>()) {
    said = said || label->text().contains(QStringLiteral("0.1860 to 0.1865"));
  }
  EXPECT_TRUE(said);
}

TEST_F(LatheViewTest, ClicksOnTheFiguresGoBackAndOn) {
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, QPoint(1000, 300));
  EXPECT_EQ(view->cut(), 0);
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, QPoint(200, 300));
  EXPECT_EQ(view->cut(), -1);
}

TEST_F(LatheViewTest, PaintsWithoutSpillingOver) {
  key(Qt::Key_Right);
  const QImage picture = view->grab().toImage();
  ASSERT_FALSE(picture.isNull());
  // The outermost pixels stay paper.
  const QColor paper = Look::now().sheet;
  for (int x = 0; x < picture.width(); x += 7) {
    EXPECT_EQ(picture.pixelColor(x, 2), paper);
  }
}

}  // namespace
}  // namespace inchwright::app
