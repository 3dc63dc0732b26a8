#include "core/part/crooked_picture.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

SquaringPoint point(double pixelX, double pixelY, const char* x, const char* y) {
  return {pixelX, pixelY, *readLength(x), *readLength(y)};
}

// A print of 4 in by 3, drawn at 100 pixels an inch, its near left corner at pixel 100, 400.
std::vector<SquaringPoint> corners() {
  return {point(100, 400, "0", "0"), point(500, 400, "4", "0"), point(500, 100, "4", "3"),
          point(100, 100, "0", "3")};
}

TEST(CrookedPicture, OneThatWasTakenOfAPrintIsNone) {
  EXPECT_FALSE(crookedBy(corners()));
  EXPECT_FALSE(crookedBy({}));
  auto scan = corners();
  scan.resize(2);
  EXPECT_FALSE(crookedBy({scan[0], point(500, 100, "4", "3")}));
  // Turned by a quarter, seen from the side, stretched as a poor copy is.
  EXPECT_FALSE(crookedBy({point(100, 100, "0", "0"), point(100, 500, "4", "0"),
                          point(400, 500, "4", "3"), point(400, 100, "0", "3")}));
  EXPECT_FALSE(crookedBy({point(100, 400, "0", "0"), point(500, 400, "4", "0"),
                          point(450, 150, "4", "3"), point(150, 150, "0", "3")}));
  EXPECT_FALSE(crookedBy({point(100, 400, "0", "0"), point(500, 400, "4", "0"),
                          point(500, 80, "4", "3"), point(100, 80, "0", "3")}));
}

TEST(CrookedPicture, TellsWhatComesMirrored) {
  for (const bool leftForRight : {true, false}) {
    auto points = corners();
    std::swap(points[0].x, points[leftForRight ? 1 : 3].x);
    std::swap(points[0].y, points[leftForRight ? 1 : 3].y);
    std::swap(points[2].x, points[leftForRight ? 3 : 1].x);
    std::swap(points[2].y, points[leftForRight ? 3 : 1].y);
    const auto crooked = crookedBy(points);
    ASSERT_TRUE(crooked);
    EXPECT_TRUE(crooked->mirrored);
  }
}

TEST(CrookedPicture, TellsALeanAndAStretch) {
  // The far side stands three inches further right than it should: a lean of 45 degrees.
  auto points = corners();
  points[2].x = *readLength("7");
  points[3].x = *readLength("3");
  const auto leaning = crookedBy(points);
  ASSERT_TRUE(leaning);
  EXPECT_FALSE(leaning->mirrored);
  EXPECT_NEAR(leaning->lean, 45, 1e-6);
  // 4 for 8 across.
  points = corners();
  points[1].x = points[2].x = *readLength("8");
  const auto stretched = crookedBy(points);
  ASSERT_TRUE(stretched);
  EXPECT_NEAR(stretched->stretch, 2, 1e-9);
  EXPECT_NEAR(stretched->lean, 0, 1e-6);
  // And 3 for 6 up.
  points = corners();
  points[2].y = points[3].y = *readLength("6");
  const auto raised = crookedBy(points);
  ASSERT_TRUE(raised);
  EXPECT_NEAR(raised->stretch, 2, 1e-9);
}

}  // namespace
}  // namespace inchwright
