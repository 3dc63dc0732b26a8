// Pictures of anything but a print: nothing is ready, nothing hangs, and memory is held.

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmath>
#include <functional>
#include <random>

#include "core/seen/offer.h"

namespace inchwright::seen {
namespace {

const Homography kHundredAnInch({0.01, 0, 0, 0, -0.01, 6, 0, 0, 1});

GreyPicture pictureOf(const Grey& g) {
  return {g.at.data(), g.width, g.height, g.width};
}

void expectNothingReady(const Grey& g, const char* what) {
  const auto offers = offer(pictureOf(g), kHundredAnInch);
  ASSERT_TRUE(offers.ok()) << what << ": " << offers.error().text;
  for (const ReadingOffer& r : offers->readings) EXPECT_FALSE(r.witnesses.ready()) << what;
  for (const FeatureOffer& f : offers->features) {
    EXPECT_FALSE(f.ready) << what << " kind " << static_cast<int>(f.kind) << " at " << f.at.x << " "
                          << f.at.y;
    EXPECT_FALSE(f.sizeWitnesses.ready()) << what;
  }
}

std::uint32_t roll(std::mt19937& random) {
  return static_cast<std::uint32_t>(random());
}

/// Tones by place.
Grey painted(int width, int height, const std::function<double(double, double)>& tone) {
  Grey g(width, height);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x)
      g.row(y)[x] = static_cast<std::uint8_t>(std::clamp(tone(x, y), 0.0, 255.0));
  }
  return g;
}

/// Smooth noise of one size, -1 … 1: the corners of a lattice drawn at random, blended.
double clouds(double x, double y, double size, std::uint32_t seed) {
  const auto corner = [&](double i, double j) {
    std::uint32_t h = seed + static_cast<std::uint32_t>(static_cast<int>(i)) * 374761393U +
                      static_cast<std::uint32_t>(static_cast<int>(j)) * 668265263U;
    h = (h ^ (h >> 13)) * 1274126177U;
    return static_cast<double>((h ^ (h >> 16)) & 0xffff) / 32767.5 - 1;
  };
  const double u = x / size, v = y / size, i = std::floor(u), j = std::floor(v);
  const double a = (u - i) * (u - i) * (3 - 2 * (u - i)), b = (v - j) * (v - j) * (3 - 2 * (v - j));
  return (corner(i, j) * (1 - a) + corner(i + 1, j) * a) * (1 - b) +
         (corner(i, j + 1) * (1 - a) + corner(i + 1, j + 1) * a) * b;
}

/// Leaves: pointed ovals of all sizes, turned all ways, each with a vein.
Grey leaves(std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto upTo = [&](double most) { return most * (roll(random) % 10001) / 10000; };
  Grey g(700, 550, 200);
  for (int n = 0; n < 300; ++n) {
    const double cx = upTo(700), cy = upTo(550), turn = upTo(6.28), length = 10 + upTo(60),
                 wide = length * (0.2 + upTo(0.4));
    const auto tone = static_cast<std::uint8_t>(30 + upTo(190));
    for (int y = static_cast<int>(cy - length); y <= cy + length; ++y) {
      for (int x = static_cast<int>(cx - length); x <= cx + length; ++x) {
        const double u = (x - cx) * std::cos(turn) + (y - cy) * std::sin(turn),
                     v = (y - cy) * std::cos(turn) - (x - cx) * std::sin(turn);
        if (!g.holds(x, y) || std::abs(v) > wide * (1 - u * u / (length * length))) continue;
        g.row(y)[x] = std::abs(v) < 1 ? static_cast<std::uint8_t>(tone / 2) : tone;
      }
    }
  }
  return g;
}

/// A page of figures and capitals in rows, five by seven squares each, with rules between some.
Grey page(std::uint32_t seed, int square) {
  // Rows of 0 … 9, /, R, E, A, H, from the top, the leftmost square the highest of five bits.
  constexpr std::array<std::array<std::uint8_t, 7>, 15> kShapes{{{14, 17, 17, 17, 17, 17, 14},
                                                                 {4, 12, 4, 4, 4, 4, 14},
                                                                 {14, 17, 1, 2, 4, 8, 31},
                                                                 {14, 17, 1, 6, 1, 17, 14},
                                                                 {2, 6, 10, 18, 31, 2, 2},
                                                                 {31, 16, 30, 1, 1, 17, 14},
                                                                 {14, 16, 16, 30, 17, 17, 14},
                                                                 {31, 1, 2, 4, 8, 8, 8},
                                                                 {14, 17, 17, 14, 17, 17, 14},
                                                                 {14, 17, 17, 15, 1, 1, 14},
                                                                 {1, 1, 2, 4, 8, 16, 16},
                                                                 {30, 17, 17, 30, 20, 18, 17},
                                                                 {31, 16, 16, 30, 16, 16, 31},
                                                                 {14, 17, 17, 31, 17, 17, 17},
                                                                 {17, 17, 17, 31, 17, 17, 17}}};
  std::mt19937 random(seed);
  Grey g(800, 900, 240);
  const int wide = 6 * square, high = 12 * square;
  for (int y = 60; y + high < g.height - 60; y += high) {
    for (int x = 60; x + wide < g.width - 60; x += wide) {
      const std::uint32_t pick = roll(random) % 19;
      if (pick >= kShapes.size()) continue;
      for (int v = 0; v < 7 * square; ++v) {
        for (int u = 0; u < 5 * square; ++u) {
          if (kShapes[pick][v / square] >> (4 - u / square) & 1) g.row(y + v)[x + u] = 40;
        }
      }
    }
    if (random() % 3 == 0) std::fill(g.row(y - square) + 60, g.row(y - square) + 740, 60);
  }
  return g;
}

