#include "core/place/equations.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace inchwright {
namespace {

constexpr std::array kAllKinds{RowKind::distance, RowKind::direction, RowKind::turn,
                               RowKind::off,      RowKind::inLine,    RowKind::spacing,
                               RowKind::same,     RowKind::halved,    RowKind::across};

// A row of the kind whose operands are variables of their own.
Row freeRow(Equations& equations, RowKind kind) {
  Row row;
  row.kind = kind;
  row.signA = 1;
  row.signB = -1;
  row.scale = 2.5;
  for (std::size_t i = 0; i < operandsOf(kind); ++i) {
    const Term term{equations.addVariable(), 1};
    row.of[i] = equations.addQuantity(0, std::span(&term, 1));
  }
  return row;
}

TEST(Equations, SlopesAgreeWithDifferences) {
  std::mt19937_64 random(20240601);
  std::uniform_real_distribution<double> spread(-3, 3);
  for (const RowKind kind : kAllKinds) {
    Equations equations;
    const Row row = freeRow(equations, kind);
    for (int run = 0; run < 200; ++run) {
      std::vector<double> at(equations.variableCount());
      for (double& one : at) one = spread(random);
      std::vector<double> slope(at.size());
      const RowValue value = equations.evaluate(row, at);
      equations.forEachSlope(row, value,
                             [&](std::uint32_t variable, double s) { slope[variable] += s; });
      for (std::size_t i = 0; i < at.size(); ++i) {
        // Central differences of step h are off by about h² times the third derivative.
        const double h = 1e-5;
        std::vector<double> low = at, high = at;
        low[i] -= h;
        high[i] += h;
        const double up = equations.evaluate(row, high).residual;
        const double down = equations.evaluate(row, low).residual;
        if (std::abs(up - down) > 0.1) continue;  // across the seam of a ray that points back
        EXPECT_NEAR(slope[i], (up - down) / (2 * h), 2e-5 * (1 + std::abs(slope[i])))
            << static_cast<int>(kind) << " operand " << i << " run " << run;
      }
    }
  }
}

TEST(Equations, ResidualsAreLengths) {
  Equations equations;
  const auto number = [&](double value) { return equations.addQuantity(value); };
  // A 3-4-5 triangle.
  const Row distance{RowKind::distance,
                     {number(0), number(0), number(3), number(4), 0, 0, number(4.75)}};
  EXPECT_DOUBLE_EQ(equations.evaluate(distance, {}).residual, 0.25);
  // Two circles of radius 1 and 2 that touch from outside, 5 apart: 2 too far.
  const Row touch{RowKind::distance,
                  {number(0), number(0), number(3), number(4), number(1), number(2), 0},
                  1,
                  1};
  EXPECT_DOUBLE_EQ(equations.evaluate(touch, {}).residual, 2);
  // Level is asked for, 4 beside it at the end.
  const Row level{RowKind::direction, {number(0), number(0), number(3), number(4), 0, 0}};
  EXPECT_DOUBLE_EQ(equations.evaluate(level, {}).residual, 4);
  // An edge across X at 2 (it runs up, its left is at lower X): P at 1.5 lies 1/2 to its left.
  const Row off{RowKind::off,
                {number(1.5), number(9), number(std::acos(0.0)), number(-2), 0, number(0.5)},
                1};
  EXPECT_NEAR(equations.evaluate(off, {}).residual, 0, 1e-15);
}

TEST(Equations, ARayIsNotMetFromBehind) {
  Equations equations;
  const auto number = [&](double value) { return equations.addQuantity(value); };
  const Row back{RowKind::direction, {number(0), number(0), number(-2), number(0), 0, 0}};
  EXPECT_DOUBLE_EQ(equations.evaluate(back, {}).residual, 4);
}

TEST(Equations, CoincidentPointsGiveFigures) {
  for (const RowKind kind : kAllKinds) {
    Equations equations;
    const Row row = freeRow(equations, kind);
    const std::vector<double> at(equations.variableCount(), 0.0);
    const RowValue value = equations.evaluate(row, at);
    EXPECT_TRUE(std::isfinite(value.residual));
    for (const double slope : value.slope) EXPECT_TRUE(std::isfinite(slope));
  }
}

TEST(Equations, AtRestARayCountsWhereItPoints) {
  Equations equations;
  const auto number = [&](double value) { return equations.addQuantity(value); };
  const Row row{RowKind::direction, {number(0), number(0), number(0), number(2), 0, number(0.3)}};
  const RowValue value = equations.evaluateAtRest(row, {});
  EXPECT_NEAR(value.residual, 0, 1e-15);
  EXPECT_NEAR(value.slope[2], -1, 1e-15);
  EXPECT_NEAR(value.slope[3], 0, 1e-15);
}

}  // namespace
}  // namespace inchwright
