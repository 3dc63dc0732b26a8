#include "core/place/plane.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace inchwright {
namespace {

// A problem put together point by point; every figure can be opened.
struct Sketch {
  PlaneProblem problem;
  std::vector<std::uint32_t> figures;  // by row

  std::uint32_t variable(VariableKind kind, double start, bool traced) {
    problem.kinds.push_back(kind);
    problem.start.push_back(start);
    problem.isTraced.push_back(traced);
    return problem.equations.addVariable();
  }
  std::uint32_t quantity(std::uint32_t one) {
    const Term term{one, 1};
    return problem.equations.addQuantity(0, std::span(&term, 1));
  }
  std::uint32_t fixed(double x, double y) {
    problem.points.push_back(
        {problem.equations.addQuantity(x), problem.equations.addQuantity(y), PlanePoint{x, y}});
    return static_cast<std::uint32_t>(problem.points.size() - 1);
  }
  std::uint32_t free(std::optional<PlanePoint> traced) {
    const PlanePoint at = traced.value_or(PlanePoint{});
    const auto x = variable(VariableKind::along, at.x, traced.has_value());
    const auto y = variable(VariableKind::along, at.y, traced.has_value());
    problem.points.push_back({quantity(x), quantity(y), traced});
    return static_cast<std::uint32_t>(problem.points.size() - 1);
  }
  std::uint32_t figure(double value) {
    const Term term{variable(VariableKind::figure, 0, false), 1};
    figures.push_back(term.variable);
    return problem.equations.addQuantity(value, std::span(&term, 1));
  }
  void add(const Row& row) {
    problem.rows.push_back(problem.equations.addRow(row));
    problem.spareWithin.push_back(1.0 / 128);
  }
  void distance(std::uint32_t a, std::uint32_t b, double value) {
    const auto &p = problem.points[a], &q = problem.points[b];
    add({RowKind::distance, {p.x, p.y, q.x, q.y, 0, 0, figure(value)}});
  }
  void angle(std::uint32_t a, std::uint32_t b, double degrees) {
    const auto &p = problem.points[a], &q = problem.points[b];
    add({RowKind::direction, {p.x, p.y, q.x, q.y, 0, figure(degrees * std::numbers::pi / 180)}});
  }
  PlanePoint at(const PlaneOutcome& outcome, std::uint32_t point) const {
    return {outcome.equations.valueOf(problem.points[point].x, outcome.variables),
            outcome.equations.valueOf(problem.points[point].y, outcome.variables)};
  }
};

void expectAt(PlanePoint is, double x, double y) {
  EXPECT_NEAR(is.x, x, 1e-12);
  EXPECT_NEAR(is.y, y, 1e-12);
}

TEST(Plane, TheTracingTakesTheMirrorImageItPointsOut) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
  const auto c = sketch.free(PlanePoint{3.1, -3.8});
  sketch.distance(a, c, 5);
  sketch.distance(b, c, 5);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  ASSERT_EQ(outcome.blocks.size(), 1U);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::mirrorTaken);
  EXPECT_EQ(outcome.blocks[0].answers.size(), 2U);
  expectAt(sketch.at(outcome, c), 3, -4);
  EXPECT_LE(outcome.residual, 1e-10);
}

TEST(Plane, WithoutATracingBothAreNamedAndWhatHangsOnThemWaits) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
  const auto c = sketch.free(std::nullopt), d = sketch.free(std::nullopt);
  sketch.distance(a, c, 5);
  sketch.distance(b, c, 5);
  sketch.distance(c, d, 1);
  sketch.angle(c, d, 30);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  ASSERT_EQ(outcome.blocks.size(), 2U);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::twoAnswers);
  ASSERT_EQ(outcome.blocks[0].answers.size(), 2U);
  EXPECT_NEAR(std::abs(outcome.blocks[0].answers[0].values[1]), 4, 1e-12);
  EXPECT_NEAR(outcome.blocks[0].answers[0].values[1], -outcome.blocks[0].answers[1].values[1],
              1e-12);
  EXPECT_EQ(outcome.blocks[1].fate, BlockFate::waits);
}

TEST(Plane, AQuarterOfTheWayIsTheLimit) {
  for (const auto& [x, taken] : {std::pair(1.95, true), std::pair(2.05, false)}) {
    Sketch sketch;
    const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
    const auto c = sketch.free(PlanePoint{3, 4 + x});
    sketch.distance(a, c, 5);
    sketch.distance(b, c, 5);
    EXPECT_EQ(placeInPlane(sketch.problem).blocks[0].fate == BlockFate::mirrorTaken, taken);
  }
}

TEST(Plane, ImagesAnEighthApartAreNotChosenBetween) {
  for (const auto& [half, taken] : {std::pair(1.0 / 17, false), std::pair(1.0 / 15, true)}) {
    Sketch sketch;
    const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
    const auto c = sketch.free(PlanePoint{3, half});
    sketch.distance(a, c, std::hypot(3, half));
    sketch.distance(b, c, std::hypot(3, half));
    EXPECT_EQ(placeInPlane(sketch.problem).blocks[0].fate == BlockFate::mirrorTaken, taken);
  }
}

