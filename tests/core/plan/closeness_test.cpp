#include "core/plan/closeness.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/plan/said.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

using plates::setupWith;
using plates::zeroAt;

struct Worked {
  Job job;
  Part part;
  Solution solution;
  Setup setup;
};

Worked worked(const std::string& text, Setup setup) {
  Worked all{plates::jobWith(), test::partFrom(text), {}, std::move(setup)};
  const auto solution = solve(all.part);
  EXPECT_TRUE(solution.ok());
  if (solution) all.solution = *solution;
  return all;
}

Closeness closeness(const Worked& all) {
  const auto work = workAt(all.job, all.part, all.solution, all.setup);
  EXPECT_TRUE(work.ok());
  if (!work) return {};
  const auto table = tableOf(*work);
  EXPECT_TRUE(table.ok()) << table.error().text;
  if (!table) return {};
  const auto found = closenessOf(*work, *table);
  EXPECT_TRUE(found.ok());
  return found ? *found : Closeness{};
}

std::vector<std::string> bandsOf(const Closeness& all) {
  std::vector<std::string> lines;
  for (const ClosenessBand& band : all.bands) {
    std::string line = letterOf(band.axis) + std::string(" ");
    line += std::to_string(band.plusMinus.ticks() / 254'000);  // tenths of a thou
    for (const Id& id : band.places) line += " " + id;
    lines.push_back(line);
  }
  return lines;
}

std::vector<std::string> adviceOf(const Worked& work, const Closeness& all) {
  std::vector<std::string> lines;
  for (const ClosenessAdvice& one : all.advice) lines.push_back(adviceWords(one, work.part, {}));
  return lines;
}

std::vector<std::string> checksOf(const Worked& work, const Closeness& all) {
  std::vector<std::string> lines;
  for (const DirectCheck& one : all.directChecks) lines.push_back(directCheckWords(one, work.part));
  return lines;
}

// L is zero, so A may be off by the 4 thou of its own reading, but A and B share the 2 between
// them: 1 each.
constexpr const char* kChain = R"(
  edge L x left
  edge F y front
  hole A 1/4
  hole B 1/4
  hole C 1/4
  r1 x L A 1 ±.004
  r2 x A B 1 ±.002
  r3 x L C 1.500 ±.020
  r4 y F A 1/2 ±.010
  in_line y A B C
)";

TEST(Closeness, SharesATightReadingBetweenItsEnds) {
  const Worked work = worked(kChain, setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}));
  const Closeness all = closeness(work);
  EXPECT_EQ(bandsOf(all), (std::vector<std::string>{"X 10 A B", "Y 100 A B C", "X 200 C"}));
  EXPECT_TRUE(all.aims.empty());
  EXPECT_TRUE(all.directChecks.empty());
  EXPECT_EQ(adviceOf(work, all),
            (std::vector<std::string>{
                "Hold A and B to ±0.0010 along X, or measure 1 ±.002 (A to B) on the "
                "part and hold all to ±0.0040.",
                "Hold A, B and C to ±0.0100 along Y, or measure 1/2 ±.010 (F to A) on "
                "the part."}));
}

TEST(Closeness, FollowsTheTurnedPart) {
  const Closeness all = closeness(
      worked(kChain, setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}, Face::top, 90)));
  EXPECT_EQ(bandsOf(all), (std::vector<std::string>{"Y 10 A B", "X 100 A B C", "Y 200 C"}));
}

TEST(Closeness, AimsAtTheMiddleOfUnequalTolerances) {
  Worked all = worked(R"(
    edge L x left
    edge F y front
    hole A 1/4
    r1 x L A 1.000 +.010 -.000
    r2 y F A 1.000 +.000 -.004
  )",
                      setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}));
  Closeness found = closeness(all);
  ASSERT_EQ(found.aims.size(), 2u);
  EXPECT_EQ(found.aims[0].place, "A");
  EXPECT_EQ(found.aims[0].at.text, "1.0050");
  EXPECT_EQ(found.aims[1].at.text, "0.9980");
  EXPECT_EQ(bandsOf(found), (std::vector<std::string>{"Y 20 A", "X 50 A"}));
  all.job.machine.xCounts = CountsX::left;
  found = closeness(all);
  EXPECT_EQ(found.aims[0].at.text, "-1.0050");
}

TEST(Closeness, CountsWhatRoundingTheFigureCosts) {
  // 1/64 is 0.015625; at a step of 0.0005 it is dialled as 0.0155, an eighth of a thou short.
  const Closeness all = closeness(worked(R"(
    edge L x left
    edge F y front
    hole A 1/4
    r1 x L A 1/64 ±.003
    r2 y F A 1 ±.010
  )",
                                         setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")})));
  EXPECT_EQ(bandsOf(all),
            (std::vector<std::string>{"X 25 A", "Y 100 A"}));  // 2.875 thou, down to the step
}

TEST(Closeness, NamesWhatTheMachineCannotGuarantee) {
  Worked all = worked(kChain, setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}));
  all.job.machine.accuracy = plates::figure("0.0015");
  const Closeness found = closeness(all);
  EXPECT_EQ(checksOf(all, found),
            (std::vector<std::string>{"A to B along X: 1 ±.002, 0.9980 to 1.0020"}));
  EXPECT_EQ(bandsOf(found).front(), "X 40 A");
}

// .300 and .400 across: .500 between the centres, which .0015 either way can't hold to .001.
TEST(Closeness, ADirectCheckBetweenCentresHasBothItsLimits) {
  Worked all = worked(R"(
    edge L x left
    edge F y front
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.010
    r2 y F A 1 ±.010
    r3 x L B 1.300 ±.010
    r4 y F B 1.400 ±.010
    r5 centres A B .500 ±.001
  )",
                      setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}));
  all.job.machine.accuracy = plates::figure("0.0015");
  const Closeness found = closeness(all);
  const auto isCentres = [&](const DirectCheck& one) {
    return one.reading.kind == SourceKind::reading &&
           all.part.readings[one.reading.index].kind == ReadingKind::centres;
  };
  const auto check = std::find_if(found.directChecks.begin(), found.directChecks.end(), isCentres);
  ASSERT_NE(check, found.directChecks.end());
  ASSERT_TRUE(check->least && check->greatest);
  EXPECT_EQ(check->least->value, plates::figure(".499").value);
  EXPECT_EQ(check->greatest->value, plates::figure(".501").value);
}

TEST(Closeness, RoundsTheLimitsOfADirectCheckInwards) {
  Worked all = worked(R"(
    edge L x left
    edge F y front
    hole A 1/4
    r1 x L A 1/64 ±.0007
  )",
                      setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}));
  all.job.machine.accuracy = plates::figure("0.001");
  // 0.014925 to 0.016325
  EXPECT_EQ(checksOf(all, closeness(all)),
            (std::vector<std::string>{"L to A along X: 1/64 ±.0007, 0.0150 to 0.0160"}));
}

}  // namespace
}  // namespace inchwright
