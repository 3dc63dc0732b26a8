// Where a place that is chosen and not placed could still lie, and choosing between two answers by
// pointing.

#include "app/canvas/whereabouts.h"

#include <QTest>
#include <cmath>

#include "app/canvas/print_view.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class WhereaboutsTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge R right", "edge F front", "edge K back", "hole A 1/4",
                "hole B 1/4", "L A 1/2", "L R 4", "y F A 3/4", "y F K 3", "A B 3",
                "in line y A B stated"});
  }

  Whereabouts of(const char* place) {
    desk.select({{place}, {}});
    return whereaboutsOf(desk, drawn());
  }
  DrawnFace drawn() const { return drawFace(desk.part(), desk.solution(), Face::top, false); }

  /// Everything is placed to scale on blank paper: from the left and front sides.
  QPointF fromSides(QPointF at) const {
    const DrawnFace face = drawn();
    return at - QPointF(face.find("L")->at.x(), face.find("F")->at.y());
  }
};

TEST_F(WhereaboutsTest, OfAPlacedOneAndOfOneThatIsFreeNothing) {
  EXPECT_TRUE(of("A").isEmpty());
  enterLines({"hole C 1/8"});
  EXPECT_TRUE(of("C").isEmpty());
  EXPECT_TRUE(of("none").isEmpty());
  desk.select({{"A", "B"}, {}});
  EXPECT_TRUE(whereaboutsOf(desk, drawn()).isEmpty());
}

TEST_F(WhereaboutsTest, OnACircleWhereADistanceHoldsItAlone) {
  enterLines({"hole C 1/8", "centres A C 1 1/4"});
  const Whereabouts all = of("C");
  ASSERT_EQ(all.rings.size(), 1u);
  EXPECT_EQ(all.rings[0].radius, 1.25);
  EXPECT_EQ(fromSides(all.rings[0].middle), QPointF(0.5, 0.75));
  EXPECT_TRUE(all.ways.empty() && all.spots.empty());
}

// D hangs on C, so that neither swings by itself; C is on its circle all the same.
TEST_F(WhereaboutsTest, OnACircleAlsoWhereOthersHangOnIt) {
  enterLines({"hole C 1/8", "hole D 1/8", "centres A C 1 1/4", "centres C D 1", "angle C D 120"});
  ASSERT_EQ(of("C").rings.size(), 1u);
  EXPECT_EQ(of("C").rings[0].radius, 1.25);
  EXPECT_TRUE(of("D").isEmpty()) << "what it hangs on is not placed";
}

TEST_F(WhereaboutsTest, WhatIsChainedFromAHalfHeldOneIsHeldAsThatIs) {
  enterLines({"hole C 1/8", "hole D 1/8", "centres A C 1 1/4", "x C D 1/2", "y C D 1/4"});
  const Whereabouts all = of("D");
  ASSERT_EQ(all.rings.size(), 1u);
  EXPECT_EQ(all.rings[0].radius, 1.25);
  EXPECT_EQ(fromSides(all.rings[0].middle), QPointF(0.5 + 0.5, 0.75 + 0.25));
  EXPECT_EQ(fromSides(of("C").rings.at(0).middle), QPointF(0.5, 0.75));
  // Held along one axis from it alone, it may lie anywhere.
  enterLines({"hole E 1/8", "x C E 3/4"});
  EXPECT_TRUE(of("E").isEmpty());
}

TEST_F(WhereaboutsTest, WhatIsChainedFromOneWithTwoAnswersHasTwoSpots) {
  enterLines(
      {"hole C 1/8", "hole D 1/4", "centres A C 2", "centres B C 2", "x C D 1/2", "in line y C D"});
  const Whereabouts all = of("D");
  ASSERT_EQ(all.spots.size(), 2u);
  EXPECT_EQ(all.radius, 0.125);
  for (const QPointF& spot : all.spots) EXPECT_NEAR(fromSides(spot).x(), 2.5, 1e-9);
}

