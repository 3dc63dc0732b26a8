#include "core/solution/chosen_answer.h"

#include <cmath>
#include <random>

#include "core/part/edit.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {
namespace {

Part named(const std::string& text) {
  Part part = PartText::read(text);
  part.name = "Plate";
  return part;
}

const std::string kBase =
    "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\n"
    "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n";

double inches(const Solution& solution, const char* from, const char* place, Axis axis) {
  const auto ticks = solution.between(from, place, axis);
  EXPECT_TRUE(ticks.has_value()) << place;
  return ticks ? ticks->toDouble() / static_cast<double>(Length::kTicksPerInch) : 0;
}

// Every answer of every place with several is chosen, and the place then lies there.
void expectEachCanBeChosen(const Part& part) {
  const Solution before = solved(part);
  ASSERT_FALSE(before.beyond.answers.empty());
  for (const SeveralAnswers& several : before.beyond.answers) {
    for (std::size_t i = 0; i < several.answers.size(); ++i) {
      const auto what = understandingFor(part, several, i);
      ASSERT_TRUE(what.ok()) << several.place << ": " << what.error().text;
      EXPECT_TRUE(what->stated);
      const auto next = addUnderstanding(part, *what);
      ASSERT_TRUE(next.ok()) << next.error().text;
      const Solution after = solved(*next);
      EXPECT_NEAR(inches(after, "L", several.place.c_str(), Axis::x),
                  several.answers[i][0].toInches(), 1e-7);
      EXPECT_NEAR(inches(after, "F", several.place.c_str(), Axis::y),
                  several.answers[i][1].toInches(), 1e-7);
      EXPECT_TRUE(after.beyond.answers.empty());
    }
  }
}

TEST(ChosenAnswer, TwoDistancesAreToldApartByAWayRound) {
  const Part part = named(kBase + "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\n");
  const Solution before = solved(part);
  ASSERT_EQ(before.beyond.answers.size(), 1U);
  const SeveralAnswers& several = before.beyond.answers[0];
  const bool isUpper = several.answers[0][1] > several.answers[1][1];
  const auto upper = understandingFor(part, several, isUpper ? 0 : 1);
  ASSERT_TRUE(upper.ok()) << upper.error().text;
  EXPECT_EQ(upper->kind, UnderstandingKind::wayRound);
  EXPECT_EQ(upper->of, (std::vector<Id>{"A", "B", "C"}));
  EXPECT_EQ(upper->sense, Sense::anticlockwise);
  expectEachCanBeChosen(part);
}

TEST(ChosenAnswer, TheTakenOneAndItsMirrorImageAreToldApartToo) {
  expectEachCanBeChosen(
      named(kBase + "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\ntraced C 2.01 2.06\n"));
}

TEST(ChosenAnswer, AGroupIsChosenByThePlaceItIsNamedBy) {
  expectEachCanBeChosen(named(kBase + "hole C 1/8\nhole D 1/8\nx1 x C D 1/2\nx2 y C D 1/4\n"
                                      "r1 centres A D 2\nr2 centres B D 2\n"));
}

// 1 1/4 from A and level 2 1/2 above the front: left or right of A.
TEST(ChosenAnswer, ADistanceAndAnAxisAreToldApart) {
  expectEachCanBeChosen(named(kBase + "hole C 1/8\nr1 centres A C 1 1/4\ny1 y F C 1 1/2\n"));
}

// A line along two holes is chosen by the side on which both lie; one that crosses between them is
// not to be said in one line.
TEST(ChosenAnswer, ALineIsChosenByTheSideOfWhatItTouches) {
  const Part part = named(kBase + "line M\ntangent M A\ntangent M B\nhole C 1/8\nr1 x A C 1\n");
  const Solution before = solved(part);
  ASSERT_EQ(before.beyond.answers.size(), 1U);
  const SeveralAnswers& several = before.beyond.answers[0];
  int chosen = 0;
  for (std::size_t i = 0; i < several.answers.size(); ++i) {
    const auto what = understandingFor(part, several, i);
    if (!what) continue;
    ++chosen;
    EXPECT_EQ(what->kind, UnderstandingKind::beside);
    EXPECT_EQ(what->of, (std::vector<Id>{"A", "B"}));
    EXPECT_EQ(what->about, "M");
    const auto next = addUnderstanding(part, *what);
    ASSERT_TRUE(next.ok()) << next.error().text;
    const Solution after = solved(*next);
    ASSERT_TRUE(after.beyond.lines[0].contains("M"));
    const double up = several.answers[i][1].toInches() > 0.75 ? 1 : -1;
    EXPECT_NEAR(leftOf(after.beyond.lines[0].at("M"), {0.5, 0.75 + up / 8}), 0, 1e-7);
  }
  EXPECT_EQ(chosen, 2);
}

// L hangs on E alone, and the part on R: answers are told from where its places count.
TEST(ChosenAnswer, ALowerSideThatIsNotPlacedIsNoneToTellFrom) {
  const Part part = named(
      "hole E 1/8\nedge L x left\nedge R x right\nedge F y front\nhole A 1/4\nhole B 1/4\n"
      "e1 x E L 1/4\nb1 x A B 3\nb2 x B R 1/2\nb3 y F A 3/4\nin_line y A B\nhole C 1/8\n"
      "r1 centres A C 2\nr2 centres B C 2\n");
  const Solution before = solved(part);
  ASSERT_EQ(before.beyond.answers.size(), 1U);
  for (const std::size_t answer : {0U, 1U}) {
    const auto what = understandingFor(part, before.beyond.answers[0], answer);
    ASSERT_TRUE(what.ok()) << what.error().text;
    EXPECT_EQ(what->of, (std::vector<Id>{"A", "B", "C"}));
  }
}

// Rising by 30° past A, above it or below.
TEST(ChosenAnswer, ALineThatTouchesOneIsChosenByTheSideOfThatOne) {
  Part part = named(kBase + "line M\ntangent M A\nr1 angle M - 30\n");
  part.readings.back().to.clear();
  const Solution before = solved(part);
  ASSERT_EQ(before.beyond.answers.size(), 1U);
  const SeveralAnswers& several = before.beyond.answers[0];
  ASSERT_EQ(several.answers.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    const auto what = understandingFor(part, several, i);
    ASSERT_TRUE(what.ok()) << what.error().text;
    EXPECT_EQ(what->of, std::vector<Id>{"A"});
    EXPECT_EQ(what->about, "M");
  }
}

TEST(ChosenAnswer, AnyTwoDistancesAreToldApart) {
  constexpr unsigned kSeed = 514;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  for (int i = 0; i < 60; ++i) {
    // A and B are 3 in apart; both circles meet well away from being tangent.
    const auto a = 28 + random() % 12, b = 28 + random() % 12;
    const std::string text = kBase + "hole C 1/8\nr1 centres A C " + std::to_string(a) +
                             "/16\nr2 centres B C " + std::to_string(b) + "/16\n";
    SCOPED_TRACE(text);
    expectEachCanBeChosen(named(text));
  }
}

}  // namespace
}  // namespace inchwright::test
