#include "core/place/settle.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

namespace inchwright {
namespace {

std::vector<std::uint32_t> upTo(std::size_t count) {
  std::vector<std::uint32_t> all(count);
  std::iota(all.begin(), all.end(), 0U);
  return all;
}

struct Plane {
  Equations equations;

  std::uint32_t number(double value) { return equations.addQuantity(value); }
  std::uint32_t free() {
    const Term term{equations.addVariable(), 1};
    return equations.addQuantity(0, std::span(&term, 1));
  }
};

TEST(Settle, TwoDistancesFromWhereItWasTraced) {
  Plane plane;
  const auto x = plane.free();
  const auto y = plane.free();
  plane.equations.addRow({RowKind::distance, {0, 0, x, y, 0, 0, plane.number(5)}});
  plane.equations.addRow({RowKind::distance, {plane.number(6), 0, x, y, 0, 0, plane.number(5)}});
  std::vector<double> at{2.8, 3.7};
  const auto all = upTo(2);
  const SettleSummary summary = settle(plane.equations, all, all, at);
  EXPECT_EQ(summary.outcome, SettleOutcome::settled);
  EXPECT_NEAR(at[0], 3, 1e-13);
  EXPECT_NEAR(at[1], 4, 1e-13);
  EXPECT_LE(summary.steps, 10);
}

TEST(Settle, WhatDoesNotMeetIsToldAndFinite) {
  Plane plane;
  const auto x = plane.free();
  const auto y = plane.free();
  plane.equations.addRow({RowKind::distance, {0, 0, x, y, 0, 0, plane.number(1)}});
  plane.equations.addRow({RowKind::distance, {plane.number(6), 0, x, y, 0, 0, plane.number(1)}});
  std::vector<double> at{3, 0.5};
  const auto all = upTo(2);
  const SettleSummary summary = settle(plane.equations, all, all, at);
  EXPECT_NE(summary.outcome, SettleOutcome::settled);
  EXPECT_TRUE(std::isfinite(at[0]) && std::isfinite(at[1]));
  EXPECT_NEAR(summary.residual, 2, 0.01);
}

TEST(Settle, DenseAndSparseComeToTheSame) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> spread(0, 10);
  std::normal_distribution<double> shaky(0, 0.01);
  Plane plane;
  std::vector<double> truth, start;
  std::vector<std::array<std::uint32_t, 2>> points;
  for (int i = 0; i < 50; ++i) {
    const double px = spread(random);
    const double py = spread(random);
    if (i < 2) {
      points.push_back({plane.number(px), plane.number(py)});
    } else {
      points.push_back({plane.free(), plane.free()});
      truth.insert(truth.end(), {px, py});
      start.insert(start.end(), {px + shaky(random), py + shaky(random)});
    }
    for (int back = 1; back <= 2 && i >= 2; ++back) {
      const auto& from = points[static_cast<std::size_t>(i - back)];
      const double fx = plane.equations.valueOf(from[0], truth);
      const double fy = plane.equations.valueOf(from[1], truth);
      plane.equations.addRow({RowKind::distance,
                              {from[0], from[1], points.back()[0], points.back()[1], 0, 0,
                               plane.number(std::hypot(px - fx, py - fy))}});
    }
  }
  const auto all = upTo(truth.size());
  std::vector<double> dense = start;
  std::vector<double> sparse = start;
  SettleOptions options;
  options.denseUpTo = 1000;
  const SettleSummary one = settle(plane.equations, all, all, dense, options);
  options.denseUpTo = 0;
  const SettleSummary two = settle(plane.equations, all, all, sparse, options);
  EXPECT_EQ(one.outcome, two.outcome);
  EXPECT_LE(one.residual, 1e-11);
  EXPECT_LE(two.residual, 1e-11);
  // Near the answer of a large system the factors of the last step lead on: fewer are made.
  EXPECT_LT(two.steps, one.steps);
}

TEST(Settle, OptionsThatMakeNoSenseAreNamed) {
  SettleOptions options;
  EXPECT_TRUE(options.isValid());
  options.mostSteps = 0;
  EXPECT_EQ(options.isValid().error().place, "mostSteps");
  options = {};
  options.enough = std::nan("");
  EXPECT_EQ(options.isValid().error().place, "enough");
  options = {};
  options.firstDamping = -1;
  EXPECT_EQ(options.isValid().error().place, "firstDamping");
  options = {};
  options.leastWeight = 0;
  EXPECT_EQ(options.isValid().error().place, "leastWeight");
}

TEST(Settle, NothingOpenIsALook) {
  Plane plane;
  plane.equations.addRow({RowKind::same, {plane.number(3), plane.number(2), plane.number(1)}});
  std::vector<double> none;
  const auto rows = upTo(1);
  EXPECT_EQ(settle(plane.equations, rows, {}, none).outcome, SettleOutcome::settled);
}

}  // namespace
}  // namespace inchwright
