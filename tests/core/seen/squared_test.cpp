#include "core/seen/squared.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace inchwright::seen {
namespace {

// A picture whose tone rises by one a pixel to the right and down, from 20; rows wider than it is.
struct Slope {
  int width, height;
  std::vector<std::uint8_t> bytes;

  Slope(int wide, int high) : width(wide), height(high) {
    for (int y = 0; y < high; ++y) {
      for (int x = 0; x < wide + 3; ++x) {
        bytes.push_back(x < wide ? static_cast<std::uint8_t>(20 + x + y) : 255);
      }
    }
  }
  GreyPicture picture() const { return {bytes.data(), width, height, width + 3}; }
  static double tone(PlanePoint p) { return 20 + p.x + p.y; }
  /// As all of its rim is on average: its middle is.
  int toneOfRim() const { return static_cast<int>(20 + (width - 1) / 2.0 + (height - 1) / 2.0); }
};

// Ten pixels an inch: level, a quarter turned, turned a little, and seen aslant.
const Homography kMaps[] = {Homography({0.1, 0, -1, 0, -0.1, 5, 0, 0, 1}),
                            Homography({0, 0.1, 0, 0.1, 0, 0, 0, 0, 1}),
                            Homography({0.0995, 0.00998, 0, 0.00998, -0.0995, 3, 0, 0, 1}),
                            Homography({0.1, 0, 0, 0, -0.1, 6, 0.0005, -0.001, 1})};

// Every pixel has the tone of the picture where it comes from, whatever the scale; what lies beyond
// the picture has that of its rim.
TEST(Squared, ShowsThePictureWhereItLiesOnTheFace) {
  const Slope slope(100, 60);
  for (std::size_t i = 0; i < std::size(kMaps); ++i) {
    for (const double perInch : {20.0, 10.0, 5.0, 3.3}) {
      const Squared found = square(slope.picture(), kMaps[i], perInch, 1e6, Stop());
      SCOPED_TRACE(std::to_string(i) + " at " + std::to_string(perInch));
      EXPECT_EQ(found.frame.perInch, perInch);
      for (const PlanePoint corner : {PlanePoint{0, 0}, {100, 0}, {0, 60}, {100, 60}}) {
        const PlanePoint at = found.frame.pixel(kMaps[i].map(corner));
        EXPECT_TRUE(at.x > -1e-6 && at.x < found.grey.width + 1);
        EXPECT_TRUE(at.y > -1e-6 && at.y < found.grey.height + 1);
      }
      const double edge = 2 + 10 / perInch;
      int within = 0, beyond = 0;
      for (int y = 0; y < found.grey.height; ++y) {
        for (int x = 0; x < found.grey.width; ++x) {
          const PlanePoint from = found.toPicture.map({double(x), double(y)});
          const PlanePoint there = kMaps[i].map(from), here = found.frame.inches(x, y);
          ASSERT_NEAR(std::hypot(there.x - here.x, there.y - here.y), 0, 1e-9);
          const double inside =
              std::min(std::min(from.x, 99 - from.x), std::min(from.y, 59 - from.y));
          const int tone = found.grey.row(y)[x];
          if (inside >= edge) {
            ASSERT_NEAR(tone, Slope::tone(from), 1.01) << x << ", " << y;
            ++within;
          } else if (inside < -edge) {
            ASSERT_NEAR(tone, slope.toneOfRim(), 1.01) << x << ", " << y;
            ++beyond;
          }
        }
      }
      EXPECT_GT(within, found.grey.width * found.grey.height / 4);
      if (perInch > 4) {
        EXPECT_EQ(beyond > 0, i > 1);
      }
    }
  }
}

TEST(Squared, FrameOfALevelPicture) {
  const Squared found = square(Slope(100, 60).picture(), kMaps[0], 10, 1e6, Stop());
  EXPECT_NEAR(found.frame.left, -1, 1e-12);
  EXPECT_NEAR(found.frame.top, 5, 1e-12);
  EXPECT_NEAR(found.grey.width, 100, 1);
  EXPECT_NEAR(found.grey.height, 60, 1);
  EXPECT_EQ(found.grey.row(30)[40], 90);
}

// Ten inches by six in no more than 600 pixels; twenty inches in no more than 20 000 in a row.
TEST(Squared, KeepsWithinSoManyPixels) {
  const Squared small = square(Slope(100, 60).picture(), kMaps[0], 10, 600, Stop());
  EXPECT_NEAR(small.frame.perInch, std::sqrt(10.0), 1e-9);
  EXPECT_LE(small.grey.width * small.grey.height, 600);
  EXPECT_GE(small.grey.width * small.grey.height, 500);
  const Squared strip = square(Slope(200, 2).picture(), kMaps[0], 2000, 1e9, Stop());
  EXPECT_NEAR(strip.frame.perInch, 1000, 1e-6);
  EXPECT_EQ(strip.grey.width, 20000);
}

// The nearest part of a picture taken aslant has the most pixels an inch.
TEST(Squared, DensityIsThatOfTheNearestPart) {
  const Slope slope(100, 60);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(densityOf(slope.picture(), kMaps[i]), 10, 0.01);
  // Towards the horizon an inch is ever fewer pixels: 10 · (1 + 1/4)^(3/2) at four fifths.
  const Homography aslant({0.1, 0, 0, 0, -0.1, 0, 0, 1.0 / 192, 1});
  EXPECT_NEAR(densityOf(slope.picture(), aslant), 10 * std::pow(1.25, 1.5), 0.05);
  EXPECT_EQ(densityOf(slope.picture(), Homography({0, 0, 1, 0, 0, 1, 0, 0, 1})), 0);
}

TEST(Squared, OfAPictureOfOnePixelItIsThatTone) {
  const Squared found = square(Slope(1, 1).picture(), kMaps[0], 100, 1e6, Stop());
  for (const std::uint8_t tone : found.grey.at) EXPECT_EQ(tone, 20);
  EXPECT_NEAR(found.grey.width, 10, 1);
}

TEST(Squared, IsNothingWhenStopped) {
  const Slope slope(100, 60);
  EXPECT_TRUE(square(slope.picture(), kMaps[0], 10, 1e6, Stop([] { return true; })).grey.empty());
}

}  // namespace
}  // namespace inchwright::seen
