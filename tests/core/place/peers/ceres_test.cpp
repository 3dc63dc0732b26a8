#include <gtest/gtest.h>

#include "tests/support/ceres_placing.h"
#include "tests/support/random_placing.h"

namespace inchwright::test {
namespace {

// Each up to 60 places; hanging ones have mirror images, which the tracing tells apart for both.
TEST(BesideCeres, RandomPlacingsComeOutAlikeAndNoWorse) {
  constexpr double kTickInches = 1 / 2'540'000'000.0;
  for (const auto kind : {RandomPlacing::Kind::hanging, RandomPlacing::Kind::woven}) {
    const bool isWoven = kind == RandomPlacing::Kind::woven;
    for (std::uint64_t seed = 0; seed < (isWoven ? 4U : 60U); ++seed) {
      SCOPED_TRACE((isWoven ? "woven, seed " : "hanging, seed ") + std::to_string(seed));
      const std::uint32_t count =
          isWoven ? 4 + static_cast<std::uint32_t>(seed) * 4 : 1 + static_cast<std::uint32_t>(seed);
      const RandomPlacing placing = RandomPlacing::make(kind, count, seed);
      const PlaneProblem problem = placing.problem();
      const PlaneOutcome ours = placeInPlane(problem);
      CeresPlacing peer(placing);
      const double residual = peer.solve();
      ASSERT_LT(residual, kTickInches);
      EXPECT_LE(ours.residual, std::max(residual, kTickInches / 4));
      for (std::uint32_t i = 0; i < placing.places.size(); ++i) {
        const PlacedPoint& point = problem.points[i];
        const double x = ours.equations.valueOf(point.x, ours.variables);
        const double y = ours.equations.valueOf(point.y, ours.variables);
        EXPECT_NEAR(x, peer.at(i).x, 3 * kTickInches) << i;
        EXPECT_NEAR(y, peer.at(i).y, 3 * kTickInches) << i;
        EXPECT_NEAR(x, placing.places[i].truth.x, 3 * kTickInches) << i;
        EXPECT_NEAR(y, placing.places[i].truth.y, 3 * kTickInches) << i;
      }
    }
  }
}

}  // namespace
}  // namespace inchwright::test
