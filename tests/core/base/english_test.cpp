#include "core/base/english.h"

#include <gtest/gtest.h>

#include <string>

namespace inchwright {
namespace {

struct Said {
  const char* uk;
  const char* us;
};

TEST(EnglishTest, WordsChangeWholeAndInTheirCase) {
  const Said table[] = {
      {"the centre of ring G", "the center of ring G"},
      {"Centre distance", "Center distance"},
      {"MILLIMETRES", "MILLIMETERS"},
      {"A and B are taken to share one centre", "A and B are taken to share one center"},
      {"turned 90\u00B0 anticlockwise", "turned 90\u00B0 counterclockwise"},
      {"towards you", "toward you"},
      {"nothing gives the PCD", "nothing gives the bolt circle"},
      {"drill tapping size for 10-32", "tap drill for 10-32"},
      {"C'BORE", "CBORE"},
      {"between centres.", "between centers."},
      // No word of ours.
      {"concentric ones", "concentric ones"},
      {"device, advice, service", "device, advice, service"},
      {"centrepiece", "centrepiece"},
      {"over_centre", "over_centre"},
      {"", ""}};
  for (const Said& one : table) {
    EXPECT_EQ(inEnglish(one.uk, English::us), one.us);
    EXPECT_EQ(inEnglish(one.uk, English::uk), one.uk);
  }
}

TEST(EnglishTest, SaidTwiceIsSaidOnce) {
  for (const char* text :
       {"the centre and the PCD", "drill tapping size for M3", "towards, grey"}) {
    const std::string once = inEnglish(text, English::us);
    EXPECT_EQ(inEnglish(once, English::us), once);
  }
}

TEST(EnglishTest, WhatIsTypedOrNamedIsLeft) {
  EXPECT_EQ(inEnglish("say `clockwise` or `anticlockwise`", English::us),
            "say `clockwise` or `anticlockwise`");
  const auto isName = [](std::string_view word) { return word == "centre"; };
  EXPECT_EQ(inEnglish("centre: nothing says where its Centre lies", English::us, isName),
            "centre: nothing says where its Center lies");
}

}  // namespace
}  // namespace inchwright
