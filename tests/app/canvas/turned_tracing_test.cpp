// A turned part is traced from its side view by the mouse: the print's centre line by two clicks,
// then each surface by one.
#include <gtest/gtest.h>

#include <QTest>
#include <memory>

#include "app/canvas/print_view.h"
#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr const char* kSample = INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright";

/// The sample's ratchet arbor over its print, with nothing but its shoulders traced.
class TurnedTracingTest : public ::testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    auto job = loadDocument(kSample);
    ASSERT_TRUE(job.ok());
    Part part = job->parts[5];
    ASSERT_EQ(part.name, "Ratchet arbor");
    std::erase_if(part.features, [](const Feature& one) { return !one.is<kind::Edge>(); });
    part.turned = false;
    part.setups.clear();
    job->parts = {part};
    job->gaps.clear();
    job->mates.clear();
    desk.take(*job, QString::fromUtf8(kSample));
    view = std::make_unique<PrintView>(work);
    view->resize(1100, 700);
    view->show();
    view->fit();
  }
  /// A click on the very spot, inches along the part and from its axis.
  void click(double x, double y) {
    QTest::mouseClick(view.get(), Qt::LeftButton, Qt::ControlModifier,
                      view->map().toWidget(QPointF(x, y)).toPoint());
  }
  void putCentreLine() {
    work.traceCentreLine();
    click(0.8125, 0.1875);
    click(0.8125, -0.1875);
  }
  bool type(const char* text) { return work.enter(QString::fromUtf8(text)); }

  Desk desk;
  Work work{desk};
  std::unique_ptr<PrintView> view;
};

TEST_F(TurnedTracingTest, TwoClicksPutTheCentreLineHalfWay) {
  putCentreLine();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_TRUE(desk.part().turned);
  const Feature* axis = desk.part().feature("CL");
  ASSERT_NE(axis, nullptr);
  ASSERT_EQ(axis->traced.size(), 2u);
  EXPECT_EQ(axis->traced[1], "0.000");  // nothing is known of Z
  EXPECT_NEAR(*tracedAlong(*axis, Axis::y), 0, 0.01);
  // It is kept with the document.
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok()) << again.error().place << again.error().text;
  EXPECT_EQ(*again, desk.job());
  desk.undo();
  EXPECT_FALSE(desk.part().turned);
}

TEST_F(TurnedTracingTest, OneClickSaysBetweenWhichShouldersAndTheFigureIsTyped) {
  putCentreLine();
  work.trace(FeatureKind::outside);
  click(0.82, 0.1875);
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("S to N"))) << qPrintable(work.prompt());
  EXPECT_TRUE(work.offer().isEmpty());  // never a figure
  ASSERT_TRUE(type("3/8"));
  const Feature& made = desk.part().features.back();
  ASSERT_TRUE(made.is<kind::Outside>());
  EXPECT_EQ(*betweenOf(made), (std::vector<Id>{"S", "N"}));
  EXPECT_EQ(diameterOf(made)->text, "3/8");
  EXPECT_EQ(made.traced.size(), 2u);
  // It goes on with the next.
  click(1.0, 0.093);
  ASSERT_TRUE(type(".1860/.1865"));
  EXPECT_EQ(*betweenOf(desk.part().features.back()), (std::vector<Id>{"N", "R"}));
  // And it is on my sheet: the part is in the lathe.
  ASSERT_NE(desk.lathe(), nullptr);
  EXPECT_EQ(desk.lathe()->rows.size(), 2u);
}

TEST_F(TurnedTracingTest, TheTracingSpeaksAgainstADiameter) {
  putCentreLine();
  work.trace(FeatureKind::outside);
  click(0.82, 0.1875);
  // A sixteenth off is no more than a click may be.
  for (const char* near : {"3/8", "27/64", "21/64"}) {
    EXPECT_FALSE(work.echo(QString::fromUtf8(near)).doubtful) << near;
  }
  for (const char* far : {"15/32", "9/32"}) {
    EXPECT_TRUE(work.echo(QString::fromUtf8(far)).doubtful) << far;
  }
  const Echo echo = work.echo(QStringLiteral("3/4"));
  EXPECT_TRUE(echo.doubtful);
  EXPECT_TRUE(echo.text.contains(QStringLiteral("the tracing says about 3/8")))
      << qPrintable(echo.text);
}

TEST_F(TurnedTracingTest, OtherKindsAreTracedAlike) {
  work.trace(FeatureKind::taper);
  click(0.4, 0.118);
  ASSERT_TRUE(type("large 1/4 per_foot 1/2"));
  EXPECT_EQ(*betweenOf(desk.part().features.back()), (std::vector<Id>{"L", "S"}));
  work.trace(FeatureKind::screwed);
  click(1.0, 0.093);
  ASSERT_TRUE(type("10-32 UNF"));
  EXPECT_EQ(desk.part().features.back().as<kind::Screwed>()->thread, "10-32 UNF");
  work.trace(FeatureKind::chamfer);
  click(1.18, 0.09);
  ASSERT_TRUE(type("1/64 x 45°"));
  EXPECT_EQ(desk.part().features.back().as<kind::Chamfer>()->at, "R");
  work.trace(FeatureKind::centreDrill);
  click(1.18, 0.0);
  ASSERT_TRUE(type("#1"));
  EXPECT_EQ(desk.part().features.back().as<kind::CentreDrill>()->at, "R");
  work.trace(FeatureKind::knurl);
  click(0.82, 0.1875);
  EXPECT_EQ(work.offer(), QStringLiteral("diamond"));
  ASSERT_TRUE(type(""));
  EXPECT_EQ(desk.part().features.back().as<kind::Knurl>()->pattern, "diamond");
}

TEST_F(TurnedTracingTest, BesideTheShouldersItIsNotGuessed) {
  QString why;
  QObject::connect(&desk, &Desk::refused, [&why](const QString& text) { why = text; });
  work.trace(FeatureKind::outside);
  click(1.4, 0.1);
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("not between two shoulders")));
  EXPECT_FALSE(type("3/8"));
  EXPECT_FALSE(why.isEmpty());
  ASSERT_TRUE(type("J S N 3/8"));  // all of it, typed
  EXPECT_EQ(desk.part().features.back().id, "J");
}

TEST_F(TurnedTracingTest, EscapeDropsTheClickThenTheTool) {
  work.traceCentreLine();
  click(0.8, 0.1875);
  EXPECT_TRUE(work.pending());
  work.back();
  EXPECT_FALSE(work.pending());
  EXPECT_EQ(work.doing(), Doing::tracing);
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_FALSE(desk.part().turned);
}

TEST_F(TurnedTracingTest, WhatWasTracedIsChosenWhereItWasPointedAt) {
  work.trace(FeatureKind::outside);
  click(0.82, 0.1875);
  ASSERT_TRUE(type("3/8"));
  const Id id = desk.part().features.back().id;
  work.look();
  ASSERT_TRUE(view->whereIs(id));
  QTest::mouseClick(view.get(), Qt::LeftButton, {}, view->whereIs(id)->toPoint());
  EXPECT_EQ(desk.selection().places, std::vector<Id>{id});
}

}  // namespace
}  // namespace inchwright::app
