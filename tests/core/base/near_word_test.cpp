#include "core/base/near_word.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace inchwright {
namespace {

TEST(NearWord, CountsTheSlipsOfAHand) {
  EXPECT_EQ(nearness("stok", "stock"), 1u);    // left out
  EXPECT_EQ(nearness("driill", "drill"), 1u);  // put in
  EXPECT_EQ(nearness("REEM", "ream"), 1u);     // another
  EXPECT_EQ(nearness("hoel", "hole"), 1u);     // exchanged
  EXPECT_EQ(nearness("hole", "hole"), 0u);
  EXPECT_EQ(nearness("two-places", "two_places"), 0u);
  EXPECT_EQ(nearness("countersnik", "countersink"), 1u);
  EXPECT_EQ(nearness("counetrsnik", "countersink"), 2u);
}

TEST(NearWord, WhatIsFurtherOffIsNoSlip) {
  for (const auto& [word, known] :
       std::vector<std::pair<const char*, const char*>>{{"bore", "drill"},
                                                        {"raam", "drill"},
                                                        {"rem", "reamers"},
                                                        {"tp", "tap"},
                                                        {"hoeel", "hole"},
                                                        {"", "hole"},
                                                        {"xx", "slot"}}) {
    EXPECT_FALSE(nearness(word, known).has_value()) << word << ' ' << known;
  }
  EXPECT_FALSE(nearness(std::string(40, 'a'), std::string(40, 'a')).has_value());
}

TEST(NearWord, TakesTheNearestAndTheFirstOfThoseAlike) {
  const std::vector<std::string_view> known{"midway", "parallel", "beside", "bored"};
  EXPECT_EQ(nearestWord("midwya", known), "midway");
  EXPECT_EQ(nearestWord("paralel", known), "parallel");
  EXPECT_FALSE(nearestWord("square", known).has_value());
  EXPECT_FALSE(nearestWord("beside", std::vector<std::string_view>{}).has_value());
}

}  // namespace
}  // namespace inchwright
