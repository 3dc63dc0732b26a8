// Ranges and budgets of random prints against references that share nothing with them: Dijkstra's
// algorithm and Bellman–Ford of the Boost Graph Library, and linear programs solved by GLPK.
//
// GLPK reckons in doubles, where all whole numbers of ticks that arise here (below 2^32) are exact.
// A range is a whole number and its answer has to be within a thousandth of a tick of it. A room is
// a fraction of a tick; its answer has to be within a thousandth, and the whole ticks the same.

#include <glpk.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/graph/bellman_ford_shortest_paths.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <random>

#include "core/graph/filling.h"
#include "core/tolerance/budget.h"
#include "core/tolerance/ranges.h"
#include "tests/core/tolerance/print_at_random.h"
#include "tests/core/tolerance/random_limits.h"

namespace inchwright {
namespace {

using test::possibleEdges;

/// A part of points along X whose readings have the limits of the edges, unequal or as limits.
Part partOf(const std::vector<DifferenceEdge>& edges, std::uint32_t points) {
  Part part;
  for (std::uint32_t i = 0; i < points; ++i) {
    Feature point;
    point.id = "P" + std::to_string(1'000 + i);
    part.features.push_back(point);
  }
  for (const DifferenceEdge& edge : edges) {
    Reading reading;
    reading.id = "r" + std::to_string(part.readings.size() + 1);
    reading.from = part.features[edge.a].id;
    reading.to = part.features[edge.b].id;
    // Unequal: the figure is a third of the way up its limits, or outside of them altogether.
    const std::int64_t third = (edge.high - edge.low) / 3;
    const std::int64_t figure = part.readings.size() % 4 == 0 ? edge.low - third : edge.low + third;
    reading.figure.value = Length::ticks(figure);
    reading.figure.tolerance =
        Tolerance{Length::ticks(edge.high - figure), Length::ticks(edge.low - figure)};
    part.readings.push_back(reading);
  }
  return part;
}

struct Shape {
  std::uint32_t points;
  std::uint32_t more;  ///< readings beyond those of a tree
};

/// Tree-like and redundant ones of up to 200 points.
Shape shapeOf(int round, std::mt19937_64& random) {
  const auto points = static_cast<std::uint32_t>(round % 8 == 0 ? 200 : 2 + random() % 199);
  const std::uint32_t more[] = {0, 1 + points / 20, points / 5, 2 * points};
  return {points, more[round % 4]};
}

struct Cost {
  std::int64_t ticks;
};
using Graph = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, Cost>;

// x(to) − x(from) is at most what an edge costs, less potentials where there are any; with `low`
// all edges are turned round.
Graph graphOf(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges, bool low,
              const std::vector<std::int64_t>& potentials) {
  std::vector<std::pair<std::size_t, std::size_t>> ends;
  std::vector<Cost> costs;
  const auto add = [&](std::uint32_t from, std::uint32_t to, std::int64_t ticks) {
    if (low) std::swap(from, to);
    ends.push_back({from, to});
    costs.push_back({ticks + potentials[from] - potentials[to]});
  };
  for (const DifferenceEdge& edge : edges) {
    add(edge.a, edge.b, edge.high);
    add(edge.b, edge.a, -edge.low);
  }
  return Graph(boost::edges_are_unsorted_multi_pass, ends.begin(), ends.end(), costs.begin(),
               nodes);
}

// What is farthest from the source, by Bellman and Ford; empty when there is no end to it.
std::optional<std::vector<std::int64_t>> farthestByBellmanFord(
    std::uint32_t nodes, const std::vector<DifferenceEdge>& edges, std::uint32_t source, bool low) {
  const Graph graph = graphOf(nodes, edges, low, std::vector<std::int64_t>(nodes));
  std::vector<std::int64_t> farthest(nodes, INT64_MAX / 4);
  farthest[source] = 0;
  const bool holds = boost::bellman_ford_shortest_paths(
      graph, nodes,
      boost::weight_map(boost::get(&Cost::ticks, graph)).distance_map(farthest.data()));
  if (!holds) return std::nullopt;
  return farthest;
}

// The same by Dijkstra's algorithm, with the outcome from another source as potentials.
std::vector<std::int64_t> farthestByDijkstra(std::uint32_t nodes,
                                             const std::vector<DifferenceEdge>& edges,
                                             std::uint32_t source, bool low) {
  const auto potentials = *farthestByBellmanFord(nodes, edges, (source + 1) % nodes, low);
  const Graph graph = graphOf(nodes, edges, low, potentials);
  std::vector<std::int64_t> farthest(nodes);
  boost::dijkstra_shortest_paths(
      graph, source,
      boost::weight_map(boost::get(&Cost::ticks, graph))
          .distance_map(boost::make_iterator_property_map(farthest.begin(),
                                                          boost::get(boost::vertex_index, graph))));
  for (std::uint32_t i = 0; i < nodes; ++i) farthest[i] += potentials[i] - potentials[source];
  return farthest;
}

/// A linear program of GLPK with free variables, some of them fixed.
class Program {
 public:
  explicit Program(std::size_t variables) : program_(glp_create_prob()) {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(program_, GLP_MAX);
    glp_add_cols(program_, static_cast<int>(variables));
    for (int i = 1; i <= static_cast<int>(variables); ++i) {
      glp_set_col_bnds(program_, i, GLP_FR, 0, 0);
    }
  }
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  ~Program() { glp_delete_prob(program_); }

  void fix(std::size_t variable, double value) {
    glp_set_col_bnds(program_, static_cast<int>(variable) + 1, GLP_FX, value, value);
  }
  void want(std::size_t variable, double factor) {
    glp_set_obj_coef(program_, static_cast<int>(variable) + 1, factor);
  }
  void addAtMost(const std::vector<std::pair<std::size_t, double>>& factors, double bound) {
    std::vector<int> columns{0};
    std::vector<double> values{0};
    for (const auto& [variable, factor] : factors) {
      columns.push_back(static_cast<int>(variable) + 1);
      values.push_back(factor);
    }
    const int row = glp_add_rows(program_, 1);
    glp_set_row_bnds(program_, row, GLP_UP, 0, bound);
    glp_set_mat_row(program_, row, static_cast<int>(factors.size()), columns.data(), values.data());
  }
  /// The greatest value of what is wanted.
  double solve() {
    EXPECT_EQ(glp_simplex(program_, nullptr), 0);
    EXPECT_EQ(glp_get_status(program_), GLP_OPT);
    return glp_get_obj_val(program_);
  }

 private:
  glp_prob* program_;
};

std::int64_t nearestTick(double value) {
  EXPECT_LT(std::abs(value - std::round(value)), 1e-3);
  return std::llround(value);
}

// The greatest x(to) − x(from) by GLPK.
std::int64_t farthestByGlpk(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges,
                            std::uint32_t from, std::uint32_t to) {
  Program program(nodes);
  program.fix(from, 0);
  program.want(to, 1);
  for (const DifferenceEdge& edge : edges) {
    program.addAtMost({{edge.b, 1}, {edge.a, -1}}, static_cast<double>(edge.high));
    program.addAtMost({{edge.a, 1}, {edge.b, -1}}, static_cast<double>(-edge.low));
  }
  return nearestTick(program.solve());
}

TEST(Peers, RangesAgreeWithBoostAndGlpkToTheTick) {
  std::mt19937_64 random(20'251'125);
  for (int round = 0; round < 48; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 20251125");
    const Shape shape = shapeOf(round, random);
    const auto edges = possibleEdges(random, shape.points, shape.more, round % 3 == 0 ? 40 : 9'999);
    const Part part = partOf(edges, shape.points);
    const auto network = toleranceNetworkOf(part, Axis::x);
    ASSERT_TRUE(network.ok());
    const auto source = static_cast<std::uint32_t>(random() % shape.points);
    const auto ranges = rangesFrom(part, *network, part.features[source].id);
    ASSERT_TRUE(ranges.ok());
    ASSERT_TRUE(ranges->contradiction.empty());
    ASSERT_EQ(ranges->places.size(), shape.points);
    const auto high = *farthestByBellmanFord(shape.points, edges, source, false);
    const auto low = *farthestByBellmanFord(shape.points, edges, source, true);
    ASSERT_EQ(farthestByDijkstra(shape.points, edges, source, false), high);
    ASSERT_EQ(farthestByDijkstra(shape.points, edges, source, true), low);
    for (std::uint32_t i = 0; i < shape.points; ++i) {
      ASSERT_EQ(ranges->places[i].id, part.features[i].id);
      ASSERT_EQ(ranges->places[i].span, (Span{-low[i], high[i]})) << i;
    }
    for (int pair = 0; pair < 3; ++pair) {
      const auto to = static_cast<std::uint32_t>(random() % shape.points);
      ASSERT_EQ(farthestByGlpk(shape.points, edges, source, to), ranges->places[to].span.high);
      ASSERT_EQ(-farthestByGlpk(shape.points, edges, to, source), ranges->places[to].span.low);
    }
  }
}

TEST(Peers, ContradictionsAreThoseThatBoostFinds) {
  std::mt19937_64 random(31);
  int contradicting = 0;
  for (int round = 0; round < 60; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 31");
    const Shape shape = shapeOf(round, random);
    auto edges = possibleEdges(random, shape.points, shape.more, 300);
    DifferenceEdge& moved = edges[random() % edges.size()];
    moved.low += 1'500;
    moved.high += 1'500;
    const Part part = partOf(edges, shape.points);
    const auto network = toleranceNetworkOf(part, Axis::x);
    const auto ranges = rangesFrom(part, *network, part.features[0].id);
    ASSERT_TRUE(ranges.ok());
    const bool holds = farthestByBellmanFord(shape.points, edges, 0, false).has_value();
    ASSERT_EQ(ranges->contradiction.empty(), holds);
    contradicting += holds ? 0 : 1;
  }
  EXPECT_GT(contradicting, 10);
}

std::size_t numberOf(const Part& part, const Id& id) {
  const auto found = std::find_if(part.features.begin(), part.features.end(),
                                  [&](const Feature& one) { return one.id == id; });
  return static_cast<std::size_t>(found - part.features.begin());
}

// All that a print says, middles and equal spaces included, over the positions of its points.
void addPrint(Program& program, const Part& part) {
  const auto addExactly = [&](std::vector<std::pair<std::size_t, double>> sum, double value) {
    program.addAtMost(sum, value);
    for (auto& [variable, factor] : sum) factor = -factor;
    program.addAtMost(sum, -value);
  };
  const auto at = [&](const Id& id) { return numberOf(part, id); };
  for (const Reading& reading : part.readings) {
    const auto figure = static_cast<double>(reading.figure.value.ticks());
    const auto tolerance = reading.figure.tolerance.value_or(Tolerance{});
    const std::size_t from = at(reading.from);
    const std::size_t to = at(reading.to);
    program.addAtMost({{to, 1}, {from, -1}}, figure + static_cast<double>(tolerance.upper.ticks()));
    program.addAtMost({{to, -1}, {from, 1}},
                      -figure - static_cast<double>(tolerance.lower.ticks()));
  }
  for (const Understanding& one : part.understood) {
    const std::size_t first = at(one.of[0]);
    switch (one.kind) {
      case UnderstandingKind::inLine:
        addExactly({{first, 1}, {at(one.of[1]), -1}}, 0);
        break;
      case UnderstandingKind::midway:
        addExactly({{first, -2}, {at(one.between[0]), 1}, {at(one.between[1]), 1}}, 0);
        break;
      case UnderstandingKind::equal:
        addExactly({{first, 1}, {at(one.of[1]), -2}, {at(one.of[2]), 1}}, 0);
        break;
      default:
        addExactly({{first, 1}, {at(one.of[1]), 1}, {at(one.about), -2}}, 0);
    }
  }
}

// Rounded outwards to the tick, and GLPK is off by less than a thousandth.
void expectRoundedOutwards(std::int64_t end, double by, bool high) {
  const double beyond = high ? static_cast<double>(end) - by : by - static_cast<double>(end);
  EXPECT_GT(beyond, -1e-3) << end << " for " << by;
  EXPECT_LT(beyond, 1) << end << " for " << by;
  if (std::abs(by - std::round(by)) < 1e-3) {
    EXPECT_EQ(end, std::llround(by));
  }
}

TEST(Peers, RangesOverMiddlesAndEqualSpacesAreThoseOfGlpk) {
  std::mt19937_64 random(1'828);
  std::size_t fractions = 0;
  for (int round = 0; round < 60; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1828");
    const test::PrintAtRandom print(random, 1);
    const auto network = toleranceNetworkOf(print.part, Axis::x);
    ASSERT_TRUE(network.ok());
    const std::size_t from = random() % print.part.features.size();
    const auto ranges = rangesFrom(print.part, *network, print.part.features[from].id);
    ASSERT_TRUE(ranges.ok());
    ASSERT_TRUE(ranges->contradiction.empty());
    ASSERT_TRUE(ranges->leftOut.empty());
    ASSERT_EQ(ranges->places.size(), print.part.features.size());
    for (const PlaceRange& place : ranges->places) {
      for (const bool high : {false, true}) {
        Program program(print.part.features.size());
        program.fix(from, 0);
        program.want(numberOf(print.part, place.id), high ? 1 : -1);
        addPrint(program, print.part);
        const double farthest = high ? program.solve() : -program.solve();
        expectRoundedOutwards(high ? place.span.high : place.span.low, farthest, high);
        fractions += std::abs(farthest - std::round(farthest)) > 0.1 ? 1 : 0;
      }
    }
  }
  EXPECT_GT(fractions, 20u);
}

/// The program of a budget: targets, then rooms. Node 0 is zero.
class BudgetProgram {
 public:
  BudgetProgram(std::uint32_t nodes, const std::vector<DifferenceEdge>& edges,
                const std::vector<std::optional<double>>& settled)
      : program_(2 * nodes + 1), nodes_(nodes), level_(2 * nodes) {
    program_.fix(0, 0);
    for (std::uint32_t i = 0; i < nodes; ++i) {
      if (settled[i]) {
        program_.fix(nodes + i, *settled[i]);
      } else {
        program_.addAtMost({{level_, 1}, {nodes + i, -1}}, 0);
      }
    }
    for (const DifferenceEdge& edge : edges) {
      program_.addAtMost({{edge.b, 1}, {edge.a, -1}, {nodes + edge.a, 1}, {nodes + edge.b, 1}},
                         static_cast<double>(edge.high));
      program_.addAtMost({{edge.a, 1}, {edge.b, -1}, {nodes + edge.a, 1}, {nodes + edge.b, 1}},
                         static_cast<double>(-edge.low));
    }
  }

  /// The greatest level that every room not settled can have.
  double level() {
    program_.want(level_, 1);
    return program_.solve();
  }
  /// The greatest room of one node while the others keep at least a level.
  double roomOf(std::uint32_t node, double least) {
    program_.fix(level_, least);
    program_.want(nodes_ + node, 1);
    return program_.solve();
  }

 private:
  Program program_;
  std::uint32_t nodes_;
  std::size_t level_;
};

BudgetRequest requestOf(const Part& part) {
  BudgetRequest request;
  for (const Feature& feature : part.features) {
    request.places.push_back({feature.id, Rational(0), request.places.empty()});
  }
  return request;
}

TEST(Peers, TheTightestBudgetIsAsWideAsGlpkCanMakeIt) {
  std::mt19937_64 random(1'881);
  for (int round = 0; round < 24; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1881");
    const Shape shape = shapeOf(round, random);
    const auto edges = possibleEdges(random, shape.points, shape.more, 9'999);
    std::vector<std::optional<double>> settled(shape.points);
    settled[0] = 0;
    const double level = BudgetProgram(shape.points, edges, settled).level();
    const Part part = partOf(edges, shape.points);
    const auto network = toleranceNetworkOf(part, Axis::x);
    const auto budget = budgetOf(part, *network, requestOf(part));
    ASSERT_TRUE(budget.ok());
    ASSERT_TRUE(budget->notGuaranteed.empty());
    std::int64_t tightest = INT64_MAX;
    for (const PlaceBudget& one : budget->places) {
      if (!one.isZero) tightest = std::min(tightest, one.plusMinus.value());
    }
    // Rooms are fractions of a tick, rounded down; the double is nearer than any of them to a tick.
    ASSERT_EQ(static_cast<std::int64_t>(std::floor(level + 1e-6)), tightest);
  }
}

// Max–min fair by linear programs: the greatest level, then who can't have more, and again.
std::vector<std::optional<double>> fairByGlpk(std::uint32_t nodes,
                                              const std::vector<DifferenceEdge>& edges) {
  std::vector<std::optional<double>> settled(nodes);
  settled[0] = 0;
  for (;;) {
    std::vector<std::uint32_t> open;
    for (std::uint32_t i = 0; i < nodes; ++i) {
      if (!settled[i]) open.push_back(i);
    }
    if (open.empty()) return settled;
    const double level = BudgetProgram(nodes, edges, settled).level();
    std::vector<std::uint32_t> held;
    for (const std::uint32_t node : open) {
      // A hair below the level, so that the double's own error doesn't make it impossible.
      const double most = BudgetProgram(nodes, edges, settled).roomOf(node, level - 1e-7);
      if (most < level + 1e-3) held.push_back(node);
    }
    EXPECT_FALSE(held.empty());
    if (held.empty()) return settled;
    for (const std::uint32_t node : held) settled[node] = level - 1e-7;
  }
}

TEST(Peers, EveryLevelOfABudgetIsThatOfGlpk) {
  std::mt19937_64 random(1'789);
  for (int round = 0; round < 24; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1789");
    const auto points = static_cast<std::uint32_t>(3 + random() % 22);
    const auto edges =
        possibleEdges(random, points, static_cast<std::uint32_t>(random() % points), 9'999);
    const auto expected = fairByGlpk(points, edges);
    std::vector<std::optional<Rational>> given(points);
    given[0] = Rational(0);
    const auto filling =
        fillEvenly(points, edges, given, std::vector<std::optional<Rational>>(points));
    ASSERT_TRUE(filling.ok());
    for (std::uint32_t i = 0; i < points; ++i) {
      ASSERT_TRUE(filling->room[i] && expected[i]);
      ASSERT_NEAR(filling->room[i]->toDouble(), *expected[i], 1e-3) << i;
    }
    const Part part = partOf(edges, points);
    const auto network = toleranceNetworkOf(part, Axis::x);
    const auto budget = budgetOf(part, *network, requestOf(part));
    ASSERT_TRUE(budget.ok());
    for (std::uint32_t i = 1; i < points; ++i) {
      ASSERT_EQ(budget->places[i].plusMinus.value(),
                static_cast<std::int64_t>(std::floor(*expected[i] + 1e-3)));
    }
  }
}

}  // namespace
}  // namespace inchwright
