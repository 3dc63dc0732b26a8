#include "app/session/suggestions.h"

#include <gtest/gtest.h>

#include "core/lines/lines.h"

namespace inchwright::app {
namespace {

class SuggestionsTest : public testing::Test {
 protected:
  void SetUp() override {
    part.name = "Plate";
    trace("edge L left", {"0.000"});
    trace("edge R right", {"4.000"});
    trace("hole A 1/4", {"0.500", "0.500"});
    trace("hole B 1/4", {"3.500", "0.510"});
    trace("hole C 1/4", {"2.005", "1.000"});
    trace("ring M 6 on 2 1/8", {"2.000", "1.004"});
  }

  void line(const char* text) {
    auto outcome = applyLine(part, text, {});
    ASSERT_TRUE(outcome.ok()) << text;
    part = std::move(outcome->part);
  }
  void trace(const char* text, std::vector<std::string> at) {
    line(text);
    part.features.back().traced = std::move(at);
  }
  std::vector<Id> offered(UnderstandingKind kind, Axis axis,
                          const std::vector<std::vector<Id>>& declined = {}) {
    return suggested(part, *solve(part), Face::top, kind, axis, declined);
  }

  Part part;
};

using Ids = std::vector<Id>;

TEST_F(SuggestionsTest, HolesOnOneLineAreOfferedUntilTheyAreRelated) {
  EXPECT_EQ(offered(UnderstandingKind::inLine, Axis::y), (Ids{"A", "B"}));
  EXPECT_EQ(offered(UnderstandingKind::inLine, Axis::x), Ids{});
  line("in line y A B");
  EXPECT_EQ(offered(UnderstandingKind::inLine, Axis::y), Ids{});
}

TEST_F(SuggestionsTest, AReadingBetweenThemRelatesThemToo) {
  line("y A B 1/16");
  EXPECT_EQ(offered(UnderstandingKind::inLine, Axis::y), Ids{});
}

TEST_F(SuggestionsTest, WhatLiesHalfWayBetweenTheSidesIsOffered) {
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x), (Ids{"C", "L", "R"}));
  line("L R 4");
  line("midway x C L R");
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x), (Ids{"M", "L", "R"}));
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::y), Ids{}) << "one side along Y";
}

TEST_F(SuggestionsTest, WhatWasTakenIsNotOfferedAgainThoughItsSidesAreLoose) {
  line("midway x C L R");
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x), (Ids{"M", "L", "R"}));
  line("midway x M L R");
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x), Ids{});
}

TEST_F(SuggestionsTest, WhatWasDeclinedGivesWayToTheNext) {
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x, {{"C", "L", "R"}}), (Ids{"M", "L", "R"}));
  EXPECT_EQ(offered(UnderstandingKind::midway, Axis::x, {{"C", "L", "R"}, {"M", "L", "R"}}), Ids{});
  EXPECT_EQ(offered(UnderstandingKind::inLine, Axis::y, {{"A", "B", "C"}}), Ids{})
      << "a part of what was declined";
  EXPECT_EQ(offered(UnderstandingKind::concentric, Axis::x, {{"C", "M"}}), Ids{});
}

TEST_F(SuggestionsTest, OneSpotIsOfferedAsConcentric) {
  EXPECT_EQ(offered(UnderstandingKind::concentric, Axis::x), (Ids{"C", "M"}));
  line("concentric C M");
  EXPECT_EQ(offered(UnderstandingKind::concentric, Axis::x), Ids{});
}

TEST_F(SuggestionsTest, OtherKindsAndOtherFacesAreNot) {
  EXPECT_EQ(offered(UnderstandingKind::equal, Axis::x), Ids{});
  EXPECT_EQ(suggested(part, *solve(part), Face::front, UnderstandingKind::inLine, Axis::x), Ids{});
}

}  // namespace
}  // namespace inchwright::app
