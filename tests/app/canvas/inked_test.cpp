#include "app/canvas/inked.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "app/canvas/taken_room.h"

namespace inchwright::app {
namespace {

TEST(Inked, PixelsAreThoseABoxTouches) {
  constexpr unsigned kSeed = 20262;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  // Quarters: whole pixels come up often.
  const auto within = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(4 * (high - low))) / 4.0;
  };
  for (int i = 0; i < 2000; ++i) {
    const QRectF box(within(-300, 300), within(-300, 300), within(0, 200), within(0, 200));
    ASSERT_EQ(pixelsOf(box), box.toAlignedRect())
        << box.x() << ' ' << box.y() << ' ' << box.width();
  }
  // Zoomed to the utmost, a side of a part lies anywhere.
  EXPECT_TRUE(pixelsOf(QRectF(-1e14, -1e14, 2e14, 2e14)).contains(QRect(0, 0, 4000, 3000)));
}

TEST(Inked, ChangedIsWhatOnlyOneOfTwoHas) {
  std::vector<Inked> before{{{0, 0, 10, 10}, 1}, {{50, 0, 10, 10}, 2}, {{90, 0, 10, 10}, 3}};
  std::vector<Inked> after{{{90, 0, 10, 10}, 3}, {{50, 0, 10, 10}, 4}, {{0, 0, 10, 10}, 1}};
  EXPECT_EQ(changedBetween(before, after), QRegion(50, 0, 10, 10));
  std::reverse(before.begin(), before.end());
  EXPECT_EQ(changedBetween(before, after), QRegion(50, 0, 10, 10));
  EXPECT_TRUE(changedBetween(after, after).isEmpty());
}

TEST(TakenRoom, IsTakenWhereABoxWasPut) {
  TakenRoom room(QRectF(0, 0, 400, 300));
  room.take({41, 17, 30, 14});
  EXPECT_FALSE(room.isFree({60, 20, 40, 14}));
  EXPECT_TRUE(room.isFree({80, 20, 40, 14}));
  EXPECT_TRUE(room.isFree({41, 40, 30, 14}));
  // What reaches over the border stands on what of it lies within.
  room.take({-1e12, 200, 1e12 + 4, 14});
  EXPECT_FALSE(room.isFree({0, 204, 20, 5}));
  EXPECT_TRUE(room.isFree({20, 204, 20, 5}));
  EXPECT_TRUE(room.isFree({-60, -40, 50, 30}));
  EXPECT_TRUE(room.isFree({1e12, 1e12, 5, 5}));
}

}  // namespace
}  // namespace inchwright::app
