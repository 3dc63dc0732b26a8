// What a sheet says of the rest of the kit, and what of it is to be minded.
#include "core/say/kit_words.h"

#include <gtest/gtest.h>

#include "core/kit/kit_of_part.h"

namespace inchwright {
namespace {

Length thou(std::int64_t tenths) {
  return Length::ticks(tenths * 254'000);
}
FoundSize between(std::int64_t least, std::int64_t greatest) {
  FoundSize size;
  size.least = thou(least);
  size.greatest = thou(greatest);
  return size;
}
Step inTenths() {
  return {thou(1), Unit::inch};
}

// A bush of .3131 to .3135 for hole A of the plate, of which a clearance of .0005 to .0015 is
// wanted.
Suits bush() {
  Suits suits;
  suits.mate = "arbor";
  suits.place = "P";
  suits.lettered = ".3131/.3135";
  suits.otherPart = "Plate";
  suits.otherPlace = "A";
  suits.other = between(3145, 3151);
  suits.wanted = between(5, 15);
  return suits;
}

KitLine lineOf(const Suits& suits) {
  KitOfPart kit;
  kit.suits = {suits};
  const std::vector<KitLine> lines = kitLines(kit, inTenths());
  EXPECT_EQ(lines.size(), 1u);
  return lines.empty() ? KitLine() : lines[0];
}

TEST(KitWords, WhatIsMeasuredGoesTogetherOrIsMinded) {
  struct Case {
    std::int64_t least, greatest;
    const char* verdict;
    bool isMinded;
  };
  for (const Case& one : {Case{6, 14, "", false}, Case{16, 20, ": too loose", true},
                          Case{-3, 2, ": too tight", true}, Case{3, 9, "", false}}) {
    Suits suits = bush();
    suits.measured = true;
    suits.clearance = between(one.least, one.greatest);
    const KitLine line = lineOf(suits);
    EXPECT_EQ(line.place, "P");
    EXPECT_EQ(line.mind, one.isMinded) << one.least;
    const std::string verdict = one.verdict;
    const std::size_t colon = line.words.rfind(": too");
    EXPECT_EQ(colon == std::string::npos ? "" : line.words.substr(colon), verdict) << line.words;
    EXPECT_NE(line.words.find("clearance wanted"), std::string::npos) << line.words;
    EXPECT_NE(line.words.find("A of Plate"), std::string::npos) << line.words;
  }
}

TEST(KitWords, AHoleTakesAndAShaftFits) {
  Suits suits = bush();
  EXPECT_TRUE(lineOf(suits).words.starts_with("fits A of Plate (arbor): ")) << lineOf(suits).words;
  suits.isHole = true;
  EXPECT_TRUE(lineOf(suits).words.starts_with("takes A of Plate (arbor): "));
  suits.suited = true;
  EXPECT_NE(lineOf(suits).words.find("made to suit this hole as found"), std::string::npos);
  EXPECT_FALSE(lineOf(suits).mind);
  suits.otherPart.clear();
  EXPECT_TRUE(lineOf(suits).words.starts_with("takes 0.3145 to 0.3151 (arbor): "))
      << lineOf(suits).words;
}

TEST(KitWords, NothingIsMadeToSuitAFigureThatIsHardToBelieve) {
  Suits suits = bush();
  suits.otherMeasured = true;
  suits.make = between(3136, 3140);
  const KitLine plain = lineOf(suits);
  EXPECT_FALSE(plain.mind);
  EXPECT_EQ(plain.instead, "make it 0.3136 to 0.3140");
  EXPECT_EQ(plain.struckOut, "") << "nobody chose to";
  suits.chosen = Mended();
  suits.chosen->reason = "the bush was not turned yet";
  const KitLine chosen = lineOf(suits);
  EXPECT_EQ(chosen.struckOut, ".3131/.3135");
  EXPECT_NE(chosen.words.find("the bush was not turned yet"), std::string::npos);
  suits.otherUnlikely = true;
  const KitLine unlikely = lineOf(suits);
  EXPECT_TRUE(unlikely.mind);
  EXPECT_EQ(unlikely.struckOut + unlikely.instead, "");
  EXPECT_NE(unlikely.words.find("is that figure right?"), std::string::npos);
}

TEST(KitWords, ASizeThatIsNotToBeHadIsMinded) {
  Suits suits = bush();
  suits.otherMeasured = true;
  suits.make = between(3140, 3136);
  const KitLine line = lineOf(suits);
  EXPECT_TRUE(line.mind);
  EXPECT_EQ(line.instead, "");
  EXPECT_NE(line.words.find("no size gives it"), std::string::npos) << line.words;
}

}  // namespace
}  // namespace inchwright
