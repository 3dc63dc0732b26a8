#include "core/place/answers.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace inchwright {
namespace {

using At = std::array<double, 2>;

// Places of a plane, free or fixed, and the readings between them: one block of all rows.
struct Web {
  Equations equations;
  RowChoices choices;
  std::vector<VariableKind> kinds;
  Block block;
  std::vector<double> start;
  struct Place {
    std::uint32_t x, y;
    At at;
  };

  Place fixed(At at) { return {equations.addQuantity(at[0]), equations.addQuantity(at[1]), at}; }
  // Traced a little beside where it is.
  Place free(At at) {
    Place place{0, 0, at};
    for (const std::size_t k : {0U, 1U}) {
      const Term term{equations.addVariable(), 1};
      (k == 0 ? place.x : place.y) = equations.addQuantity(0, std::span(&term, 1));
      block.variables.push_back(term.variable);
      kinds.push_back(VariableKind::along);
      start.push_back(at[k] + (start.size() % 3 == 0 ? 0.004 : -0.003));
    }
    return place;
  }
  void distance(const Place& a, const Place& b) {
    const double apart = std::hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
    block.rows.push_back(equations.addRow(
        {RowKind::distance, {a.x, a.y, b.x, b.y, 0, 0, equations.addQuantity(apart)}}));
  }
  AnswerSearch answers(const std::function<bool()>& traceDecides = {}) {
    return answersOf(equations, choices, kinds, block, start, traceDecides);
  }
};

// A ring of places, each a distance from the next and from a fixed one of its own. The second lies
// on (8/5, 16/5), what holds it on one line from (4, 0) to (0, 2): mirrored about that line it is
// on (0, 0).
Web foldingRing(std::size_t count) {
  Web web;
  std::vector<Web::Place> ring;
  for (std::size_t i = 0; i < count; ++i) {
    const double turn = 2 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(count);
    const At at{4 * std::cos(turn), 3 * std::sin(turn)};
    ring.push_back(web.free(i == 1 ? At{1.6, 3.2} : i == 2 ? At{0, 2} : at));
  }
  for (std::size_t i = 0; i < count; ++i) {
    web.distance(ring[i], ring[(i + 1) % count]);
    const double turn = 2.2 * static_cast<double>(i * i + 1);
    const At from{ring[i].at[0] + 2 * std::cos(turn), ring[i].at[1] + 2 * std::sin(turn)};
    web.distance(web.fixed(i == 1 ? At{5, -0.5} : from), ring[i]);
  }
  return web;
}

bool isAt(const Answer& answer, std::size_t place, At at, double within = 1e-6) {
  return std::abs(answer.values[2 * place] - at[0]) < within &&
         std::abs(answer.values[2 * place + 1] - at[1]) < within;
}

// Whether one of them differs from the first in that the second place is folded over, and in
// nothing else.
bool hasFolded(const AnswerSearch& search) {
  for (const Answer& answer : search.answers) {
    bool isElsewhereAlike = isAt(answer, 1, {0, 0});
    for (std::size_t i = 0; i < answer.values.size(); ++i) {
      const bool isOfSecond = i / 2 == 1;
      isElsewhereAlike =
          isElsewhereAlike &&
          (isOfSecond || std::abs(answer.values[i] - search.answers[0].values[i]) < 1e-6);
    }
    if (isElsewhereAlike) return true;
  }
  return false;
}

// Of so many places no start at random finds it; the mirror image of the one does.
TEST(Answers, APlaceFoldedOverIsFoundInALargeBlockToo) {
  for (const std::size_t count : {6U, 7U, 8U}) {
    Web web = foldingRing(count);
    const std::vector<double> start = web.start;
    const AnswerSearch search = web.answers();
    EXPECT_EQ(isLarge(web.block), count > 6);
    ASSERT_GE(search.answers.size(), 2U) << count;
    EXPECT_TRUE(isAt(search.answers[0], 1, {1.6, 3.2})) << "nearest to where it was traced";
    EXPECT_TRUE(hasFolded(search)) << count;
    EXPECT_FALSE(search.isComplete || search.isNearOnly);
    EXPECT_EQ(search.misses, 0);
    EXPECT_EQ(web.start, start);
  }
}

// Where the tracing rules out what lies further off, a large block is searched close by alone: of
// seven nothing else is there, of eight one that lies a tenth of an inch off.
TEST(Answers, WhereTheTracingDecidesOnlyCloseOnesAreLookedFor) {
  const auto decides = [](bool does) { return [does] { return does; }; };
  Web seven = foldingRing(7), eight = foldingRing(8), six = foldingRing(6);
  const AnswerSearch alone = seven.answers(decides(true));
  EXPECT_TRUE(alone.isNearOnly);
  ASSERT_EQ(alone.answers.size(), 1U);
  EXPECT_TRUE(isAt(alone.answers[0], 1, {1.6, 3.2}));
  EXPECT_TRUE(alone.isFirm);
  const AnswerSearch two = eight.answers(decides(true));
  EXPECT_TRUE(two.isNearOnly);
  ASSERT_EQ(two.answers.size(), 2U);
  EXPECT_TRUE(isAt(two.answers[1], 0, {4.09053, 0.06995}, 1e-4));
  EXPECT_FALSE(two.isFirm) << "of two answers neither is seen to be";

  const AnswerSearch far = seven.answers(decides(false));
  EXPECT_FALSE(far.isNearOnly);
  EXPECT_TRUE(hasFolded(far));
  const AnswerSearch small = six.answers(decides(true));
  EXPECT_FALSE(small.isNearOnly);
  EXPECT_TRUE(hasFolded(small));
}

// A reading that can be meant in two ways leaves answers far off whatever the tracing says, and
// each answer says how it was meant.
TEST(Answers, OfSeveralMeaningsAllAreLookedFor) {
  Web web = foldingRing(7);
  web.choices.resize(web.equations.rows().size());
  Row other = web.equations.rows()[0];
  other.of[6] = web.equations.addQuantity(2);
  web.choices[0] = {other};
  const Row own = web.equations.rows()[0];
  const AnswerSearch search = web.answers([] { return true; });
  EXPECT_FALSE(search.isNearOnly);
  EXPECT_TRUE(hasFolded(search));
  int meantOtherwise = 0;
  for (const Answer& answer : search.answers) {
    const double apart =
        std::hypot(answer.values[0] - answer.values[2], answer.values[1] - answer.values[3]);
    EXPECT_NEAR(apart, answer.meant[0] == other ? 2 : 4, 1e-9);
    meantOtherwise += answer.meant[0] == other ? 1 : 0;
  }
  EXPECT_GE(meantOtherwise, 1);
  EXPECT_EQ(web.equations.rows()[0], own);
}

// 50 between two that lie 4 apart: nothing is made up, and it is told by how much they miss.
TEST(Answers, RowsThatStayApartHaveNone) {
  Web web = foldingRing(7);
  web.equations.row(web.block.rows[0]).of[6] = web.equations.addQuantity(50);
  int asked = 0;
  const AnswerSearch search = web.answers([&] { return ++asked > 0; });
  EXPECT_TRUE(search.answers.empty());
  EXPECT_GT(search.misses, 1);
  EXPECT_FALSE(search.isNearOnly || search.isFirm);
  EXPECT_EQ(asked, 0) << "there is no answer to decide on";
}

}  // namespace
}  // namespace inchwright
