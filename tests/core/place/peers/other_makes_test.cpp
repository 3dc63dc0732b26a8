#include <ceres/ceres.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/core/place/peers/other_print.h"
#include "tests/core/place/placed_part.h"

namespace inchwright::test {
namespace {

constexpr double kTickInches = 1 / 2'540'000'000.0;

/// The equations of a print as one function of all its numbers, for numeric derivatives.
class AllRows {
 public:
  explicit AllRows(const OtherPrint& print) : print_(print) {}
  bool operator()(double const* const* at, double* residuals) const {
    const std::vector<double> values(at[0], at[0] + print_.truth.size());
    for (std::size_t i = 0; i < print_.equations.size(); ++i) {
      residuals[i] = print_.equations[i](values);
    }
    return true;
  }

 private:
  const OtherPrint& print_;
};

/// What Ceres Solver makes of a print, from about where it was drawn.
struct BesideIt {
  std::vector<double> values;
  double residual = 0;

  explicit BesideIt(const OtherPrint& print) : values(print.truth) {
    auto* cost =
        new ceres::DynamicNumericDiffCostFunction<AllRows, ceres::CENTRAL>(new AllRows(print));
    cost->AddParameterBlock(static_cast<int>(values.size()));
    cost->SetNumResiduals(static_cast<int>(print.equations.size()));
    ceres::Problem problem;
    problem.AddResidualBlock(cost, nullptr, values.data());
    ceres::Solver::Options options;
    options.linear_solver_type = ceres::DENSE_QR;
    options.logging_type = ceres::SILENT;
    options.function_tolerance = 1e-30;
    options.gradient_tolerance = 1e-16;
    options.parameter_tolerance = 1e-16;
    options.initial_trust_region_radius = 1e12;
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
    for (const auto& equation : print.equations) {
      residual = std::max(residual, std::abs(equation(values)));
    }
  }
};

struct Tally {
  int places = 0, placed = 0, untold = 0;
};

Tally tally(const OtherPrint& print, double allowed) {
  const BesideIt peer(print);
  EXPECT_LT(peer.residual, kTickInches / 4);
  const PlacedForTest part = PlacedForTest::of(print.part);
  // A sound print is never said to contradict itself, however much of it stays open.
  EXPECT_TRUE(part.placed.clashes.empty());
  double most = 1;
  for (const WeakPlace& weak : part.placed.weak) most = std::max(most, weak.factor);
  Tally count;
  for (const auto& [id, at] : print.places) {
    ++count.places;
    if (part.isPlaced(id, Axis::x) && part.isPlaced(id, Axis::y)) {
      ++count.placed;
      EXPECT_NEAR(part.from("L", id, Axis::x), peer.values[at], allowed * most) << id;
      EXPECT_NEAR(part.from("F", id, Axis::y), peer.values[at + 1], allowed * most) << id;
    }
  }
  const bool isWhole = count.placed == count.places;
  if (!isWhole && part.placed.answers.empty() && part.placed.free.empty()) ++count.untold;
  return count;
}

TEST(OtherMakes, TracedOnesLieWhereAnotherSolverHasThem) {
  Tally all;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Tally one = tally(OtherPrint::make(seed, true), 4 * kTickInches);
    all.places += one.places;
    all.placed += one.placed;
    all.untold += one.untold;
  }
  EXPECT_GT(all.placed, all.places * 19 / 20);
  EXPECT_EQ(all.untold, 0);
}

// Nothing says which answer is meant: what is placed all the same has one alone, however far off
// the others lie.
TEST(OtherMakes, UntracedNothingIsPlacedWhereItMightNotLie) {
  for (const double size : {1.0, 3.0, 10.0}) {
    Tally all;
    for (std::uint64_t seed = 5001; seed <= 5400; ++seed) {
      SCOPED_TRACE("size " + std::to_string(size) + ", seed " + std::to_string(seed));
      const Tally one = tally(OtherPrint::make(seed, false, size), size * 4 * kTickInches);
      all.places += one.places;
      all.placed += one.placed;
      all.untold += one.untold;
    }
    EXPECT_GT(all.placed, all.places / 2);
    EXPECT_LT(all.placed, all.places);
    EXPECT_EQ(all.untold, 0);
  }
}

}  // namespace
}  // namespace inchwright::test
