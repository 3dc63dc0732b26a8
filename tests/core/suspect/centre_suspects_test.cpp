#include "core/suspect/centre_suspects.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <set>
#include <string>

#include "tests/core/place/mixed_print.h"
#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

namespace inchwright::test {
namespace {

// A print of a few places held by spare centre distances and angles: all right, but for one figure
// with one digit changed.
struct Misread {
  Part part;
  Id reading;
};

void addSpares(MixedPrint& print, std::mt19937_64& random) {
  auto& truth = print.truth;
  for (std::size_t i = 1; i < truth.size(); ++i) {
    for (int k = 0; k < 2; ++k) {
      const std::size_t j = random() % i;
      const double dx = truth[i].x - truth[j].x, dy = truth[i].y - truth[j].y;
      const double length = std::hypot(dx, dy);
      if (length < 0.3) continue;
      Reading reading;
      reading.id = "s" + std::to_string(print.part.readings.size());
      reading.from = truth[j].id;
      reading.to = truth[i].id;
      char text[32];
      if (random() % 3 == 0) {
        reading.kind = ReadingKind::angle;
        double degrees = std::atan2(dy, dx) * 180 / std::numbers::pi;
        if (degrees < 0) degrees += 360;
        const auto hundredths = std::llround(degrees * 100) % 36000;
        std::snprintf(text, sizeof text, "%lld.%02lld", hundredths / 100, hundredths % 100);
        reading.figure.text = text;
        reading.angle = *readAngle(text);
      } else {
        reading.kind = ReadingKind::centres;
        const auto thousandths = std::llround(length * 1000);
        std::snprintf(text, sizeof text, "%lld.%03lld", thousandths / 1000, thousandths % 1000);
        reading.figure = *readLength(text);
      }
      print.part.readings.push_back(reading);
    }
  }
}

std::optional<Misread> misread(std::uint64_t seed) {
  MixedPrint print = MixedPrintMaker(seed).make(7, true);
  std::mt19937_64 random(seed);
  addSpares(print, random);
  std::vector<std::size_t> slanted;
  for (std::size_t i = 0; i < print.part.readings.size(); ++i) {
    if (print.part.readings[i].kind != ReadingKind::along) slanted.push_back(i);
  }
  Reading& wrong = print.part.readings[slanted[random() % slanted.size()]];
  std::string text = wrong.kind == ReadingKind::angle ? wrong.angle->text : wrong.figure.text;
  // A digit that matters: neither the last one nor a leading one.
  const std::size_t point = text.find('.');
  const std::size_t at = point == std::string::npos       ? text.size() - 1
                         : random() % 2 == 0 && point > 0 ? point - 1
                                                          : point + 1;
  const char digit = text[at];
  do {
    text[at] = static_cast<char>('0' + random() % 10);
  } while (text[at] == digit);
  if (wrong.kind == ReadingKind::angle) {
    wrong.angle = *readAngle(text);
    wrong.figure.text = text;
  } else {
    wrong.figure = *readLength(text);
    if (wrong.figure.value <= Length()) return std::nullopt;
  }
  return Misread{print.part, wrong.id};
}

// C is held by two distances and an angle that contradicts them: any of the three may be meant. An
// angle from B that agrees with the distances leaves the other alone wrong.
TEST(CentreSuspects, ThoseThatAloneMendItAllAreKnown) {
  const std::string text =
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nb1 x L A 1/2\nb2 y F A 3/4\n"
      "b3 x A B 3\nin_line y A B\nhole C 1/8\nr1 centres A C 2\nr2 centres B C 2\n"
      "r3 angle A C 40\ntraced C 2 2.07\n";
  const auto mending = [](const std::string& print) {
    const PlacedForTest part = PlacedForTest::of(PartText::read(print));
    std::set<Id> ids;
    for (const CentresClash& clash : part.placed.clashes) {
      for (const CentreSuspect& one : rankCentreSuspects(part.part, clash)) {
        if (one.closesAll) ids.insert(part.part.readings[one.reading].id);
      }
    }
    return ids;
  };
  EXPECT_EQ(mending(text), (std::set<Id>{"b3", "r1", "r2", "r3"}));
  EXPECT_EQ(mending(text + "r4 angle B C 138.59\n"), std::set<Id>{"r3"});
}

// Two distances of 1 from places 3 apart never meet: either may be too short, or the 3 be wrong,
// which a chain says.
TEST(CentreSuspects, OfTwoThatNeverMeetTheChainBetweenIsOneToo) {
  const PlacedForTest part = PlacedForTest::of(PartText::read(
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nb1 x L A 1/2\nb2 y F A 3/4\n"
      "b3 x A B 3\nin_line y A B\nhole C 1/8\nr1 centres A C 1\nr2 centres B C 1\n"));
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  std::set<Id> ids;
  for (const CentreSuspect& one : rankCentreSuspects(part.part, part.placed.clashes[0]))
    ids.insert(part.part.readings[one.reading].id);
  EXPECT_EQ(ids, (std::set<Id>{"b3", "r1", "r2"}));
}

// C lies at 36.87 degrees, or 36° 52', from A: 1.6 on and 1.2 up.
TEST(CentreSuspects, AnAngleIsTakenForAnotherInManyWays) {
  const std::pair<const char*, AngleLook> rows[] = {
      {"53.13", AngleLook::otherAxis},       {"323.13", AngleLook::otherTurn},
      {"143.13", AngleLook::otherEnd},       {"216.87", AngleLook::otherPlace},
      {"36.52", AngleLook::minutesAsPoints}, {"86.87", AngleLook::alike},
      {"63.87", AngleLook::swapped},         {"12.34", AngleLook::none},
  };
  for (const auto& [seen, look] : rows) {
    const PlacedForTest part = PlacedForTest::of(PartText::read(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nb1 x L A 1/2\nb2 y F A 3/4\n"
        "b3 x A B 3\nin_line y A B\nhole C 1/8\nr1 centres A C 2\nr2 centres B C 1.843909\n"
        "traced C 2.1 1.95\nr3 angle A C " +
        std::string(seen) + "\n"));
    ASSERT_EQ(part.placed.clashes.size(), 1U) << seen;
    for (const CentreSuspect& one : rankCentreSuspects(part.part, part.placed.clashes[0])) {
      if (part.part.readings[one.reading].id != "r3") continue;
      EXPECT_EQ(one.look, look) << seen;
      EXPECT_EQ(one.wouldBeText, "36.87") << seen;
    }
  }
}

// C is 2 1/2 from A and from B, and 2 or a little more from D between them: what a figure lettered
// too short would be is told as the print letters, to the nearest 64th, thousandth or hundredth of
// a millimetre.
TEST(CentreSuspects, WhatALengthWouldBeIsToldAsThePrintLetters) {
  struct Row {
    const char *read, *up, *would;
  };
  for (const auto& [read, up, would] :
       {Row{"2", "2", "2 1/2"}, Row{"2", "2.002", "2 1/2"}, Row{"2", "2.0124", "2 33/64"},
        Row{"2.600", "2", "2.500"}, Row{"50.00 mm", "2", "63.50 mm"}}) {
    const double y = up == std::string("2") ? 2 : up == std::string("2.002") ? 2.002 : 2.0124;
    char text[32];
    const auto micro = std::llround(std::hypot(1.5, y) * 1e6);
    std::snprintf(text, sizeof text, "%lld.%06lld", micro / 1000000, micro % 1000000);
    const PlacedForTest part = PlacedForTest::of(PartText::read(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nhole D 1/4\nb1 x L A 1/2\n"
        "b2 y F A 3/4\nb3 x A B 3\nin_line y A B D\nb4 x A D 1 1/2\nhole C 1/8\n"
        "traced C 2 2.75\nr1 centres A C " +
        std::string(read) + "\nr2 centres B C " + text + "\nr3 angle D C 90.0\n"));
    ASSERT_EQ(part.placed.clashes.size(), 1U) << read;
    bool isTold = false;
    for (const CentreSuspect& one : rankCentreSuspects(part.part, part.placed.clashes[0])) {
      if (part.part.readings[one.reading].id != "r1") continue;
      EXPECT_EQ(one.wouldBeText, would) << read;
      isTold = true;
    }
    EXPECT_TRUE(isTold) << read;
  }
}

// Where a part is seen from below, its angles are lettered turned over: what was traced says
// something of an angle only where it is seen from above.
TEST(CentreSuspects, FromBehindTheTracingSaysNothingOfAnAngle) {
  // From below C is at 318.59 degrees, and 41 is what it would be nearly from above.
  for (const auto& [face, angle] : {std::pair("top", "30"), std::pair("bottom", "41")}) {
    const auto weight = [&, face = face, angle = angle](const char* traced) {
      const std::string end = " 1/4 " + std::string(face) + "\n";
      const PlacedForTest part = PlacedForTest::of(PartText::read(
          "edge L x left\nedge F y front\nhole A" + end + "hole B" + end + "hole C" + end +
          "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\nr1 centres A C 2\n"
          "r2 centres B C 2\nr3 angle A C " +
          angle + "\ntraced A .5 .75\ntraced B 3.5 .75\ntraced C " + traced + "\n"));
      EXPECT_EQ(part.placed.clashes.size(), 1U);
      for (const CentreSuspect& one : rankCentreSuspects(part.part, part.placed.clashes.at(0))) {
        if (part.part.readings[one.reading].id == "r3") return one.weight;
      }
      ADD_FAILURE() << "no r3";
      return 0.0;
    };
    const double to = weight("2 2.07"), beside = weight("2.04 2.03");
    EXPECT_EQ(to == beside, face == std::string("bottom")) << to << " " << beside;
  }
}

TEST(CentreSuspects, OneMisreadAmongSpareOnesIsFirst) {
  int found = 0, told = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const auto wrong = misread(seed);
    if (!wrong) continue;
    const PlacedForTest part = PlacedForTest::of(wrong->part);
    // It was not checked by any other, or what misses is a sum of roundings.
    if (part.placed.clashes.empty() || std::abs(part.placed.clashes[0].missesBy) < 0.004) continue;
    ++told;
    bool isFirst = false;
    for (const CentresClash& clash : part.placed.clashes) {
      const auto suspects = rankCentreSuspects(part.part, clash);
      if (suspects.empty()) continue;
      isFirst = isFirst || part.part.readings[suspects[0].reading].id == wrong->reading;
      break;
    }
    found += isFirst ? 1 : 0;
  }
  RecordProperty("first", found);
  RecordProperty("told", told);
  EXPECT_GE(told, 100);
  EXPECT_GE(found * 100, told * 95) << found << " of " << told;
}

}  // namespace
}  // namespace inchwright::test
