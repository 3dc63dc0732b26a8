// Pitch-circle coordinates from the top and left tangents, in the layout of the "jig boring" tables
// of Machinery's Handbook: x = 1/2 + 1/2 sin(360° k/N), y = 1/2 − 1/2 cos(360° k/N).

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

// Hole 1 at the top and then clockwise, on a circle that touches L on the left and K at the back.
Solution tangentCircle(int holes) {
  return solved(published("edge L x left\nedge K y back\nring A " + std::to_string(holes) +
                          " 1 90 clockwise\nr1 x L A 1/2\nr2 y A K 1/2"));
}

std::string atFivePlaces(Length length) {
  const Step step{Length::ticks(25'400), Unit::inch};
  return showAtStep(length.rational(), step).text;
}

TEST(PitchCircle, FiveHolesFromTheTangents) {
  const Solution solution = tangentCircle(5);
  const std::array<std::pair<const char*, const char*>, 5> published{{{"0.50000", "0.00000"},
                                                                      {"0.97553", "0.34549"},
                                                                      {"0.79389", "0.90451"},
                                                                      {"0.20611", "0.90451"},
                                                                      {"0.02447", "0.34549"}}};
  for (std::size_t k = 0; k < published.size(); ++k) {
    const Id hole = "A" + std::to_string(k + 1);
    EXPECT_EQ(atFivePlaces(distance(solution, "L", hole, Axis::x)), published[k].first) << hole;
    EXPECT_EQ(atFivePlaces(distance(solution, hole, "K", Axis::y)), published[k].second) << hole;
  }
}

// The formula itself, to the tick but for the rounding of the cosine (one tick either way, and the
// double's own 2e-16 of 2.5e9 ticks, which is nothing).
TEST(PitchCircle, AnyNumberOfHolesFollowsTheFormula) {
  for (int holes = 1; holes <= 100; ++holes) {
    const Solution solution = tangentCircle(holes);
    for (int k = 0; k < holes; ++k) {
      const Id hole = "A" + std::to_string(k + 1);
      const double turn = 2 * std::acos(-1.0) * k / holes;
      const double x = (0.5 + 0.5 * std::sin(turn)) * Length::kTicksPerInch;
      const double y = (0.5 - 0.5 * std::cos(turn)) * Length::kTicksPerInch;
      EXPECT_NEAR(static_cast<double>(distance(solution, "L", hole, Axis::x).ticks()), x, 1.0);
      EXPECT_NEAR(static_cast<double>(distance(solution, hole, "K", Axis::y).ticks()), y, 1.0);
    }
  }
}

// Six holes on 5 in about the centre: (±2.5, 0), (±1.25, ±2.165) (from memory).
TEST(PitchCircle, SixHolesAboutTheCentre) {
  const Solution solution = solved(published("ring A 6 5 0"));
  const std::array<std::pair<const char*, const char*>, 6> published{{{"2.500", "0.000"},
                                                                      {"1.250", "2.165"},
                                                                      {"-1.250", "2.165"},
                                                                      {"-2.500", "0.000"},
                                                                      {"-1.250", "-2.165"},
                                                                      {"1.250", "-2.165"}}};
  const Step thousandth{Length::ticks(2'540'000), Unit::inch};
  for (std::size_t k = 0; k < published.size(); ++k) {
    const Id hole = "A" + std::to_string(k + 1);
    const auto x = solution.between("A", hole, Axis::x);
    const auto y = solution.between("A", hole, Axis::y);
    ASSERT_TRUE(x && y);
    EXPECT_EQ(showAtStep(*x, thousandth).text, published[k].first) << hole;
    EXPECT_EQ(showAtStep(*y, thousandth).text, published[k].second) << hole;
  }
  // Cosines of 0°, 60°, 180° are exact, sines of 60° are not, and the solution says so.
  EXPECT_EQ(distance(solution, "A", "A2", Axis::x), length("1 1/4"));
  EXPECT_FALSE(solution.position("A2", Axis::y)->isExact());
}

// Straight across from hole 1 to hole 1 + `spaces`, in inches. For comparing with a printed value
// only.
double chord(int holes, const std::string& pcd, int spaces) {
  const Solution solution = solved(published("ring A " + std::to_string(holes) + " " + pcd + " 0"));
  const Id far = "A" + std::to_string(1 + spaces);
  return std::hypot(distance(solution, "A1", far, Axis::x).toInches(),
                    distance(solution, "A1", far, Axis::y).toInches());
}

// Chords of pitch circles, as tables of them give (from memory): 24 holes on a radius of 36.000
// are 9.398 apart; 5 holes with 3.000 across two spaces lie on a diameter of 3.154387; on a
// diameter of 1 neighbours are .4339 apart with 7 holes and .2817 with 11. Bounds: half the last
// place printed.
TEST(PitchCircle, Chords) {
  EXPECT_NEAR(chord(24, "72.000", 1), 9.398, 0.0005);
  EXPECT_NEAR(chord(5, "3.154387", 2), 3.000, 0.0000005);
  EXPECT_NEAR(chord(7, "1", 1), 0.4339, 0.00005);
  EXPECT_NEAR(chord(11, "1", 1), 0.2817, 0.00005);
}

}  // namespace
}  // namespace inchwright
