#include "app/sheet/sheet_view.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QScrollBar>
#include <QTest>

#include "app/sheet/setup_slip.h"
#include "tests/support/big_plate.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class SheetViewTest : public PlateOnDesk {
 protected:
  void SetUp() override { put(jobOfPlate("hole A 1/4 ream\nL A 3/8\nL R 2\nF A 1/2\nF K 1")); }
};

TEST_F(SheetViewTest, PagesAreThoseOfTheDesk) {
  SheetView view(desk);
  EXPECT_EQ(view.pageCount(), static_cast<int>(desk.sheet()->pageCount()));
  desk.take(Job{}, {});
  EXPECT_EQ(view.pageCount(), 0);
}

TEST_F(SheetViewTest, ARefusedZeroLeavesBarePaper) {
  SheetView view(desk);
  view.resize(400, 500);
  desk.take(Job{}, {});
  const QImage picture = view.grab().toImage();
  EXPECT_EQ(picture.pixelColor(200, 60), Look::now().sheet);
  EXPECT_EQ(picture.pixelColor(2, 250), Look::now().desk);
}

// A page is drawn as far as it is in sight, and whole once it moves up.
TEST_F(SheetViewTest, APageComingIntoSightLooksAsWhenItIsDrawnWhole) {
  Job job;
  job.parts.push_back(bigPlate(200));
  desk.take(job, {});
  constexpr QSize kSize{400, 500};
  SheetView asItComes(desk), whole(desk);
  for (SheetView* view : {&asItComes, &whole}) {
    view->resize(kSize);
    view->fit(SheetView::Fit::width);
    view->zoomBy(1);  // the scale stays, whatever the size
  }
  ASSERT_GT(whole.pageCount(), 1);
  whole.resize(kSize.width(), 100 * kSize.height());
  whole.grab();
  whole.resize(kSize);
  QScrollBar* const bar = asItComes.verticalScrollBar();
  ASSERT_GT(bar->maximum(), 2 * kSize.height());
  for (int value = 0; value < 2 * kSize.height(); value += 61) {
    bar->setValue(value);
    whole.verticalScrollBar()->setValue(value);
    ASSERT_EQ(asItComes.grab().toImage(), whole.grab().toImage()) << "scrolled to " << value;
  }
}

TEST_F(SheetViewTest, KeysThatWriteAreHandedOn) {
  SheetView view(desk);
  int typed = 0;
  QObject::connect(&view, &SheetView::typed, [&typed] { ++typed; });
  QTest::keyClick(&view, Qt::Key_7);
  QTest::keyClick(&view, Qt::Key_Home);
  EXPECT_EQ(typed, 1);
}

TEST_F(SheetViewTest, StockTypedIntoTheSlipIsOneStepOfUndo) {
  SetupSlip slip(desk);
  QLineEdit* left = nullptr;
  for (QLineEdit* field : slip.findChildren<QLineEdit*>()) {
    if (field->accessibleName() == QStringLiteral("Stock on the left")) left = field;
  }
  ASSERT_NE(left, nullptr);
  slip.show();
  left->setFocus();
  QTest::keyClicks(left, QStringLiteral("1/16"));
  QTest::keyClick(left, Qt::Key_Return);
  EXPECT_EQ(desk.setup().stockOn(Side::left), readLength("1/16", {})->value);
  desk.undo();
  EXPECT_TRUE(left->text().isEmpty());
  EXPECT_FALSE(desk.canUndo());
}

}  // namespace
}  // namespace inchwright::app
