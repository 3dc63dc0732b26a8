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

FoundSize from(std::int64_t least) {
  FoundSize size;
  size.least = thou(least);
  return size;
}
FoundSize upTo(std::int64_t greatest) {
  FoundSize size;
  size.greatest = thou(greatest);
  return size;
}
Span spanOf(std::int64_t low, std::int64_t high) {
  return {thou(low).ticks(), thou(high).ticks()};
}

// At a readout of half thous clearances are still told to a tenth.
TEST(KitWords, AMateSaysWhatItIsAndWhatItHasToBe) {
  const MateState fits = [] {
    MateState mate;
    mate.name = "arbor";
    mate.clearance = between(5, 15);
    mate.clearanceAsDrawn = between(3, 12);
    mate.wanted = between(5, 20);
    mate.verdict = Verdict::in;
    mate.measured = true;
    return mate;
  }();
  struct Case {
    void (*change)(MateState&);
    const char* says;
  };
  for (const Case& one : {
           Case{[](MateState&) {},
                "clearance 0.0005 to 0.0015 (as drawn 0.0003 to 0.0012), wanted 0.0005 to 0.0020; "
                "goes together"},
           {[](MateState& m) { m.measured = false; },
            "clearance 0.0005 to 0.0015, wanted 0.0005 to 0.0020; goes together"},
           {[](MateState& m) {
              m.verdict = Verdict::over;
              m.wanted = upTo(4);
            },
            "clearance 0.0005 to 0.0015 (as drawn 0.0003 to 0.0012), wanted at most 0.0004; too "
            "loose"},
           {[](MateState& m) {
              m.verdict = Verdict::under;
              m.wanted = from(20);
              m.toBeSuited = true;
            },
            "clearance 0.0005 to 0.0015 (as drawn 0.0003 to 0.0012), wanted at least 0.0020; too "
            "tight; its shaft is still to be made to suit"},
           {[](MateState& m) {
              m.verdict = Verdict::cannotTell;
              m.clearance = from(5);
            },
            "clearance at least 0.0005 (as drawn 0.0003 to 0.0012), wanted 0.0005 to 0.0020; can't "
            "tell"},
           {[](MateState& m) {
              m.verdict = Verdict::cannotTell;
              m.clearance = upTo(15);
              m.wanted = {};
            },
            "clearance at most 0.0015 (as drawn 0.0003 to 0.0012), wanted not known; can't tell"},
           // Told to a tenth it would look too large, 0.0016 against 0.0015.
           {[](MateState& m) {
              m.clearance = {std::nullopt, Length::ticks(151 * 25'400)};
              m.wanted = {std::nullopt, Length::ticks(153 * 25'400)};
            },
            "clearance at most 0.00151 (as drawn 0.00030 to 0.00120), wanted at most 0.00153; goes "
            "together"},
           {[](MateState& m) {
              m.verdict = Verdict::notMeasured;
              m.measured = false;
            },
            "clearance 0.0005 to 0.0015, wanted 0.0005 to 0.0020; hangs on what is made: not "
            "measured"},
           {[](MateState& m) {
              m.verdict = Verdict::notMeasured;
              m.tightAsLettered = true;
              m.measured = false;
            },
            "clearance 0.0005 to 0.0015, wanted 0.0005 to 0.0020; the hole is lettered smaller "
            "than what runs in it"},
           {[](MateState& m) {
              m.fault = Error{ErrorCode::unsolvable, "no size is lettered"};
            },
            "no size is lettered"},
       }) {
    MateState mate = fits;
    one.change(mate);
    EXPECT_EQ(mateWords(mate, {thou(5), Unit::inch}), std::string("Mate arbor: ") + one.says);
  }
}

TEST(KitWords, AGapSaysWhatItComesToAtWorst) {
  GapState gap;
  gap.name = "shake";
  gap.asMade = gap.asDrawn = spanOf(15, 250);
  EXPECT_EQ(gapWords(gap, inTenths()), "Gap shake: at worst 0.0015 to 0.0250");
  gap.asDrawn = spanOf(-10, 300);
  gap.least = thou(15);
  EXPECT_EQ(gapWords(gap, inTenths()),
            "Gap shake: at worst 0.0015 to 0.0250 (as drawn -0.0010 to 0.0300), has to be at least "
            "0.0015; may not keep to it");
  gap.greatest = thou(250);
  gap.keeps = true;
  EXPECT_EQ(gapWords(gap, inTenths()),
            "Gap shake: at worst 0.0015 to 0.0250 (as drawn -0.0010 to 0.0300), has to be 0.0015 "
            "to 0.0250; keeps to it");
}

// Made to its limits it must fit, so figures go inwards: .25083 to .25127 is .2509 to .2512, and
// what leaves no tenth between its ends is told more finely.
TEST(KitWords, AShaftToSuitIsMadeWithinWhatFits) {
  const auto line = [](const FoundSize& shaft) {
    Way way;
    way.way = WayOut::shaft;
    way.sizeName = "arbor";
    way.shaft = shaft;
    return waysOutLines(Part(), {way}, inTenths()).at(0);
  };
  const auto hundredths = [](std::int64_t least, std::int64_t greatest) {
    FoundSize size;
    size.least = Length::ticks(least * 25'400);
    size.greatest = Length::ticks(greatest * 25'400);
    return size;
  };
  EXPECT_EQ(line(hundredths(25083, 25127)), "A shaft to suit (arbor): make it 0.2509 to 0.2512");
  EXPECT_EQ(line(hundredths(25083, 25087)), "A shaft to suit (arbor): make it 0.25083 to 0.25087");
  EXPECT_EQ(line(between(2508, 2508)), "A shaft to suit (arbor): make it 0.2508");
  EXPECT_EQ(line(from(2508)), "A shaft to suit (arbor): make it at least 0.2508");
  EXPECT_EQ(line(upTo(2508)), "A shaft to suit (arbor): make it at most 0.2508");
  EXPECT_EQ(line(between(2510, 2508)),
            "A shaft to suit (arbor): none fits all that the hole may be");
}

}  // namespace
}  // namespace inchwright
