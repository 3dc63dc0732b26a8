// Marks that are told apart from afar, each where and as large as it was asked for.
#include "core/sheet/symbols.h"

#include <gtest/gtest.h>

#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

PaperBox extentOf(const Sketch& sketch) {
  PaperBox all = boundsOf(sketch.items().at(0));
  for (const DrawItem& item : sketch.items()) {
    const PaperBox box = boundsOf(item);
    all = {std::min(all.left, box.left), std::min(all.top, box.top), std::max(all.right, box.right),
           std::max(all.bottom, box.bottom)};
  }
  return all;
}

void expectNear(const PaperBox& got, const PaperBox& wanted, double slack, const char* what) {
  EXPECT_NEAR(got.left, wanted.left, slack) << what;
  EXPECT_NEAR(got.top, wanted.top, slack) << what;
  EXPECT_NEAR(got.right, wanted.right, slack) << what;
  EXPECT_NEAR(got.bottom, wanted.bottom, slack) << what;
}

// Half a stroke stands out on every side; a stroke is 1/2 mm at most.
TEST(Symbols, StandWhereTheyWereAskedFor) {
  Sketch zero, mind, query, tick;
  drawZeroMark(zero, {20, 30}, 4);
  expectNear(extentOf(zero), {16, 26, 24, 34}, 0.26, "zero");
  drawMindMark(mind, {20, 30}, 4);
  expectNear(extentOf(mind), {17.8, 28, 22.2, 32}, 0.26, "mind");
  drawQueryMark(query, {20, 30}, 4);
  expectNear(extentOf(query), {18, 28, 22, 32}, 0.26, "query");
  EXPECT_EQ(textsOf(query).at(0).text, "?");
  drawTickBox(tick, {20, 30}, 4);
  expectNear(extentOf(tick), {20, 30, 24, 34}, 0.26, "tick");
  EXPECT_EQ(tickBoxesOf(tick).size(), 1u);
}

// The heart of zero is solid and well inside its lozenge: no hole is drawn like it.
TEST(Symbols, ZeroHasASolidHeart) {
  Sketch zero;
  drawZeroMark(zero, {0, 0}, 10);
  ASSERT_EQ(zero.items().size(), 2u);
  const auto& outer = std::get<PolylineItem>(zero.items()[0]);
  const auto& heart = std::get<PolylineItem>(zero.items()[1]);
  EXPECT_TRUE(outer.stroked && outer.closed);
  EXPECT_TRUE(heart.filled);
  EXPECT_EQ(heart.fill, Ink::black);
  EXPECT_EQ(outer.fill, Ink::white);
  EXPECT_LT(boundsOf(zero.items()[1]).width(), 0.6 * boundsOf(zero.items()[0]).width());
}

TEST(Symbols, ArrowsPointWhereTheyAreSent) {
  struct Way {
    double dx, dy;
    PaperBox box;
  };
  // Of length 5 its back is 3.8 wide.
  for (const Way& way : {Way{1, 0, {5, 8.1, 10, 11.9}}, Way{-1, 0, {10, 8.1, 15, 11.9}},
                         Way{0, 1, {8.1, 5, 11.9, 10}}, Way{0, -1, {8.1, 10, 11.9, 15}}}) {
    Sketch sketch;
    drawArrowHead(sketch, {10, 10}, way.dx, way.dy, 5);
    expectNear(extentOf(sketch), way.box, kRounding, "arrow");
    const auto& head = std::get<PolylineItem>(sketch.items().at(0));
    EXPECT_EQ(head.points.at(0), (PlanePoint{10, 10}));
    EXPECT_TRUE(head.filled);
  }
}

// From top to bottom whatever the height, never a straight line.
TEST(Symbols, TornEdgesAreTornAllTheWayDown) {
  for (const double bottom : {2.5, 9.0, 31.7, 200.0}) {
    Sketch sketch;
    drawTornEdge(sketch, 1, 2, bottom);
    const auto& edge = std::get<PolylineItem>(sketch.items().at(0));
    EXPECT_GE(edge.points.size(), 3u);
    EXPECT_DOUBLE_EQ(edge.points.front().y, 2);
    EXPECT_DOUBLE_EQ(edge.points.back().y, bottom);
    for (std::size_t i = 1; i < edge.points.size(); ++i) {
      EXPECT_NE(edge.points[i].x, edge.points[i - 1].x);
      EXPECT_GT(edge.points[i].y, edge.points[i - 1].y);
    }
  }
}

// Lines at 45 degrees, cut off at the box and as far apart as asked; across a box of any shape.
TEST(Symbols, HatchingFillsItsBoxAndNoMore) {
  for (const PaperBox& box :
       {PaperBox{10, 20, 40, 25}, PaperBox{4, 9, 7, 280}, PaperBox{0, 0, 9, 9}}) {
    Sketch sketch;
    drawHatchedBox(sketch, box, 1.5, 0.25);
    const PaperBox room = box.grownBy(kRounding);
    double last = box.left + box.top;
    for (const DrawItem& item : sketch.items()) {
      const auto& line = std::get<PolylineItem>(item);
      for (const PlanePoint& end : line.points) {
        EXPECT_TRUE(room.holds({end.x, end.y, end.x, end.y})) << end.x << ' ' << end.y;
        EXPECT_NEAR(end.x + end.y, last + 1.5, kRounding);
        const bool atSide =
            std::abs(end.x - box.left) < kRounding || std::abs(end.x - box.right) < kRounding ||
            std::abs(end.y - box.top) < kRounding || std::abs(end.y - box.bottom) < kRounding;
        EXPECT_TRUE(atSide) << "it ends short of the box";
      }
      last += 1.5;
    }
    EXPECT_GT(last, box.right + box.bottom - 1.6) << "to the last corner";
  }
}

}  // namespace
}  // namespace inchwright
