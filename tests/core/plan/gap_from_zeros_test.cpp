#include <gtest/gtest.h>

#include "core/plan/gap.h"
#include "core/say/stack_words.h"
#include "core/solution/solution.h"
#include "tests/core/plan/gaps.h"
#include "tests/core/plan/plates.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using namespace gaps;

/// A job whose parts are solved, so that zeros can be taken in them.
struct SolvedJob {
  explicit SolvedJob(Job asked) : job(std::move(asked)) {
    for (const Part& part : job.parts) {
      const auto solution = solve(part);
      EXPECT_TRUE(solution.ok());
      solutions.push_back(solution ? *solution : Solution{});
    }
  }

  MadePart zero(std::size_t part, const Id& at) const {
    return {job.parts[part].name, plates::setupWith({plates::zeroAt(Axis::x, at)}),
            &solutions[part]};
  }

  GapStack made(const Gap& gap, const std::vector<MadePart>& zeros,
                std::optional<Length> held = std::nullopt) const {
    const auto stack = gapStackFromZeros(job, gap, zeros, held);
    EXPECT_TRUE(stack.ok()) << stack.error().place << ": " << stack.error().text;
    return stack ? *stack : GapStack{};
  }

  Job job;
  std::vector<Solution> solutions;
};

Gap endPlay() {
  return gapOf({distance("Frame", Axis::x, "P", "Q", 1), distance("Arbor", Axis::x, "S", "E", -1)});
}

// From S: M and E share the ±.001 of the second step, so E is held to ±.0005.
TEST(GapFromZeros, TakesCoordinatesInPlaceOfAChain) {
  const SolvedJob solved(frameAndArbor());
  const GapStack play = solved.made(endPlay(), {solved.zero(1, "S")});
  ASSERT_EQ(play.stack.members.size(), 3u);
  EXPECT_EQ(memberName(play.stack.members[0]), "r2");  // the frame as drawn
  EXPECT_EQ(memberName(play.stack.members[1]), "S");
  EXPECT_EQ(play.stack.members[1].part, "Arbor");
  EXPECT_EQ(play.stack.members[1].sign(), 1);
  EXPECT_EQ(memberName(play.stack.members[2]), "E");
  EXPECT_EQ(play.stack.members[2].sign(), -1);
  EXPECT_EQ(play.stack.nominal, Rational(32 * kThou));
  EXPECT_EQ(play.stack.worst, (Span{32 * kThou - kThou / 2, 36 * kThou + kThou / 2}));
}

// The frame from L: P has ±1/64 of r1 and shares 4 thou with Q about a target 2 thou up.
TEST(GapFromZeros, EachPartHasItsOwn) {
  const SolvedJob solved(frameAndArbor());
  const GapStack play = solved.made(endPlay(), {solved.zero(0, "L"), solved.zero(1, "S")});
  EXPECT_EQ(play.stack.members.size(), 4u);
  EXPECT_EQ(play.stack.nominal, Rational(32 * kThou));
  EXPECT_EQ(play.stack.worst, (Span{32 * kThou - kThou / 2, 36 * kThou + kThou / 2}));
  const GapStack held =
      solved.made(endPlay(), {solved.zero(0, "L"), solved.zero(1, "S")}, Length::ticks(kThou));
  EXPECT_EQ(held.stack.worst, (Span{29 * kThou, 35 * kThou}));
}

TEST(GapFromZeros, WithoutAnyItIsAsDrawn) {
  const SolvedJob solved(frameAndArbor());
  EXPECT_EQ(solved.made(endPlay(), {}), gapStack(solved.job, endPlay()).value());
}

// S to M and M to E from one zero: M is one coordinate of one piece, and cancels.
TEST(GapFromZeros, ACoordinateBetweenTwoDistancesCancels) {
  SolvedJob solved(frameAndArbor());
  const Gap steps =
      gapOf({distance("Arbor", Axis::x, "S", "M", 1), distance("Arbor", Axis::x, "M", "E", 1)});
  const GapStack one = solved.made(steps, {solved.zero(1, "S")}, Length::ticks(kThou));
  EXPECT_EQ(one.stack.members.size(), 2u);
  EXPECT_EQ(one.stack.worst, (Span{1967 * kThou, 1969 * kThou}));
  solved.job.parts[1].quantity = 2;  // then each distance is in another piece
  const GapStack two = solved.made(steps, {solved.zero(1, "S")}, Length::ticks(kThou));
  EXPECT_EQ(two.stack.members.size(), 4u);
  EXPECT_EQ(two.stack.worst, (Span{1965 * kThou, 1971 * kThou}));
}

TEST(GapFromZeros, LengthsFitsAndLimitsStayAsTheyAre) {
  const SolvedJob solved(frameAndArbor());
  Gap gap = endPlay();
  gap.members.push_back(length(".010 ±.001", -1));
  gap.members.push_back(screwed("1/4-20", "normal"));
  gap.least = lettered(".001");
  const GapStack play = solved.made(gap, {solved.zero(1, "S")});
  EXPECT_EQ(play.least, Length::ticks(kThou));
  EXPECT_EQ(play.stack.worst.low, 21 * kThou - kThou / 2 - kInch / 64);
  EXPECT_EQ(play.stack.worst.high, 27 * kThou + kThou / 2 + kInch / 64);
}

TEST(GapFromZeros, SaysWhatIsMissing) {
  struct Missing {
    Id zero;
    Gap gap;
    ErrorCode code;
    const char* place;
    const char* says;
  };
  Job job = frameAndArbor();
  job.parts[1].readings.pop_back();  // E is loose
  const SolvedJob solved(std::move(job));
  const std::vector<Missing> cases = {
      {"S", gapOf({distance("Arbor", Axis::x, "S", "E", 1)}), ErrorCode::unsolvable,
       "/members/0/to", "Arbor: E is not placed against zero"},
      {"S", gapOf({distance("Arbor", Axis::y, "S", "M", 1)}), ErrorCode::badRequest,
       "/members/0/from", "Arbor"},
      {"Q", gapOf({distance("Arbor", Axis::x, "S", "M", 1)}), ErrorCode::notFound,
       "/members/0/from", "Arbor"},
      {"S", gapOf({distance("Arbor", Axis::x, "S", "Z", 1)}), ErrorCode::notFound, "/members/0/to",
       "Arbor"},
      {"S", gapOf({}), ErrorCode::badRequest, "/members", "at least one"},
  };
  for (const Missing& one : cases) {
    SCOPED_TRACE(one.says);
    const auto stack =
        gapStackFromZeros(solved.job, one.gap, {solved.zero(1, one.zero)}, std::nullopt);
    ASSERT_FALSE(stack.ok());
    EXPECT_EQ(stack.error().code, one.code);
    EXPECT_EQ(stack.error().place, one.place);
    EXPECT_NE(stack.error().text.find(one.says), std::string::npos) << stack.error().text;
  }
}

}  // namespace
}  // namespace inchwright