TEST_F(WhereaboutsTest, OnAStraightWayWhereAnAngleHoldsItAlone) {
  enterLines({"hole C 1/8", "angle A C 30"});
  const Whereabouts all = of("C");
  ASSERT_EQ(all.ways.size(), 1u);
  EXPECT_NEAR(all.ways[0].angle(), 360 - 30, 1e-9) << "y up";
  EXPECT_EQ(fromSides(all.ways[0].p1()), QPointF(0.5, 0.75));
}

TEST_F(WhereaboutsTest, UprightOrLevelWhereOneAxisIsMissing) {
  enterLines({"hole C 1/8", "L C 1 1/2", "hole D 1/8", "y F D 2"});
  const Whereabouts upright = of("C"), level = of("D");
  ASSERT_EQ(upright.ways.size(), 1u);
  EXPECT_EQ(fromSides(upright.ways[0].p1()).x(), 1.5);
  EXPECT_EQ(upright.ways[0].dx(), 0);
  ASSERT_EQ(level.ways.size(), 1u);
  EXPECT_EQ(fromSides(level.ways[0].p1()).y(), 2);
  EXPECT_EQ(level.ways[0].dy(), 0);
}

TEST_F(WhereaboutsTest, OfTwoAnswersBothAreSpotsAndTheOnePointedAtIsTaken) {
  enterLines({"hole C 1/8", "centres A C 2", "centres B C 2"});
  const Whereabouts all = of("C");
  ASSERT_EQ(all.spots.size(), 2u);
  const double up = std::sqrt(4 - 2.25);
  for (const QPointF& spot : all.spots) {
    EXPECT_NEAR(fromSides(spot).x(), 2, 1e-9);
    EXPECT_NEAR(std::abs(fromSides(spot).y() - 0.75), up, 1e-9);
  }
  const std::size_t upper = all.spots[0].y() > all.spots[1].y() ? 0 : 1;
  PrintView view(work);
  view.resize(700, 500);
  view.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&view));
  view.fit();
  const QPointF spot = view.map().toWidget(all.spots[upper]);
  const Job before = desk.job();
  QTest::mouseClick(&view, Qt::LeftButton, {}, spot.toPoint());
  ASSERT_EQ(desk.part().understood.size(), 2u);
  EXPECT_EQ(desk.part().understood.back().kind, UnderstandingKind::wayRound);
  EXPECT_NEAR(desk.solution().between("F", "C", Axis::y)->toDouble() / Length::kTicksPerInch,
              0.75 + up, 1e-7);
  EXPECT_EQ(desk.undoTitle(), "Choose where C lies");
  desk.undo();
  EXPECT_EQ(desk.job(), before);
  // Elsewhere, and with Shift, a click chooses as ever.
  desk.select({{"C"}, {}});
  QTest::mouseClick(&view, Qt::LeftButton, Qt::ShiftModifier, spot.toPoint());
  EXPECT_EQ(desk.job(), before);
}

TEST_F(WhereaboutsTest, TheyAreDrawnBrokenWithinThePane) {
  enterLines({"hole C 1/8", "centres A C 1 1/4", "hole D 1/8", "centres A D 2", "centres B D 2"});
  const PrintMap map(50, QPointF(20, 200));
  const QRectF pane(0, 0, 400, 300);
  const auto rings = brokenMarks(of("C"), map, pane);
  ASSERT_EQ(rings.size(), 1u);
  EXPECT_NEAR(rings[0].path.boundingRect().width(), 125, 0.5);
  EXPECT_TRUE(rings[0].name.isEmpty());
  const Whereabouts two = of("D");
  const auto spots = brokenMarks(two, map, pane);
  ASSERT_EQ(spots.size(), 2u);
  EXPECT_EQ(spots[0].name, "1 ?");
  EXPECT_EQ(spots[1].name, "2 ?");
  EXPECT_EQ(spotAt(two, map.toWidget(two.spots[1]), map), 1u);
  EXPECT_EQ(spotAt(two, map.toWidget(two.spots[1]) + QPointF(12, 0), map), std::nullopt);
}

}  // namespace
}  // namespace inchwright::app
