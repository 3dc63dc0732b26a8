// Which edition a sheet is, and what is told of the one that was printed before.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/kit/kit_of_part.h"
#include "core/part/edit.h"
#include "core/say/edition_words.h"
#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

class Editions : public testing::Test {
 protected:
  Part& plate() { return kit.job.parts[0]; }
  PrintedSheet now(const std::string& number = {}) {
    const auto solution = solve(plate());
    const auto table = makeTable(kit.job, plate(), *solution, plate().setups[0]);
    EXPECT_TRUE(table.ok());
    return sheetNow(plate(), *table, number);
  }
  SheetEdition edition(const std::string& number = {}) { return editionOf(plate(), now(number)); }
  void print(const char* when, const std::string& number = {}) {
    plate() = withPrinted(plate(), now(number), when);
  }
  void read(const char* id, const char* text) {
    for (Reading& reading : plate().readings) {
      if (reading.id == id) reading.figure = *readLength(text);
    }
  }

  KitJob kit;
};

TEST_F(Editions, TheFirstIsNews) {
  EXPECT_EQ(edition().number, 1);
  EXPECT_EQ(edition().before, 0);
  EXPECT_FALSE(edition().isNew());
}

TEST_F(Editions, PrintedAgainUnchangedItIsTheSame) {
  print("2026-11-20");
  EXPECT_FALSE(edition().isNew());
  print("2026-11-21");
  ASSERT_EQ(plate().printed.size(), 1u);
  EXPECT_EQ(plate().printed[0].edition, 1);
  EXPECT_EQ(plate().printed[0].when, "2026-11-21");
}

TEST_F(Editions, AFigureThatChangedMakesANewOneAndIsNamed) {
  print("2026-11-20");
  read("r1", "1.0625");
  const SheetEdition second = edition();
  EXPECT_TRUE(second.isNew());
  EXPECT_EQ(second.number, 2);
  EXPECT_EQ(second.changes,
            (std::vector<std::string>{"A: X +1.0625, was +1.0000", "B: X +2.0625, was +2.0000"}));
  EXPECT_EQ(newEditionWords(second),
            "my sheet is edition 2 now: take down edition 1, printed 2026-11-20");
  EXPECT_EQ(changedSinceWords(second), "CHANGED SINCE EDITION 1, printed 2026-11-20");
  print("2026-11-22");
  EXPECT_FALSE(edition().isNew());
  EXPECT_EQ(edition().number, 2);
  // Back to what it was is a change as well: edition 2 hangs at the machine.
  read("r1", "1.000 ±.002");
  EXPECT_EQ(edition().number, 3);
}

// Two sheets that nobody noted, with other figures, are never both called edition 1.
TEST_F(Editions, WhatIsNotNotedSaysWhatItIsAgainst) {
  EXPECT_EQ(editionName(edition(), true), "1");
  EXPECT_EQ(editionName(edition(), false), "none noted");
  print("2026-11-20");
  EXPECT_EQ(editionName(edition(), false), "1");
  read("r1", "1.0625");
  EXPECT_EQ(editionName(edition(), true), "2");
  EXPECT_EQ(editionName(edition(), false), "after 1");
}

TEST_F(Editions, PlacesThatCameAndWentAndWhatIsMadeAreNamed) {
  print("2026-11-20");
  plate().features[5].drilled()->make = Make::drill;
  plate() = removeFeature(plate(), "C")->part;
  Feature hole{"D", Face::top, kind::Hole{}, {}, {}, {}};
  hole.drilled()->diameter = *readLength("1/8");
  plate().features.push_back(hole);
  for (const auto& [axis, from] : {std::pair(Axis::x, "L"), std::pair(Axis::y, "F")}) {
    Reading reading;
    reading.id = nextReadingId(plate());
    reading.axis = axis;
    reading.from = from;
    reading.to = "D";
    reading.figure = *readLength("1/2");
    plate().readings.push_back(reading);
  }
  const std::vector<std::string> changes = edition().changes;
  ASSERT_EQ(changes.size(), 3u);
  EXPECT_TRUE(changes[0].starts_with("B: ")) << changes[0];
  EXPECT_NE(changes[0].find(", was "), std::string::npos);
  EXPECT_EQ(changes[1], "new here: D");
  EXPECT_EQ(changes[2], "no longer here: C");
}

TEST_F(Editions, AnotherReadoutIsOneLine) {
  print("2026-11-20");
  kit.job.machine.unit = Unit::millimetre;
  kit.job.machine.step = "0.01";
  ASSERT_EQ(edition().changes.size(), 1u);
  EXPECT_EQ(edition().changes[0],
            "all figures are in millimetres at a step of 0.01, were in inches at a step of 0.0001");
}

TEST_F(Editions, AnotherZeroIsNamedBesideTheFigures) {
  print("2026-11-20");
  plate().setups[0].zero[0].at = "A";
  const std::vector<std::string> changes = edition().changes;
  ASSERT_GE(changes.size(), 2u);
  EXPECT_TRUE(changes[0].starts_with("zero: ")) << changes[0];
}

TEST_F(Editions, ASheetThatOnlySaysSomethingElseIsNewToo) {
  print("2026-11-20", "1.1 AAAA");
  EXPECT_FALSE(edition("1.1 AAAA").isNew());
  EXPECT_EQ(edition("1.1 CCCC").changes,
            std::vector<std::string>{"no figure; what is said or drawn beside them"});
  EXPECT_FALSE(edition().isNew());  // where no number is known nothing is made of it
}

TEST_F(Editions, OfTheLatheItsCutsCount) {
  Part& arbor = kit.job.parts[1];
  const auto latheNow = [&] {
    const auto solution = solve(arbor);
    const auto work = latheWorkToSuit(kit.job, arbor, *solution, arbor.setups[0]);
    EXPECT_TRUE(work.ok());
    return sheetNow(*work, Lathe{});
  };
  arbor = withPrinted(arbor, latheNow(), "2026-11-20");
  EXPECT_FALSE(editionOf(arbor, latheNow()).isNew());
  for (Feature& feature : arbor.features) {
    if (auto* outside = feature.as<kind::Outside>()) outside->diameter = *readLength(".250");
  }
  const std::vector<std::string> changes = editionOf(arbor, latheNow()).changes;
  ASSERT_GE(changes.size(), 3u);
  EXPECT_EQ(changes[0].substr(0, 7), "D: dia ") << changes[0];
  EXPECT_TRUE(std::any_of(changes.begin(), changes.end(), [](const std::string& one) {
    return one.starts_with("finish D: dia 0.250, was ");
  }));
}

TEST_F(Editions, GoWithTheirSetupWhenItIsRenamedAndStayWithTheirPart) {
  print("2026-11-20");
  inchwright::Setup setup = plate().setups[0];
  setup.name = "first side";
  plate() = *replaceSetup(plate(), "1", setup);
  EXPECT_FALSE(edition().isNew());
  EXPECT_EQ(edition().before, 1);
  EXPECT_TRUE(mirrored(plate(), Axis::x).printed.empty());
}

}  // namespace
}  // namespace inchwright