TEST(Plane, TheWayRoundSettlesIt) {
  for (const int sense : {1, -1}) {
    Sketch sketch;
    const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
    const auto c = sketch.free(std::nullopt);
    sketch.distance(a, c, 5);
    sketch.distance(b, c, 5);
    sketch.problem.turnsRound.push_back({{a, b, c}, sense});
    const PlaneOutcome outcome = placeInPlane(sketch.problem);
    EXPECT_EQ(outcome.blocks[0].fate, BlockFate::placed);
    expectAt(sketch.at(outcome, c), 3, 4 * sense);
  }
}

TEST(Plane, ASpareReadingThatFitsOneImageTellsThemApart) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0), e = sketch.fixed(3, 5);
  const auto c = sketch.free(std::nullopt);
  sketch.distance(a, c, 5);
  sketch.distance(b, c, 5);
  sketch.distance(e, c, 1);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::placed);
  expectAt(sketch.at(outcome, c), 3, 4);
  ASSERT_EQ(outcome.spares.size(), 1U);
  EXPECT_TRUE(outcome.spares[0].agrees);
}

TEST(Plane, ASpareReadingThatMissesNeverMovesAPlace) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0), e = sketch.fixed(3, 5);
  const auto c = sketch.free(PlanePoint{3, 4});
  sketch.distance(a, c, 5);
  sketch.distance(b, c, 5);
  sketch.distance(e, c, 1.25);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  expectAt(sketch.at(outcome, c), 3, 4);
  ASSERT_EQ(outcome.spares.size(), 1U);
  EXPECT_FALSE(outcome.spares[0].agrees);
  EXPECT_NEAR(outcome.spares[0].misses, -0.25, 1e-12);
}

TEST(Plane, CirclesThatDoNotMeetPlaceNothing) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
  const auto c = sketch.free(PlanePoint{3, 1});
  sketch.distance(a, c, 1);
  sketch.distance(b, c, 2);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::apart);
  EXPECT_GT(outcome.blocks[0].misses, 0.1);
  EXPECT_FALSE(outcome.isPlaced[outcome.blocks[0].block.variables[0]]);
}

TEST(Plane, CirclesThatOnlyTouchLeaveItFree) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
  const auto c = sketch.free(PlanePoint{3, 0.1});
  sketch.distance(a, c, 3);
  sketch.distance(b, c, 3);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::free);
  EXPECT_FALSE(outcome.isPlaced[outcome.blocks[0].block.variables[0]]);
}

TEST(Plane, OneReadingLeavesBothLoose) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0);
  const auto c = sketch.free(PlanePoint{3, 4});
  sketch.distance(a, c, 5);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  EXPECT_TRUE(outcome.blocks.empty());
  ASSERT_EQ(outcome.loose.size(), 2U);
}

TEST(Plane, ARayAndACircleMeetOnce) {
  Sketch sketch;
  const auto a = sketch.fixed(1, 1);
  const auto c = sketch.free(std::nullopt);
  sketch.angle(a, c, 210);
  sketch.distance(a, c, 2);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  ASSERT_EQ(outcome.blocks[0].fate, BlockFate::placed);
  expectAt(sketch.at(outcome, c), 1 - std::sqrt(3.0), 0);
}

// A triangle of three unknown places, held by three distances of its own and one more each.
PlaneOutcome formOn(const std::array<PlanePoint, 3>& about, const std::array<PlanePoint, 3>& truth,
                    Sketch& sketch, std::vector<std::uint32_t>& own) {
  std::mt19937_64 random(99);
  std::normal_distribution<double> shaky(0, 0.005);
  std::vector<std::uint32_t> held;
  for (const PlanePoint& p : about) held.push_back(sketch.fixed(p.x, p.y));
  for (const PlanePoint& p : truth) {
    own.push_back(sketch.free(PlanePoint{p.x + shaky(random), p.y + shaky(random)}));
  }
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t j = (i + 1) % 3;
    sketch.distance(own[i], own[j], std::hypot(truth[i].x - truth[j].x, truth[i].y - truth[j].y));
    sketch.distance(held[i], own[i], std::hypot(truth[i].x - about[i].x, truth[i].y - about[i].y));
  }
  return placeInPlane(sketch.problem);
}

TEST(Plane, AFormFloatsOnTheDistancesThatHoldIt) {
  const std::array<PlanePoint, 3> truth{{{2, 2}, {5, 3}, {3, 5}}};
  Sketch sketch;
  std::vector<std::uint32_t> own;
  const PlaneOutcome outcome = formOn({{{0, 0.5}, {5, 0}, {6, 5}}}, truth, sketch, own);
  ASSERT_EQ(outcome.blocks.size(), 1U);
  EXPECT_EQ(outcome.blocks[0].block.variables.size(), 6U);
  ASSERT_EQ(outcome.blocks[0].fate, BlockFate::mirrorTaken);
  for (std::size_t i = 0; i < 3; ++i) {
    const PlanePoint p = sketch.at(outcome, own[i]);
    EXPECT_NEAR(p.x, truth[i].x, 1e-10);
    EXPECT_NEAR(p.y, truth[i].y, 1e-10);
  }
}

