#include "app/sheet/stack_slip.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>
#include <memory>

#include "app/base/look.h"
#include "app/sheet/sheet_view.h"
#include "app/sheet/stack_bars.h"
#include "core/measure/lettered.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class StackSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    Job job = jobOfPlate();
    Gap gap;
    gap.name = "end shake";
    gap.least = *readLength("0.001");
    gap.greatest = *readLength("0.006");
    GapMember between;
    between.length = *readLength("1.000 ±.002");
    GapMember arbor;
    arbor.length = *readLength(".998 ±.003");
    arbor.sign = -1;
    gap.members = {between, arbor};
    job.gaps = {gap};
    put(job);
    enterLines({"edge L left", "edge F front", "hole A 1/4", "hole B 1/4", "x L A .500 ±.002",
                "x A B 1.000 ±.008", "y F A 1/2", "y F B 1/2", "zero x L", "zero y F"});
    sheet = std::make_unique<SheetView>(desk);
    sheet->resize(700, 600);
    slip = new StackSlip(work, sheet.get());
    sheet->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(sheet.get()));
  }

  QString title() const {
    return slip->findChildren<QLabel*>(QString(), Qt::FindDirectChildrenOnly).front()->text();
  }

  QString words() const {
    QString all;
    for (const QLabel* label : slip->findChildren<QLabel*>())
      all += label->text() + QLatin1Char('\n');
    return all;
  }

  std::unique_ptr<SheetView> sheet;
  StackSlip* slip = nullptr;
};

TEST_F(StackSlipTest, LiesOnTheSheetWhileOneIsStacking) {
  EXPECT_FALSE(slip->isVisible());
  work.stack();
  EXPECT_TRUE(slip->isVisible());
  EXPECT_TRUE(title().contains(QStringLiteral("two ends"))) << title().toStdString();
  work.look();
  EXPECT_FALSE(slip->isVisible());
}

TEST_F(StackSlipTest, ANarrowSheetLosesNoFigureButScrolls) {
  sheet->resize(300, 400);
  work.stack();
  ASSERT_TRUE(work.enter(QStringLiteral("A B")));
  QCoreApplication::processEvents();
  const auto* bars = slip->findChild<StackBars*>();
  const auto* scroll = slip->findChild<QScrollArea*>();
  // The nominal and both ends of it stand in what the names leave.
  EXPECT_GE(bars->width(),
            QFontMetrics(figures(1.1)).horizontalAdvance(QStringLiteral("0.9920")) * 2);
  EXPECT_GT(bars->width(), scroll->viewport()->width());
  EXPECT_GT(scroll->horizontalScrollBar()->maximum(), 0);
  EXPECT_TRUE(scroll->horizontalScrollBar()->isVisible());
}

TEST_F(StackSlipTest, ShowsTheChainAsDrawnAndAsMadeFromZero) {
  work.stack();
  ASSERT_TRUE(work.enter(QStringLiteral("L B")));
  EXPECT_EQ(title(), QStringLiteral("L to B along X"));
  const auto* picture = slip->findChild<StackBars*>();
  // ±0.002 and ±0.008 of the print make ±0.010. From zero at L the budgets of A and B share the
  // 8 thou between them after A has its own 2: B may stray by 6.
  EXPECT_EQ(picture->accessibleDescription(),
            QStringLiteral("as drawn: 1.4900 to 1.5100 at worst; "
                           "as made from this zero: 1.4940 to 1.5060 at worst"));
  EXPECT_TRUE(words().contains(
      QStringLiteral("As drawn it strays ±0.0100 at worst; made from this zero, ±0.0060.")))
      << words().toStdString();
  EXPECT_TRUE(words().contains(QStringLiteral("80 of 100"))) << words().toStdString();
}

TEST_F(StackSlipTest, BarsAreAsWideAsTheMembersMayStray) {
  work.stack();
  ASSERT_TRUE(work.enter(QStringLiteral("L B")));
  auto* picture = slip->findChild<StackBars*>();
  picture->resize(640, picture->heightForWidth(640));
  QImage image(picture->size(), QImage::Format_RGB32);
  image.fill(Qt::white);
  picture->render(&image, QPoint(), QRegion(), QWidget::DrawChildren);
  const qreal line = QFontMetricsF(deskFont()).height() * 1.25;
  QImage wash(1, 1, QImage::Format_RGB32);
  wash.fill(Qt::white);
  QPainter(&wash).fillRect(wash.rect(), Look::now().wash);
  const auto barAt = [&](int row) {
    const int y = static_cast<int>(line * (1.35 + row + 0.5));
    int count = 0;
    for (int x = 0; x < image.width(); ++x) {
      if (image.pixel(x, y) == wash.pixel(0, 0)) ++count;
    }
    return count;
  };
  ASSERT_GT(barAt(0), 10);
  // The outline takes about two pixels at either end of a bar.
  EXPECT_NEAR((barAt(1) + 4.0) / (barAt(0) + 4.0), 4.0, 0.4);
}

TEST_F(StackSlipTest, AGapIsTakenByItsButtonAndJudgedByItsLimits) {
  work.stack();
  QPushButton* button = nullptr;
  for (QPushButton* one : slip->findChildren<QPushButton*>()) {
    if (one->text() == QStringLiteral("end shake")) button = one;
  }
  ASSERT_NE(button, nullptr);
  QTest::mouseClick(button, Qt::LeftButton);
  QCoreApplication::processEvents();
  EXPECT_EQ(title(), QStringLiteral("end shake"));
  EXPECT_EQ(slip->findChild<StackBars*>()->accessibleDescription(),
            QStringLiteral("as drawn: -0.0030 to 0.0070 at worst"));
  EXPECT_TRUE(words().contains(QStringLiteral("At worst it is 0.0040 too little.")))
      << words().toStdString();
  EXPECT_TRUE(words().contains(QStringLiteral("At worst it is 0.0010 too much.")));
  QTest::keyClick(slip, Qt::Key_Escape);
  EXPECT_TRUE(title().contains(QStringLiteral("two ends")));
}

TEST_F(StackSlipTest, SaysWhyNothingAddsUp) {
  ASSERT_TRUE(work.enter(QStringLiteral("hole C 1/4")));
  work.stack();
  ASSERT_TRUE(work.enter(QStringLiteral("L C")));
  EXPECT_EQ(title(), QStringLiteral("Nothing to add up"));
  EXPECT_TRUE(words().contains(QStringLiteral("C"))) << words().toStdString();
}

}  // namespace
}  // namespace inchwright::app