TEST(Hostile, NoPictureAndNoMapAreRefused) {
  EXPECT_EQ(offer({}, Homography()).error().code, ErrorCode::badRequest);
  const Grey white(40, 30, 255);
  EXPECT_EQ(offer(pictureOf(white), Homography({0, 0, 1, 0, 0, 1, 0, 0, 1})).error().code,
            ErrorCode::badRequest);
}

TEST(Hostile, OneToneOfAnySize) {
  for (const int tone : {0, 128, 255}) {
    for (const auto& [w, h] : {std::pair(1, 1), std::pair(700, 500), std::pair(3000, 2),
                               std::pair(2, 3000), std::pair(1, 900)})
      expectNothingReady(Grey(w, h, static_cast<std::uint8_t>(tone)), "one tone");
  }
}

TEST(Hostile, NoiseAndSlopesAndStripes) {
  std::mt19937 random(3);
  expectNothingReady(painted(600, 450, [&](double, double) { return roll(random) % 256; }),
                     "noise");
  expectNothingReady(painted(700, 550, [](double x, double y) { return x / 5 + y / 9; }), "slope");
  for (const int cell : {3, 8, 25}) {
    expectNothingReady(
        painted(600, 450,
                [&](double x, double y) { return (int(x) / cell + int(y) / cell) % 2 ? 230 : 20; }),
        "squares");
    expectNothingReady(
        painted(600, 450, [&](double x, double) { return int(x) / cell % 2 ? 230 : 20; }),
        "stripes");
  }
}

TEST(Hostile, PhotographsOfOtherThings) {
  constexpr std::uint32_t kCloudSeed = 1;
  expectNothingReady(leaves(kCloudSeed), "leaves");
  // Wood, stone, cloth.
  expectNothingReady(painted(700, 550,
                             [](double x, double y) {
                               const double bent = y + 30 * clouds(x, y, 200, kCloudSeed);
                               return 150 + 70 * std::sin(bent / 6) +
                                      20 * clouds(x / 6, y, 5, kCloudSeed);
                             }),
                     "wood");
  expectNothingReady(painted(700, 550,
                             [](double x, double y) {
                               return 140 + 60 * clouds(x, y, 90, kCloudSeed) +
                                      50 * clouds(x, y, 22, kCloudSeed) +
                                      40 * clouds(x, y, 5, kCloudSeed);
                             }),
                     "stone");
  expectNothingReady(painted(700, 550,
                             [](double x, double y) {
                               return 130 + 60 * std::sin(x / 2.3) * std::sin(y / 2.1) +
                                      60 * clouds(x, y, 150, kCloudSeed);
                             }),
                     "cloth");
}

TEST(Hostile, PagesOfText) {
  for (const int square : {2, 3, 5}) expectNothingReady(page(7, square), "page");
}

TEST(Hostile, AHundredMegapixelsInMemoryThatIsHeld) {
  std::mt19937 random(5);
  Grey large(12500, 8000, 0);
  for (std::size_t i = 0; i < large.at.size(); i += 4) {
    const std::uint32_t v = roll(random);
    for (std::size_t k = 0; k < 4; ++k) large.at[i + k] = static_cast<std::uint8_t>(v >> 8 * k);
  }
  // In a process of its own, for its own peak.
  const pid_t child = fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    const auto offers = offer(pictureOf(large), kHundredAnInch);
    const bool fine =
        offers.ok() && std::none_of(offers->readings.begin(), offers->readings.end(),
                                    [](const ReadingOffer& r) { return r.witnesses.ready(); });
    _exit(fine ? 0 : 1);
  }
  int status = 0;
  rusage used{};
  ASSERT_EQ(wait4(child, &status, 0, &used), child);
  EXPECT_EQ(status, 0);
  RecordProperty("peak_megabytes", static_cast<int>(used.ru_maxrss / 1024));
#ifndef __SANITIZE_ADDRESS__
  // The picture has a hundred of them, and the test itself a little.
  EXPECT_LT(used.ru_maxrss / 1024, 100 + 400);
#endif
}

}  // namespace
}  // namespace inchwright::seen
