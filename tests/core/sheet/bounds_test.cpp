#include "core/sheet/bounds.h"

#include <gtest/gtest.h>

#include "core/sheet/sketch.h"

namespace inchwright {
namespace {

constexpr double kRounding = 1e-9;  // sines and cosines of right angles

void expectBox(const PaperBox& box, double left, double top, double right, double bottom) {
  EXPECT_NEAR(box.left, left, kRounding);
  EXPECT_NEAR(box.top, top, kRounding);
  EXPECT_NEAR(box.right, right, kRounding);
  EXPECT_NEAR(box.bottom, bottom, kRounding);
}

// At height 15 a figure is 13 mm wide and reaches 0.03 of its height beyond cap and baseline.
TEST(TextBounds, FollowAlignmentAndTurn) {
  TextItem text{{100, 200}, "88", 15};
  expectBox(boundsOf(text), 100, 184.55, 126, 200.45);
  text.align = TextAlign::centre;
  expectBox(boundsOf(text), 87, 184.55, 113, 200.45);
  text.align = TextAlign::right;
  expectBox(boundsOf(text), 74, 184.55, 100, 200.45);
  text.align = TextAlign::left;
  text.turn = 90;  // reads upwards
  expectBox(boundsOf(text), 84.55, 174, 100.45, 200);
  text.turn = 180;
  expectBox(boundsOf(text), 74, 199.55, 100, 215.45);
}

TEST(TextBounds, SmallLettersAndAccentsReachFurther) {
  EXPECT_EQ(reachOf("A1 +0.5").below, 0.03);
  EXPECT_EQ(reachOf("Qg").below, 0.36);
  EXPECT_EQ(reachOf("\u00C9").above, 1.3);
}

TEST(ItemBounds, HoldStrokes) {
  PolylineItem line{{{1, 5}, {4, 2}}, false, {Ink::black, 0.5, {}}};
  expectBox(boundsOf(DrawItem(line)), 0.75, 1.75, 4.25, 5.25);
  line.stroked = false;
  expectBox(boundsOf(DrawItem(line)), 1, 2, 4, 5);
  expectBox(boundsOf(DrawItem(CircleItem{{10, 10}, 2, 0, 360, {Ink::black, 1, {}}})), 7.5, 7.5,
            12.5, 12.5);
}

TEST(PaperBoxes, TouchingOnesDoNotMeet) {
  const PaperBox box{0, 0, 10, 10};
  EXPECT_FALSE(box.meets({10, 0, 20, 10}));
  EXPECT_TRUE(box.meets({9, 9, 20, 20}));
  EXPECT_TRUE(box.holds({0, 0, 10, 10}));
  EXPECT_FALSE(box.holds({0, 0, 10, 10.1}));
}

TEST(Figures, AMinusIsDrawnAsLongAsAPlusAndStaysAHyphenInTheText) {
  Sketch sketch;
  sketch.figure(10, 20, "-0.5", {15, Typeface::bold});
  ASSERT_EQ(sketch.items().size(), 2U);
  const auto& text = std::get<TextItem>(sketch.items()[0]);
  EXPECT_EQ(text.text, "-0.5");
  EXPECT_DOUBLE_EQ(text.at.x, 13);  // the sign column is 12 mm, the hyphen 9
  const PaperBox bar = boundsOf(sketch.items()[1]);
  EXPECT_NEAR(bar.width(), 9.4 + 2.24, kRounding);  // 940 units, and half the stroke at each end
  EXPECT_LT(bar.right, 22 + 2.24);
}

TEST(Figures, TakeTheSameRoomWithAnySign) {
  const double width = figureWidth("+1.1875", 8, Typeface::bold);
  EXPECT_DOUBLE_EQ(figureWidth("-1.1875", 8, Typeface::bold), width);
  EXPECT_DOUBLE_EQ(figureWidth("1.1875", 8, Typeface::bold), width);
}

}  // namespace
}  // namespace inchwright
