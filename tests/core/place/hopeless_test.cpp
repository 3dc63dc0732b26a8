#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <random>

#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

namespace inchwright::test {
namespace {

void expectFinite(const PlacedForTest& part) {
  for (const auto& along : part.placed.positions) {
    for (const Position& one : along) {
      EXPECT_TRUE(std::isfinite(one.ticks.toDouble()));
      EXPECT_TRUE(std::isfinite(one.residual));
    }
  }
  for (const CentresClash& clash : part.placed.clashes) EXPECT_TRUE(std::isfinite(clash.missesBy));
}

TEST(Hopeless, AThousandThatHaveNoSolutionAreTold) {
  std::mt19937_64 random(77);
  std::uniform_real_distribution<double> scale(-3, 2);
  const auto begin = std::chrono::steady_clock::now();
  for (int run = 0; run < 1000; ++run) {
    // Two known places further apart than both distances reach, at scales from .001 to 100 in; what
    // hangs on the third has nowhere to be.
    const double size = std::pow(10.0, scale(random));
    const auto figure = [&](double value) {
      char text[40];
      std::snprintf(text, sizeof text, "%.6f", std::max(value, 0.00001));
      for (char& c : text) {
        if (c == ',') c = '.';
      }
      return std::string(text);
    };
    const double r = 0.4 * size * (1 + static_cast<double>(random() % 100) / 1000);
    const PlacedForTest part = PlacedForTest::of(PartText::read(
        "edge L x left\nedge F y front\nhole A 1/64\nhole B 1/64\nhole C 1/64\nhole D 1/64\n"
        "b1 x L A " +
        figure(size) + "\nb2 y F A " + figure(size) + "\nb3 x A B " + figure(size) +
        "\nin_line y A B\nr1 centres A C " + figure(r) + "\nr2 centres B C " + figure(r) +
        "\nr3 centres C D " + figure(size) + "\nr4 angle C D 30\n" +
        (run % 2 == 0 ? "traced C " + figure(1.5 * size) + " " + figure(size) + "\n" : "")));
    EXPECT_FALSE(part.isPlaced("C", Axis::x)) << run;
    EXPECT_FALSE(part.isPlaced("D", Axis::x)) << run;
    EXPECT_EQ(part.placed.clashes.size(), 1U) << run;
    expectFinite(part);
  }
  const auto took = std::chrono::steady_clock::now() - begin;
  // Told and never hung: a few milliseconds each, with room for a machine that is busy.
  EXPECT_LT(std::chrono::duration<double>(took).count(), 120);
}

TEST(Hopeless, DegenerateOnesPlaceNothingAndAreFinite) {
  const std::string base =
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/4\n"
      "b1 x L A 1\nb2 y F A 1\n";
  const char* kinds[] = {
      // Coincident centres.
      "b3 x A B 0\nin_line y A B\nr1 centres A C 1\nr2 centres B C 1\n",
      // Three in line: the circles only touch.
      "b3 x A B 2\nin_line y A B\nr1 centres A C 1\nr2 centres B C 1\n",
      // Two rays that never meet.
      "b3 x A B 2\nin_line y A B\nr1 angle A C 40\nr2 angle B C 40\n",
      // Two rays that are one.
      "b3 x A B 2\nin_line y A B\nr1 angle A C 0\nr2 angle B C 0\n",
      // A circle inside the other.
      "b3 x A B 1/8\nin_line y A B\nr1 centres A C 3\nr2 centres B C 1\n",
  };
  for (const char* kind : kinds) {
    const PlacedForTest part = PlacedForTest::of(PartText::read(base + kind));
    EXPECT_FALSE(part.isPlaced("C", Axis::x) && part.isPlaced("C", Axis::y)) << kind;
    expectFinite(part);
  }
}

}  // namespace
}  // namespace inchwright::test
