#include "core/geometry/warp.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <random>
#include <vector>

namespace inchwright {
namespace {

struct Picture {
  int width, height;
  std::vector<std::uint8_t> bytes;

  Picture(int w, int h) : width(w), height(h), bytes(static_cast<std::size_t>(w) * h * 4) {}
  PixelsIn in() const { return {bytes.data(), width, height, width * 4}; }
  PixelsOut out() { return {bytes.data(), width, height, width * 4}; }
  std::uint8_t at(int x, int y, int c) const { return bytes[(y * width + x) * 4 + c]; }
};

Picture noise(int width, int height, unsigned seed) {
  Picture picture(width, height);
  std::mt19937 random(seed);
  for (auto& byte : picture.bytes) byte = static_cast<std::uint8_t>(random());
  return picture;
}

void warpAll(const Picture& in, Picture& out, const Homography& map,
             WarpPath path = fastestWarpPath()) {
  warpRows(in.in(), out.out(), map, 0, out.height, 0xFFFFFFFFu, path);
}

// The blend worked out in double precision, straight from the definition.
double exactBlend(const Picture& in, PlanePoint from, int channel) {
  const int x = std::min(static_cast<int>(from.x), in.width - 2);
  const int y = std::min(static_cast<int>(from.y), in.height - 2);
  const double right = from.x - x, down = from.y - y;
  return (in.at(x, y, channel) * (1 - right) + in.at(x + 1, y, channel) * right) * (1 - down) +
         (in.at(x, y + 1, channel) * (1 - right) + in.at(x + 1, y + 1, channel) * right) * down;
}

TEST(Warp, TheIdentityCopiesEveryPixel) {
  const Picture in = noise(37, 21, 1);
  for (const WarpPath path : {WarpPath::plain, fastestWarpPath()}) {
    Picture out(37, 21);
    warpAll(in, out, Homography{}, path);
    EXPECT_EQ(in.bytes, out.bytes);
  }
}

TEST(Warp, HalfAPixelBlendsNeighboursEvenly) {
  Picture in(2, 2), out(1, 1);
  const std::uint8_t values[] = {0, 100, 40, 60};
  for (int i = 0; i < 4; ++i) std::memset(&in.bytes[i * 4], values[i], 4);
  warpAll(in, out, Homography({1, 0, 0.5, 0, 1, 0.5, 0, 0, 1}));
  EXPECT_EQ(out.bytes[0], 50);
}

TEST(Warp, OutsideThePictureIsFilled) {
  const Picture in = noise(16, 16, 2);
  Picture out(16, 16);
  warpRows(in.in(), out.out(), Homography({1, 0, 100, 0, 1, 0, 0, 0, 1}), 0, 16, 0x11223344u);
  std::uint32_t pixel = 0;
  std::memcpy(&pixel, out.bytes.data(), 4);
  EXPECT_EQ(pixel, 0x11223344u);
}

// Bound: position is rounded to 1/64 pixel both ways, half of it off at the most, and a channel
// can change by 255 from pixel to pixel: 255·(1/128 + 1/128) plus rounding is below 5.
TEST(Warp, StaysWithinItsBoundOnNoiseForRandomMapsAndAllPathsAgree) {
  const unsigned seed = 7;
  SCOPED_TRACE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> unit(-1, 1);
  for (int round = 0; round < 40; ++round) {
    const Picture in = noise(211, 173, seed + round);
    const Homography map({1 + 0.3 * unit(random), 0.3 * unit(random), 20 * unit(random),
                          0.3 * unit(random), 1 + 0.3 * unit(random), 20 * unit(random),
                          0.0005 * unit(random), 0.0005 * unit(random), 1});
    Picture plain(203, 160), fast(203, 160);
    warpAll(in, plain, map, WarpPath::plain);
    warpAll(in, fast, map);
    ASSERT_EQ(plain.bytes, fast.bytes);
    int compared = 0;
    for (int y = 0; y < plain.height; ++y) {
      for (int x = 0; x < plain.width; ++x) {
        const PlanePoint from = map.map({double(x), double(y)});
        const bool wellInside =
            from.x > 0.01 && from.x < in.width - 1.01 && from.y > 0.01 && from.y < in.height - 1.01;
        if (!wellInside) continue;
        ++compared;
        for (int c = 0; c < 4; ++c) {
          ASSERT_NEAR(plain.at(x, y, c), exactBlend(in, from, c), 5) << x << "," << y;
        }
      }
    }
    EXPECT_GT(compared, 1000);
  }
}

TEST(Warp, RowsCanBeSharedOut) {
  const Picture in = noise(64, 64, 3);
  const Homography map({0.9, 0.1, 2, -0.1, 0.9, 5, 0.0001, 0, 1});
  Picture whole(64, 64), parts(64, 64);
  warpAll(in, whole, map);
  warpRows(in.in(), parts.out(), map, 0, 30);
  warpRows(in.in(), parts.out(), map, 30, 64);
  EXPECT_EQ(whole.bytes, parts.bytes);
}

}  // namespace
}  // namespace inchwright
