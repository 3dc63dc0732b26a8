// The letters of a sheet's number: whoever holds two sheets with the same may take either.
#include "core/sheet/sheet_number.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>

#include "tests/core/plan/milled_plate.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

struct Change {
  const char* what;
  std::function<void(MadeSheet&)> make;
};

std::string lettersOf(const MadeSheet& made) {
  return contentOf(made).number;
}

/// Solved and planned again after each change, as a document is after an edit.
std::string afterwards(MadeSheet made, const Change& change) {
  change.make(made);
  made.solution = solve(made.part).value();
  made.plan();
  return lettersOf(made);
}

Feature& featureOf(MadeSheet& made, const Id& id) {
  const auto found = std::find_if(made.part.features.begin(), made.part.features.end(),
                                  [&](const Feature& one) { return one.id == id; });
  return *found;
}

Drilled& drilledOf(MadeSheet& made, const Id& id) {
  return *featureOf(made, id).drilled();
}

void figureOf(MadeSheet& made, const Id& reading, const char* text) {
  for (Reading& one : made.part.readings) {
    if (one.id == reading) one.figure = lettered(text);
  }
}

const std::vector<Change> kTellOnThePage{
    {"a hole is larger", [](MadeSheet& one) { drilledOf(one, "F1").diameter = lettered("9/64"); }},
    {"a hole is drilled, not reamed",
     [](MadeSheet& one) { drilledOf(one, "A").make = Make::drill; }},
    {"a hole is blind",
     [](MadeSheet& one) {
       drilledOf(one, "A").depth = {false, lettered("1/4")};
     }},
    {"a blind hole is deeper",
     [](MadeSheet& one) {
       drilledOf(one, "G").depth = {false, lettered("7/16")};
     }},
    {"another thread", [](MadeSheet& one) { drilledOf(one, "G").thread = "4-48 UNF"; }},
    {"a hole has another place", [](MadeSheet& one) { figureOf(one, "r15", "1 1/64"); }},
    {"a hole is gone",
     [](MadeSheet& one) {
       for (Reading& reading : one.part.readings) {
         if (reading.from == "J") reading.from = "H2";
       }
       featureOf(one, "J").id = "H2";
     }},
    {"a hole has a note", [](MadeSheet& one) { featureOf(one, "D").note = "burr outside"; }},
    {"the middle of the part alone",
     [](MadeSheet& one) { one.part.setups[0].zero[0].ofStock = false; }},
    {"zero at an edge",
     [](MadeSheet& one) {
       one.part.setups[0].zero[0] = {};
       one.part.setups[0].zero[0].at = "L";
     }},
    {"zero is moved", [](MadeSheet& one) { one.part.setups[0].zero[1].offset = lettered("-5/8"); }},
    {"turned on the table", [](MadeSheet& one) { one.part.setups[0].turn = 90; }},
    {"more stock",
     [](MadeSheet& one) {
       one.part.setups[0].stock[static_cast<std::size_t>(Side::left)] = lettered("3/32");
     }},
    {"another jaw", [](MadeSheet& one) { one.part.setups[0].jaw = Side::front; }},
    {"no stop", [](MadeSheet& one) { one.part.setups[0].stop.reset(); }},
    {"another finder", [](MadeSheet& one) { one.job.machine.finder = lettered("0.250"); }},
    {"a finer step", [](MadeSheet& one) { one.job.machine.step = "0.0001"; }},
    {"a metric readout",
     [](MadeSheet& one) {
       one.job.machine.unit = Unit::millimetre;
       one.job.machine.step = "0.005";
     }},
    {"counts the other way", [](MadeSheet& one) { one.job.machine.yCounts = CountsY::towards; }},
    {"another figure in dispute", [](MadeSheet& one) { figureOf(one, "r7", "3 27/64"); }},
    {"no dispute", [](MadeSheet& one) { figureOf(one, "r7", "3 1/2"); }},
    {"something accepted",
     [](MadeSheet& one) { one.part.accepted.push_back({one.solution.doubts.at(0).key.text()}); }},
    {"one hole less placed",
     [](MadeSheet& one) {
       std::erase_if(one.part.readings, [](const Reading& reading) { return reading.id == "r15"; });
     }},
    {"a warning of ours", [](MadeSheet& one) { one.options.warnings = {"much like plate 2"}; }},
    {"another setup's name", [](MadeSheet& one) { one.part.setups[0].name = "2"; }},
    {"fewer places to look at",
     [](MadeSheet& one) {
       one.part.setups[0].checks = {"A", "C"};
     }},
    {"how close to work",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{{MachineAxis::x, Length::ticks(4 * 2'540'000), {"A"}}}, {}, {}, {}};
     }},
    {"closer",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{{MachineAxis::x, Length::ticks(2 * 2'540'000), {"A"}}}, {}, {}, {}};
     }},
    {"as close, elsewhere",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{{MachineAxis::x, Length::ticks(2 * 2'540'000), {"B"}}}, {}, {}, {}};
     }},
    {"as close, along the other axis",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{{MachineAxis::y, Length::ticks(2 * 2'540'000), {"B"}}}, {}, {}, {}};
     }},
    {"to be aimed at",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{}, {{"C", MachineAxis::x, inches(1.5, one.table.step)}}, {}, {}};
     }},
    {"a direct check of the budget",
     [](MadeSheet& one) {
       one.options.closeness =
           Closeness{{}, {}, {{{SourceKind::reading, 0}, MachineAxis::x, {}, {}}}, {}};
     }},
};

