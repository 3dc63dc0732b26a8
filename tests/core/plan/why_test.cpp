#include "core/plan/why.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/say/why_words.h"
#include "tests/core/plan/plates.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright {
namespace {

using namespace plates;

/// A plate with A and B in line, 3 apart, and what else is said of it; zero at its lower sides.
struct Asked {
  Job job = jobWith();
  Part part;
  Solution solution;
  Setup setup = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}, Face::top, 0);

  explicit Asked(const std::string& text)
      : part(test::PartText::read(
            "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole C 1/8\nhole D 1/8\n"
            "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n" +
            text)),
        solution(solved(part)) {}

  Why why(const char* place, Axis axis) const {
    const auto work = workAt(job, part, solution, setup);
    EXPECT_TRUE(work.ok());
    const auto why = whyOf(*work, place, axis);
    EXPECT_TRUE(why.ok()) << (why ? "" : why.error().text);
    return why ? *why : Why{};
  }
  std::string said(const Why& why) const {
    std::string text;
    const Step step = *readStep("0.0001", Unit::inch);
    for (const WhyStep& one : why.steps) {
      text += stepText(part, why, one) + " " + one.member.from + ">" + one.member.to + " " +
              showAtStep(one.running, step).text + "\n";
    }
    for (const WhyHeld& one : why.held) text += heldText(part, one, step) + "\n";
    return text;
  }
};

// A chain from zero to A, one step over the triangle, and a chain on from there: 2, 2 and 3 put C
// half way between A and B, and the root of 1.75 above them or below.
TEST(Why, LeadsOverATriangleAndOnByChains) {
  const Asked asked(
      "r1 centres A C 2\nr2 centres B C 2\nr3 x C D 1\nr4 y C D 1/2\ntraced C 2 2.1\n");
  const Why x = asked.why("D", Axis::x);
  EXPECT_EQ(
      asked.said(x),
      "b1 L>A 0.5000\n"
      "by 2 from A straight to C and 2 from B straight to C A>C 2.0000\n"
      "r3 C>D 3.0000\n"
      "C is held by 2 from A straight to C and 2 from B straight to C: from A (0.5000, 0.7500) "
      "2.0000 at 41.41°, "
      "from B (3.5000, "
      "0.7500) 2.0000 at 138.59°. The same readings hold at (2.0000, -0.5730), 2.6458 off; the "
      "tracing shows this one.\n");
  const Why y = asked.why("C", Axis::y);
  ASSERT_EQ(y.steps.size(), 2u);
  EXPECT_NEAR(y.steps[1].adds.toDouble() / static_cast<double>(Length::kTicksPerInch),
              std::sqrt(1.75), 1e-9);
  EXPECT_EQ(y.steps.back().running, Rational(y.value.value.ticks()));
}

TEST(Why, AChainOfTrianglesIsToldOneByOne) {
  const Asked asked("r1 centres A C 1\nr2 angle A C 90\nr3 centres C D 1\nr4 angle C D 30\n");
  const Why why = asked.why("D", Axis::y);
  ASSERT_EQ(why.held.size(), 2u);
  EXPECT_EQ(why.held[0].place, "C");
  EXPECT_EQ(why.held[0].readings, (std::vector<Id>{"r1", "r2"}));
  EXPECT_TRUE(why.held[0].others.empty());
  EXPECT_EQ(why.held[1].place, "D");
  ASSERT_EQ(why.held[1].ends.size(), 1u);
  EXPECT_EQ(why.held[1].ends[0].place, "C");
  EXPECT_NEAR(why.held[1].ends[0].degrees, 30, 1e-6);
  EXPECT_EQ(why.value.text, "2.2500");
}

// Both readings of C and D hang on each other: neither is told from the other.
TEST(Why, WhatIsSolvedAtOneGoIsToldTogether) {
  const Asked asked(
      "r1 centres A C 1\nr2 centres C D 1 1/2\nr3 centres B D 1\nr4 angle C D 10\n"
      "traced C 1.37 1.24\ntraced D 2.85 1.5\n");
  const Why why = asked.why("C", Axis::x);
  ASSERT_EQ(why.held.size(), 1u);
  EXPECT_EQ(why.held[0].together, (std::vector<Id>{"D"}));
  ASSERT_EQ(why.held[0].ends.size(), 2u);
  EXPECT_EQ(why.held[0].ends[0].place, "A");
  // Both ends are whole ticks.
  EXPECT_LE(std::abs(why.held[0].ends[0].apart.ticks() - Length::kTicksPerInch), 1);
  EXPECT_EQ(why.steps.back().running, Rational(why.value.value.ticks()));
}

// The sum ends at the figure on the sheet, wherever zero is and whichever way the readout counts.
TEST(Why, TheSumEndsAtTheFigureInEveryFrame) {
  Asked asked(
      "r1 centres A C 2\nr2 centres B C 2\nr3 centres C D 1\nr4 angle C D 70\ntraced C 2 2.1\n");
  for (const int turn : {0, 90, 180, 270}) {
    for (const char* zero : {"L", "A", "C", "B"}) {
      asked.setup =
          setupWith({zeroAt(Axis::x, zero), zeroAt(Axis::y, zero == std::string("L") ? "F" : zero)},
                    Face::top, turn);
      for (const char* place : {"A", "B", "C", "D"}) {
        for (const Axis axis : {Axis::x, Axis::y}) {
          const Why why = asked.why(place, axis);
          const Rational end = why.steps.empty() ? Rational() : why.steps.back().running;
          EXPECT_EQ(end.rounded(), why.value.value.ticks())
              << place << " from " << zero << " " << turn;
        }
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
