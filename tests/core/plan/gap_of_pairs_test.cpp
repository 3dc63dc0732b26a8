// Holes that were drilled once through two parts share one error.
#include <gtest/gtest.h>

#include "core/plan/gap.h"
#include "tests/core/plan/gaps.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

Part plate(const char* name, const char* between) {
  Part part = test::partFrom(std::string("edge L x left\nhole A 1/4\nhole B 1/4\n"
                                         "r1 x L A 1\nr2 x A B ") +
                             between + "\n");
  part.name = name;
  return part;
}

void follow(Part& part, const Id& hole, const Id& of) {
  for (Feature& feature : part.features) {
    if (feature.id != hole) continue;
    feature.drilled()->locate = Locate::pair;
    feature.drilled()->mate = PartPlace{"Back", of, {}};
  }
}

/// From A to B in the front plate, and back in the back one.
Gap thereAndBack() {
  Gap gap;
  gap.name = "wheel";
  for (const auto& [part, sign] : {std::pair{"Front", 1}, std::pair{"Back", -1}}) {
    GapMember member;
    member.part = part;
    member.axis = Axis::x;
    member.from = "A";
    member.to = "B";
    member.sign = sign;
    gap.members.push_back(member);
  }
  return gap;
}

Job twoPlates(const char* between) {
  Job job;
  job.parts = {plate("Front", between), plate("Back", "2.000 ±.002")};
  for (Feature& feature : job.parts[1].features) {
    if (feature.drilled()) feature.drilled()->locate = Locate::pair;
  }
  return job;
}

TEST(GapOfPairs, ShareOneErrorAndCancel) {
  Job job = twoPlates("2.000 ±.002");
  const auto apart = gapStack(job, thereAndBack());
  ASSERT_TRUE(apart.ok()) << apart.error().text;
  EXPECT_EQ(apart->stack.worst.high, 2 * 2 * Length::kTicksPerInch / 1000);
  follow(job.parts[0], "A", "A");
  follow(job.parts[0], "B", "B");
  const auto together = gapStack(job, thereAndBack());
  ASSERT_TRUE(together.ok()) << together.error().text;
  EXPECT_EQ(together->stack.worst.low, 0);
  EXPECT_EQ(together->stack.worst.high, 0);
}

TEST(GapOfPairs, DoNotWhereOneHoleIsItsOwnOrThePrintsDiffer) {
  Job job = twoPlates("2.000 ±.002");
  follow(job.parts[0], "A", "A");
  EXPECT_GT(gapStack(job, thereAndBack())->stack.worst.high, 0);
  Job other = twoPlates("2.001 ±.002");
  follow(other.parts[0], "A", "A");
  follow(other.parts[0], "B", "B");
  const auto stack = gapStack(other, thereAndBack());
  ASSERT_TRUE(stack.ok());
  EXPECT_NE(stack->stack.worst.low, stack->stack.worst.high);
}

TEST(GapOfPairs, AreTakenRoundWhereThePartsLieFaceToFace) {
  Job job = twoPlates("2.000 ±.002");
  follow(job.parts[0], "A", "B");
  follow(job.parts[0], "B", "A");
  const auto together = gapStack(job, thereAndBack());
  ASSERT_TRUE(together.ok());
  EXPECT_EQ(together->stack.worst.low, 0);
  EXPECT_EQ(together->stack.worst.high, 0);
}

}  // namespace
}  // namespace inchwright
