// The steps at the machine agree with the sheet: the same places, the same figures, in the order
// in which they are worked.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/say/setup_words.h"
#include "core/sheet/tablet_page.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

TabletSetup tabletOf(const MadeSheet& made, const TabletNotes& notes = {},
                     English english = English::uk) {
  const CheckedSetup checked = planAndCheck(made.job, made.part, made.solution,
                                            made.part.setups.front(), ToolsOwned(made.job.shop));
  return tabletSetup(made.part, made.table, checked, made.solution.isDraft(), english, notes);
}

std::size_t indexOf(const TabletSetup& setup, const std::string& title) {
  const auto found = std::find_if(
      setup.steps.begin(), setup.steps.end(),
      [&](const TabletStep& step) { return step.title.find(title) != std::string::npos; });
  EXPECT_NE(found, setup.steps.end()) << title;
  return static_cast<std::size_t>(found - setup.steps.begin());
}

TEST(TabletSteps, ComeInTheOrderOfTheWork) {
  const TabletSetup setup = tabletOf(settledPlate(Paper::a4));
  std::size_t last = 0;
  for (const char* title : {"Find zero: ", "Drive there and look before cutting", "Spot",
                            "Fit drill", "Fit ream", "Fit tap", "Measure before it is taken out"}) {
    const std::size_t at = indexOf(setup, title);
    EXPECT_TRUE(at > last || last == 0) << title;
    last = at;
  }
  EXPECT_EQ(last + 1, setup.steps.size());
}

// Whatever step a place stands in, it stands there with the figures of the sheet.
TEST(TabletSteps, BearTheFiguresOfTheSheet) {
  const MadeSheet made = frontPlate();
  const TabletSetup setup = tabletOf(made);
  std::size_t measured = 0;
  for (const TabletStep& step : setup.steps) {
    for (const TabletRow& row : step.rows) {
      const auto found = std::find_if(made.table.rows.begin(), made.table.rows.end(),
                                      [&](const TableRow& one) { return one.id == row.place; });
      if (found == made.table.rows.end()) {
        EXPECT_TRUE(row.place.starts_with("check ")) << row.place;
        continue;
      }
      EXPECT_EQ(row.x, signedText(found->x)) << step.title;
      EXPECT_EQ(row.y, signedText(found->y)) << step.title;
    }
    if (step.measures) measured += step.rows.size();
  }
  EXPECT_EQ(measured, made.table.rows.size());
  EXPECT_TRUE(setup.draft);
  EXPECT_FALSE(tabletOf(settledPlate(Paper::a4)).draft);
}

// Every step of every hole's run is one row of one tool, but for the edges, which have their own.
TEST(TabletSteps, EveryToolGoesToEveryHoleItIsFor) {
  const MadeSheet made = settledPlate(Paper::a4);
  const TabletSetup setup = tabletOf(made);
  const auto placesOf = [&](const std::string& title) {
    std::set<Id> places;
    for (const TabletRow& row : setup.steps.at(indexOf(setup, title)).rows) {
      EXPECT_TRUE(places.insert(row.place).second) << row.place << " twice in " << title;
    }
    return places;
  };
  std::set<Id> all;
  for (const TableRow& row : made.table.rows) all.insert(row.id);
  EXPECT_EQ(placesOf("Spot"), all);
  EXPECT_EQ(placesOf("Break the edges"), all);
  EXPECT_EQ(placesOf("Fit ream"), (std::set<Id>{"A", "B", "C", "D", "E"}));
  EXPECT_EQ(placesOf("Fit tap"), (std::set<Id>{"G", "H", "J"}));
}

// What is to be put right stands before anything is cut, in the reader's English.
TEST(TabletSteps, SayFirstWhatToMind) {
  TabletNotes notes;
  notes.warnings = {"much like the back plate in colour"};
  KitLine line;
  line.place = "P";
  line.words = "the colour of brass";
  notes.kit = {line};
  MadeSheet made = settledPlate(Paper::a4);
  made.job.machine.finder.reset();
  made.plan();
  const SetupWords words = setupWords(made.part, made.table, English::us);
  ASSERT_FALSE(words.warnings.empty());
  const TabletSetup setup = tabletOf(made, notes, English::us);
  for (const std::string& warning : words.warnings) {
    EXPECT_EQ(std::count(setup.before.begin(), setup.before.end(), warning), 1) << warning;
  }
  EXPECT_EQ(std::count(setup.before.begin(), setup.before.end(),
                       inEnglish(notes.warnings[0], English::us)),
            1);
  ASSERT_EQ(setup.kit.size(), 1u);
  EXPECT_EQ(setup.kit[0].words, inEnglish(line.words, English::us));
}

TEST(TabletSteps, SayTheUnitOfTheReadout) {
  EXPECT_FALSE(tabletOf(settledPlate(Paper::a4)).millimetres);
  EXPECT_TRUE(tabletOf(inMillimetres(settledPlate(Paper::a4))).millimetres);
}

}  // namespace
}  // namespace inchwright
