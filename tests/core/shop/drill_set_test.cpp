#include "core/shop/drill_set.h"

#include <gtest/gtest.h>

#include <cstdint>

namespace inchwright {
namespace {

DrillSet setOf(const std::string& text) {
  const auto set = readDrillSet(text);
  EXPECT_TRUE(set.ok()) << text << ": " << (set ? "" : set.error().text);
  return set ? *set : DrillSet{};
}

TEST(DrillSet, StandsForASeriesOrPartOfIt) {
  struct Case {
    const char* text;
    std::size_t count;
    const char* first;
    const char* last;
  };
  for (const Case& one : {Case{"fractional 1/16 to 1/2", 29, "1/16", "1/2"},
                          {"fractional", 64, "1/64", "1"},
                          {"FRACTION 1/8 to 1/4 by 1/16", 3, "1/8", "1/4"},
                          {"number", 80, "#80", "#1"},
                          {"number 1 to 60", 60, "#60", "#1"},
                          {"number #60 to #1", 60, "#60", "#1"},
                          {"letter", 26, "A", "Z"},
                          {"letter A to N", 14, "A", "N"},
                          {"metric", 102, "0.5 mm", "13 mm"},
                          {"metric 1 to 10 by 0.1", 91, "1 mm", "10 mm"},
                          {"metric 1 to 3 by 0.05", 41, "1 mm", "3 mm"},
                          {"metric 1 to 13", 97, "1 mm", "13 mm"},
                          {"#7", 1, "#7", "#7"},
                          {"f", 1, "F", "F"},
                          {"5.1 mm", 1, "5.1 mm", "5.1 mm"},
                          {"1 1/4", 1, "1 1/4", "1 1/4"},
                          {".2055", 1, "0.2055", "0.2055"},
                          {"3.15 mm", 1, "3.15 mm", "3.15 mm"}}) {
    SCOPED_TRACE(one.text);
    const DrillSet set = setOf(one.text);
    EXPECT_EQ(set.text, one.text);
    ASSERT_EQ(set.drills.size(), one.count);
    EXPECT_EQ(set.drills.front().name, one.first);
    EXPECT_EQ(set.drills.back().name, one.last);
    for (std::size_t i = 1; i < set.drills.size(); ++i) {
      EXPECT_LT(set.drills[i - 1].diameter, set.drills[i].diameter);
    }
  }
}

TEST(DrillSet, StepsAreExact) {
  const DrillSet set = setOf("metric 1 to 10 by 0.1");
  for (std::size_t i = 0; i < set.drills.size(); ++i) {
    EXPECT_EQ(set.drills[i].diameter.ticks(), (10 + static_cast<std::int64_t>(i)) * 10'000'000);
    EXPECT_EQ(set.drills[i].series, DrillSeries::metric);
  }
}

TEST(DrillSet, RefusesWhatItCannotBe) {
  for (const char* text :
       {"", " ", "7", "fractional 1/16", "fractional to 1/2", "fractional 1/16 to", "number A to Z",
        "number 1 to 99", "letter A to 7", "letter A to N by 2", "metric 1 to 10 by 0",
        "metric 1 to 10 by -1", "metric by 0.1", "twist", "0", "-1/4", "fractional 2 to 3",
        "5/8 of them"}) {
    const auto set = readDrillSet(text);
    ASSERT_FALSE(set.ok()) << text;
    EXPECT_EQ(set.error().code, ErrorCode::badText) << text;
    EXPECT_NE(set.error().text.find('`'), std::string::npos) << text;
  }
  EXPECT_EQ(readDrillSet("metric 1 to 1000 by 0.0001").error().code, ErrorCode::tooLarge);
}

}  // namespace
}  // namespace inchwright