// Each makes a sheet of its own: neither the first's number nor any other change's.
TEST(SheetNumber, EveryFactOnThePageMakesItAnother) {
  const MadeSheet made = frontPlate();
  std::map<std::string, std::string> seen{{lettersOf(made), "as it was"}};
  for (const Change& change : kTellOnThePage) {
    const auto [at, isNew] = seen.emplace(afterwards(made, change), change.what);
    EXPECT_TRUE(isNew) << change.what << " bears the number of: " << at->second;
  }
}

TEST(SheetNumber, WhatChangesNothingOnThePageKeepsIt) {
  const MadeSheet made = frontPlate();
  const std::string letters = lettersOf(made);
  for (const Change& change : {
           Change{"date", [](MadeSheet& one) { one.options.date = "2027-03-01"; }},
           Change{"no date", [](MadeSheet& one) { one.options.date.clear(); }},
           Change{"paper", [](MadeSheet& one) { one.options.paper = Paper::letter; }},
           Change{"distance", [](MadeSheet& one) { one.options.readingDistance = 2000; }},
           Change{"english", [](MadeSheet& one) { one.options.english = English::us; }},
           Change{"noted", [](MadeSheet& one) { one.options.isNoted = false; }},
           Change{"where it was traced",
                  [](MadeSheet& one) {
                    featureOf(one, "A").traced = {"0.4", "0.7"};
                  }},
           Change{"a second setup",
                  [](MadeSheet& one) {
                    one.part.setups.push_back(one.part.setups[0]);
                    one.part.setups[1].name = "2";
                  }},
       }) {
    EXPECT_EQ(afterwards(made, change), letters) << change.what;
  }
}

// Slots and pockets: a pocket has no row, and only what is said of it tells its depth.
TEST(SheetNumber, FollowsTheCutter) {
  const auto lettersWith = [](const char* cutter, const char* depth, const char* length) {
    test::MilledPlate plate;
    plate.slot("S", Axis::x, "1/4", length, "2", "1/2", "1/8");
    plate.pocket("1", "1 1/2", "1", "1", depth, "1/4");
    plate.job.shop.cutters = {test::MilledPlate::cutter(cutter)};
    MadeSheet made;
    made.job = plate.job;
    made.part = plate.part;
    made.part.setups = {plate.setup};
    made.solution = solve(made.part).value();
    made.plan();
    return lettersOf(made);
  };
  const std::set<std::string> letters{
      lettersWith("1/4", "1/8", "1"), lettersWith("3/16", "1/8", "1"),
      lettersWith("1/4", "3/16", "1"), lettersWith("1/4", "1/8", "1 1/16")};
  EXPECT_EQ(letters.size(), 4u);
}

// The part's and the setup's place in the job stand before the letters.
TEST(SheetNumber, BeginsWithThePlaceInTheJob) {
  MadeSheet made = settledPlate(Paper::a4);
  Part other;
  other.name = "Cock";
  made.job.parts = {other, made.part};
  made.part.setups.push_back(made.part.setups[0]);
  made.part.setups[1].name = "Back";
  EXPECT_EQ(lettersOf(made).substr(0, 4), "2.1 ");
  made.table.setup = "Back";
  EXPECT_EQ(lettersOf(made).substr(0, 4), "2.2 ");
}

}  // namespace
}  // namespace inchwright