TEST(Plane, AFormWhoseHoldsMeetInAPointCanStillTurn) {
  // The three ways from what holds it meet at (4, 4): about there it turns a little for nothing.
  Sketch sketch;
  std::vector<std::uint32_t> own;
  const PlaneOutcome outcome =
      formOn({{{0, 0}, {7, 1}, {1, 7}}}, {{{2, 2}, {5, 3}, {3, 5}}}, sketch, own);
  ASSERT_EQ(outcome.blocks.size(), 1U);
  EXPECT_EQ(outcome.blocks[0].fate, BlockFate::free);
}

TEST(Plane, SlopesAgreeWithSolvingAnew) {
  Sketch sketch;
  const auto a = sketch.fixed(0, 0), b = sketch.fixed(6, 0);
  const auto c = sketch.free(PlanePoint{2.5, 3.5}), d = sketch.free(PlanePoint{4, 6});
  sketch.distance(a, c, 4.5);
  sketch.distance(b, c, 4.75);
  sketch.distance(c, d, 3);
  sketch.angle(a, d, 57);
  const PlaneOutcome outcome = placeInPlane(sketch.problem);
  const auto slopes = slopesByFigure(sketch.problem, outcome);
  for (const std::uint32_t figure : sketch.figures) {
    PlaneProblem moved = sketch.problem;
    const double h = 1e-6;
    moved.start[figure] = h;
    const PlaneOutcome other = placeInPlane(moved);
    for (std::size_t i = 0; i < slopes.size(); ++i) {
      if (sketch.problem.kinds[i] == VariableKind::figure) continue;
      const auto found = slopes[i].find(figure);
      // First order over a step of h: off by about h.
      EXPECT_NEAR(found == slopes[i].end() ? 0 : found->second,
                  (other.variables[i] - outcome.variables[i]) / h, 1e-4);
    }
  }
}

TEST(Plane, RandomPrintsComeOutWhereTheyWereDrawn) {
  std::mt19937_64 random(20240602);
  std::uniform_real_distribution<double> spread(0, 8);
  std::uniform_real_distribution<double> shaky(-1.0 / 64, 1.0 / 64);
  int taken = 0, doubted = 0;
  for (int run = 0; run < 300; ++run) {
    Sketch sketch;
    std::vector<PlanePoint> truth{{0, 0}, {3, 0}};
    sketch.fixed(0, 0);
    sketch.fixed(3, 0);
    for (int i = 2; i < 10; ++i) {
      const PlanePoint p{spread(random), spread(random)};
      truth.push_back(p);
      const auto own = sketch.free(PlanePoint{p.x + shaky(random), p.y + shaky(random)});
      const auto from = static_cast<std::uint32_t>(random() % own);
      const auto to = static_cast<std::uint32_t>((from + 1 + random() % (own - 1)) % own);
      const auto away = [&](std::uint32_t other) {
        return std::hypot(p.x - truth[other].x, p.y - truth[other].y);
      };
      sketch.distance(from, own, away(from));
      if (random() % 3 == 0) {
        sketch.angle(from, own,
                     std::atan2(p.y - truth[from].y, p.x - truth[from].x) * 180 / std::numbers::pi);
      } else {
        sketch.distance(to, own, away(to));
      }
    }
    const PlaneOutcome outcome = placeInPlane(sketch.problem);
    for (const PlacedBlock& block : outcome.blocks) {
      if (block.fate == BlockFate::placed || block.fate == BlockFate::mirrorTaken) {
        ++taken;
        for (const std::uint32_t point : block.points) {
          const PlanePoint p = sketch.at(outcome, point);
          // Weakly held places multiply the last bits of what they hang on.
          EXPECT_NEAR(p.x, truth[point].x, 1e-9 * (1 + block.leverage)) << "run " << run;
          EXPECT_NEAR(p.y, truth[point].y, 1e-9 * (1 + block.leverage)) << "run " << run;
        }
      } else {
        ++doubted;
        EXPECT_NE(block.fate, BlockFate::apart) << "run " << run;
      }
    }
  }
  EXPECT_GT(taken, 2000);
  EXPECT_LT(doubted, 300);
}

TEST(Plane, OptionsThatMakeNoSenseAreNamed) {
  PlaneOptions options;
  EXPECT_TRUE(options.isValid());
  options.takenWithin = 0.5;
  EXPECT_EQ(options.isValid().error().place, "takenWithin");
  options = {};
  options.clearlyApart = -1;
  EXPECT_EQ(options.isValid().error().place, "clearlyApart");
  options = {};
  options.weakFrom = 0;
  EXPECT_EQ(options.isValid().error().place, "weakFrom");
}

}  // namespace
}  // namespace inchwright
