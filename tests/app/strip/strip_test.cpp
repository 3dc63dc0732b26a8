#include "app/strip/strip.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include "app/base/spoken_english.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class StripTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    strip = std::make_unique<Strip>(work);
    strip->show();
    enterLines({"edge L left", "hole A 1/4"});
  }

  QString echo() { return strip->findChild<QLabel*>(QStringLiteral("echo"))->text(); }
  void type(const char* text) { QTest::keyClicks(strip->line(), QString::fromUtf8(text)); }
  void enter() { QTest::keyClick(strip->line(), Qt::Key_Return); }

  std::unique_ptr<Strip> strip;
};

TEST_F(StripTest, EnterTakesTheLineAndEmptiesIt) {
  type("L A 3/8");
  EXPECT_TRUE(echo().contains(QStringLiteral("L to A along X, 3/8"))) << echo().toStdString();
  EXPECT_TRUE(desk.part().readings.empty());
  enter();
  EXPECT_EQ(strip->line()->text(), QString());
  ASSERT_EQ(desk.part().readings.size(), 1u);
  EXPECT_EQ(desk.part().readings[0].figure.text, "3/8");
}

// What is copied out of a list carries marks of no width that keep a point with its figure.
TEST_F(StripTest, AFigurePastedFromAListIsReadAsItLooks) {
  QGuiApplication::clipboard()->setText(withWholeFigures(QStringLiteral("L A .683")));
  ASSERT_NE(QGuiApplication::clipboard()->text(), QStringLiteral("L A .683"));
  strip->line()->paste();
  EXPECT_EQ(strip->line()->text(), QStringLiteral("L A .683"));
  enter();
  ASSERT_EQ(desk.part().readings.size(), 1u);
  EXPECT_EQ(desk.part().readings[0].figure.text, ".683");
}

// Found by looking: the end of a doubt lay below the strip's edge, where nobody could read it.
TEST_F(StripTest, AnAnswerOfManyLinesFitsTheStrip) {
  strip->resize(560, strip->minimumSizeHint().height() + 2 * strip->fontMetrics().lineSpacing());
  auto* label = strip->findChild<QLabel*>(QStringLiteral("echo"));
  const auto tall = [&] {
    const QRect wide(0, 0, label->width(), QWIDGETSIZE_MAX);
    return QFontMetrics(label->font()).boundingRect(wide, Qt::TextWordWrap, echo()).height();
  };
  type("L A 3/8");
  const int usual = label->fontMetrics().height();
  EXPECT_LE(label->y() + tall(), strip->height());
  strip->line()->clear();
  type("hole Z 15/64 DRILL THRU, 1/4 REAM 1/2 DEEP");
  EXPECT_LT(label->fontMetrics().height(), usual);
  EXPECT_LE(label->y() + tall(), strip->height()) << echo().toStdString();
  EXPECT_EQ(label->toolTip(), QString());
  strip->resize(180, strip->height());
  EXPECT_EQ(label->toolTip(), echo());
  strip->resize(900, strip->height() * 2);
  EXPECT_EQ(label->fontMetrics().height(), usual);
  EXPECT_EQ(label->toolTip(), QString());
}

TEST_F(StripTest, ARefusedLineStaysAndSaysWhy) {
  type("L Q 3/8");
  enter();
  EXPECT_EQ(strip->line()->text(), QStringLiteral("L Q 3/8"));
  EXPECT_TRUE(echo().startsWith(QStringLiteral("not taken: "))) << echo().toStdString();
  QTest::keyClick(strip->line(), Qt::Key_Backspace);
  EXPECT_FALSE(echo().startsWith(QStringLiteral("not taken: "))) << echo().toStdString();
}

TEST_F(StripTest, AFaultIsPointedAtByTheCharacterNotTheByte) {
  type("±½x");
  EXPECT_TRUE(echo().contains(QStringLiteral("“")) || echo().startsWith(QStringLiteral("so far")))
      << echo().toStdString();
}

TEST_F(StripTest, EscapeEmptiesTheLineFirstAndThenStepsBack) {
  work.read();
  type("L");
  enter();
  ASSERT_EQ(work.chosen(), (std::vector<Id>{"L"}));
  type("A 3");
  QTest::keyClick(strip->line(), Qt::Key_Escape);
  EXPECT_EQ(strip->line()->text(), QString());
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L"}));
  QTest::keyClick(strip->line(), Qt::Key_Escape);
  EXPECT_TRUE(work.chosen().empty());
  EXPECT_EQ(work.doing(), Doing::reading);
  QTest::keyClick(strip->line(), Qt::Key_Escape);
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(StripTest, AShortcutThatNothingAnswersToWritesNothing) {
  QTest::keyClick(strip->line(), 's', Qt::AltModifier);
  EXPECT_EQ(strip->line()->text(), QString());
  QTest::keyClick(strip->line(), 's', Qt::AltModifier | Qt::ControlModifier);
  QTest::keyClick(strip->line(), 's');
  EXPECT_TRUE(strip->line()->text().endsWith(QLatin1Char('s')));
}

TEST_F(StripTest, TheOfferStandsInTheEmptyLine) {
  work.trace(FeatureKind::hole);
  work.point({{1, 1}, {}, {}, false});
  EXPECT_TRUE(strip->line()->placeholderText().startsWith(QStringLiteral("B")))
      << strip->line()->placeholderText().toStdString();
  type("3/8 ream");
  EXPECT_TRUE(echo().contains(QStringLiteral("hole B"))) << echo().toStdString();
  enter();
  ASSERT_NE(desk.part().feature("B"), nullptr);
  work.point({{2, 1}, {}, {}, false});
  EXPECT_TRUE(strip->line()->placeholderText().startsWith(QStringLiteral("C 3/8 ream")));
}

TEST_F(StripTest, ScreenReadersHearTheQuestionWithTheLine) {
  work.read();
  EXPECT_EQ(strip->line()->accessibleDescription(), work.prompt());
  EXPECT_FALSE(strip->line()->accessibleName().isEmpty());
}

}  // namespace
}  // namespace inchwright::app
