// How the desk lies on small and large screens, and what it remembers.

#include <gtest/gtest.h>

#include <QMenuBar>
#include <QPushButton>
#include <QSplitter>
#include <QTemporaryDir>
#include <QToolButton>
#include <cmath>

#include "app/canvas/print_view.h"
#include "app/canvas/zoom_slip.h"
#include "app/sheet/sheet_view.h"
#include "app/window/hands_row.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class DeskLayoutTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    ASSERT_TRUE(window->files().openSample());
  }

  QPushButton* word(const char* name) {
    for (auto* button : window->findChild<HandsRow*>()->findChildren<QPushButton*>()) {
      if (button->accessibleName() == QLatin1String(name)) return button;
    }
    return nullptr;
  }
};

// 1280 by 720 pixels at 150 %.
TEST_F(DeskLayoutTest, NothingIsOffASmallScreen) {
  const QSize small(853, 480);
  EXPECT_LE(window->minimumSizeHint().width(), small.width());
  EXPECT_LE(window->minimumSizeHint().height(), small.height());
  window->resize(small);
  QCoreApplication::processEvents();
  ASSERT_EQ(window->size(), small);
  const QRect all = window->rect();
  for (const auto* widget : window->findChildren<QWidget*>()) {
    const bool word = qobject_cast<const QPushButton*>(widget) != nullptr ||
                      qobject_cast<const QToolButton*>(widget) != nullptr ||
                      qobject_cast<const QLineEdit*>(widget) != nullptr;
    if (!word || !widget->isVisible()) continue;
    const QRect lies(widget->mapTo(window.get(), QPoint(0, 0)), widget->size());
    EXPECT_TRUE(all.contains(lies))
        << qPrintable(widget->accessibleName()) << " at " << lies.x() << ", " << lies.y();
  }
  // The two sheets keep most of it.
  EXPECT_GT(window->print().height(), 480 * 45 / 100);
}

TEST_F(DeskLayoutTest, WhereItIsNarrowTheWordsFoldAndTheirKeysStay) {
  window->resize(1280, 720);
  QCoreApplication::processEvents();
  EXPECT_TRUE(word("Midway")->isVisible());
  window->resize(window->minimumSizeHint().width(), 480);
  QCoreApplication::processEvents();
  EXPECT_FALSE(word("Midway")->isVisible());
  EXPECT_TRUE(word("What the print shows without a figure")->isVisible());
  QTest::keyClick(line(), Qt::Key_M, Qt::AltModifier);
  EXPECT_EQ(window->work().doing(), Doing::relating);
}

TEST_F(DeskLayoutTest, TextIsOfItsOwnSizeWhateverTheSystemHas) {
  EXPECT_EQ(QFontInfo(deskFont()).pixelSize(), kUsualTextSize);
  chooseTextSize(20);
  EXPECT_EQ(QFontInfo(deskFont()).pixelSize(), 20);
  EXPECT_EQ(QFontInfo(figures(2)).pixelSize(), 40);
  chooseTextSize(kUsualTextSize);
}

TEST_F(DeskLayoutTest, ByLamplightPaperIsLightStill) {
  for (const Look* look : {&Look::day(), &Look::lamplight()}) {
    for (const QColor& paper : {look->print, look->sheet, look->slip}) {
      EXPECT_GT(paper.lightness(), 150);
      for (const QColor& ink : {look->pencil, look->faint, look->blue, look->red}) {
        // Relative luminance and contrast as WCAG 2.1 defines them.
        const auto luminance = [](const QColor& colour) {
          const auto part = [](double c) {
            return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
          };
          return 0.2126 * part(colour.redF()) + 0.7152 * part(colour.greenF()) +
                 0.0722 * part(colour.blueF());
        };
        EXPECT_GE((luminance(paper) + 0.05) / (luminance(ink) + 0.05), 4.5)
            << qPrintable(ink.name()) << " on " << qPrintable(paper.name());
      }
    }
  }
  EXPECT_LT(Look::lamplight().desk.lightness(), 60);
}

TEST_F(DeskLayoutTest, ButtonsZoomEachSheetAndSayHowLargeItIs) {
  const auto zooms = window->findChildren<ZoomSlip*>();
  ASSERT_EQ(zooms.size(), 2);
  const qreal print = window->print().map().scale();
  const qreal sheet = window->sheet().pixelsPerInch();
  for (ZoomSlip* zoom : zooms) {
    QTest::mouseClick(named<QPushButton>(zoom, QStringLiteral("Nearer")), Qt::LeftButton);
    const auto* percent = named<QPushButton>(zoom, QStringLiteral("All of it"));
    ASSERT_NE(percent, nullptr);
    EXPECT_TRUE(percent->text().endsWith(QLatin1Char('%')));
  }
  EXPECT_NEAR(window->print().map().scale(), 1.25 * print, 1e-6);
  EXPECT_NEAR(window->sheet().pixelsPerInch(), 1.25 * sheet, 1e-6);
}

TEST_F(DeskLayoutTest, AFileIsShownAsItWasLookedAtWhenItWasLeft) {
  QTemporaryDir folder;
  toSave = folder.filePath(QStringLiteral("plate.inchwright"));
  ASSERT_TRUE(window->files().saveAs());
  window->desk().chooseFace(Face::front);
  window->print().lookAt(QPointF(1, 0.2), 321);
  window->close();
  window.reset();
  DeskWindow next(answers());
  next.resize(1280, 720);
  next.show();
  ASSERT_TRUE(next.files().open(toSave));
  EXPECT_EQ(next.desk().face(), Face::front);
  EXPECT_NEAR(next.print().map().scale(), 321, 1e-3);
  const QPointF middle = next.print().map().toInches(QRectF(next.print().rect()).center());
  EXPECT_NEAR(middle.x(), 1, 1e-3);
  EXPECT_NEAR(middle.y(), 0.2, 1e-3);
}

}  // namespace
}  // namespace inchwright::app
