// Slips larger than the screen are scrolled, with their buttons in sight.

#include "app/window/on_screen.h"

#include <gtest/gtest.h>

#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QTest>
#include <QVBoxLayout>

#include "app/window/desk_style.h"
#include "app/window/start_slip.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class OnScreenTest : public testing::Test {
 protected:
  void SetUp() override { keepSlipsOnScreen(deskApplication()); }

  /// A slip of so many lines with a button at its foot.
  void lay(int lines, int wide) {
    auto* column = new QVBoxLayout(&slip);
    for (int i = 0; i < lines; ++i) {
      auto* line = new QLabel(QString::number(i), &slip);
      line->setMinimumSize(wide, 30);
      column->addWidget(line);
    }
    auto* foot = new QHBoxLayout;
    done = new QPushButton(QStringLiteral("Done"), &slip);
    foot->addStretch(1);
    foot->addWidget(done);
    column->addLayout(foot);
    slip.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&slip));
  }
  QRect screen() const { return slip.screen()->availableGeometry(); }

  QDialog slip;
  QPushButton* done = nullptr;
};

TEST_F(OnScreenTest, WhatFitsIsLeftAsItIs) {
  lay(5, 200);
  EXPECT_EQ(slip.findChild<QScrollArea*>(), nullptr);
}

TEST_F(OnScreenTest, OfATallOneTheFootStaysInSight) {
  lay(100, 200);
  EXPECT_TRUE(screen().contains(slip.geometry())) << slip.height();
  ASSERT_NE(slip.findChild<QScrollArea*>(), nullptr);
  const QRect button(done->mapTo(&slip, QPoint(0, 0)), done->size());
  EXPECT_TRUE(slip.rect().contains(button));
  EXPECT_TRUE(done->isVisible());
  // Shown again it is the same.
  slip.hide();
  slip.show();
  EXPECT_EQ(slip.findChildren<QScrollArea*>().size(), 1);
}

TEST_F(OnScreenTest, AWideOneIsNoWiderThanTheScreen) {
  lay(3, screen().width() + 300);
  EXPECT_LE(slip.width(), screen().width());
}

// 1280 by 720 at a scale of 1.5, and the 800 by 600 of a run without a display.
TEST_F(OnScreenTest, TheChoiceOfWhatLiesOnTheDeskFitsASmallScreen) {
  StartSlip start;
  EXPECT_LE(start.minimumSizeHint().width(), 792);
  EXPECT_LE(start.minimumSizeHint().height(), 444);
  start.resize(792, 444);
  start.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&start));
  EXPECT_LE(start.width(), 792);
  EXPECT_LE(start.height(), 444);
  EXPECT_EQ(start.findChild<QScrollArea*>(), nullptr);
  const auto buttons = start.findChildren<QPushButton*>();
  EXPECT_EQ(buttons.size(), 5);
  for (const QPushButton* one : buttons) {
    const QRect box(one->mapTo(&start, QPoint(0, 0)), one->size());
    EXPECT_TRUE(start.rect().contains(box)) << qPrintable(one->text());
  }
}

}  // namespace
}  // namespace inchwright::app
