#include "core/part/as_it_looks.h"

#include <gtest/gtest.h>

#include "core/part/place_index.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

TEST(AsItLooks, WhatCantBeToldApartOnPaperComesToTheSame) {
  for (const char* one :
       {"A1", "А1", "Α1", "Ａ1", "A１", "𝐀1", "𝖠1", "A𝟏", "𝙰𝟣", " A1 ", "A1\u00A0", "A\u200B1",
        "\u200FA1", "A\uFE0F1", "A\u3164\u0031", "A\u28001"}) {
    EXPECT_EQ(asItLooks(one), "A1") << one;
  }
  EXPECT_EQ(asItLooks("ра1"), "pa1");
  EXPECT_EQ(asItLooks("𝐳𝑎𝒁"), "zaZ");
  EXPECT_EQ(asItLooks("！～"), "!~") << "the first and the last that are written wide";
  EXPECT_EQ(asItLooks("\u00A0 \u2003"), "");
  EXPECT_EQ(asItLooks("\xC3Ａ"),
            "\xC3"
            "A")
      << "a stray byte takes none of what follows";
}

TEST(AsItLooks, WhatLooksOtherwiseStaysAsItIs) {
  for (const char* one : {"Д", "Ø", "é", "Ω", "漢", "A 1", "a1", "\xC0", "\xE2\x82", "\xFF\x41",
                          "\xC2\x41", "\xE2\x80\x41"}) {
    EXPECT_EQ(asItLooks(one), one);
  }
}

TEST(AsItLooks, UnseenMarksAreFound) {
  for (const char* one : {"A\u00A0", "\u00ADA", "A\u180EB", "A\u2028", "A\u2066", "\uFEFFA",
                          "A\u034F", "\U000E0041A", "\u1160A", "A\u205F"}) {
    EXPECT_TRUE(holdsUnseen(one));
    EXPECT_FALSE(isSoundId(one));
  }
  for (const char* one : {"A", "A B", "É", "\xC0", "\xE2\x80", "\xC2 ", "―", "⅓"}) {
    EXPECT_FALSE(holdsUnseen(one)) << one;
  }
}

TEST(AsItLooks, IdsThatLookAlikeAreRefusedAsOne) {
  const auto refusal = [](const std::string& a, const std::string& b) {
    Part part = test::partFrom("hole A 1/4\nhole B 1/4\n");
    part.features[0].id = a;
    part.features[1].id = b;
    const auto index = PlaceIndex::of(part);
    return index.ok() ? std::string() : index.error().text;
  };
  EXPECT_EQ(refusal("A", "Ａ"), "the id `Ａ` looks like `A` in other letters; give one another");
  EXPECT_EQ(refusal("А", "A"), "the id `А` looks like `A` in other letters; give one another");
  EXPECT_EQ(refusal("А", "Α"), "the id `Α` looks like `А` in other letters; give one another")
      << "neither is plain";
  EXPECT_EQ(refusal("A", "Д"), "");
  EXPECT_EQ(refusal("Ж", "Д"), "");
}

}  // namespace
}  // namespace inchwright
