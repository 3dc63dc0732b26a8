// The page for a tablet and its script are of one mind: what the script looks for is there, under
// the same name, on pages of solved parts. `check_tablet` tries it in a browser where one is there.
#include "core/sheet/tablet_script.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/sheet/tablet_page.h"
#include "tests/core/sheet/milled_sheet.h"
#include "tests/core/sheet/turned_arbor.h"

namespace inchwright {
namespace {

TabletSetup setupOf(const MadeSheet& made, const TabletNotes& notes = {}) {
  const CheckedSetup checked = planAndCheck(made.job, made.part, made.solution,
                                            made.part.setups.front(), ToolsOwned(made.job.shop));
  return tabletSetup(made.part, made.table, checked, made.solution.isDraft(), English::uk, notes);
}

TabletSetup setupOf(const Turned& one) {
  return tabletSetup(one.work, Lathe{}, one.solution->isDraft(), English::uk);
}

MadeSheet milledSheet() {
  test::MilledPlate plate;
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "1 1/2", "1/8");
  plate.hole("A", "3", "1", "1/4");
  plate.job.shop.cutters = {test::MilledPlate::cutter("1/4")};
  return test::sheetOf(plate);
}

/// A page on which everything stands that can: a draft, the rest of the kit, what to put right,
/// slots, and a setup of the lathe.
std::string fullPage() {
  TabletNotes notes;
  notes.warnings = {"much like the back plate"};
  KitLine line;
  line.place = "P";
  line.mind = true;
  line.words = "to suit A";
  notes.kit = {line};
  return tabletPage("Clock", "first edition", "2026-11-25",
                    {setupOf(frontPlate(), notes), setupOf(milledSheet()), setupOf(Turned(3))});
}

std::string bodyOf(const std::string& page) {
  const std::size_t from = page.find("<body");
  return page.substr(from, page.find("<script") - from);
}

std::set<std::string> found(std::string_view text, const char* pattern) {
  const std::string all(text);
  const std::regex regex(pattern);
  std::set<std::string> names;
  for (std::sregex_iterator it(all.begin(), all.end(), regex), end; it != end; ++it) {
    names.insert((*it)[1]);
  }
  return names;
}

std::size_t timesIn(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
    ++count;
  }
  return count;
}

std::set<std::string> classesOf(const std::string& body) {
  std::set<std::string> all;
  for (const std::string& names : found(body, "class=\"([^\"]*)\"")) {
    for (const std::string& one : found(names, "([a-z]+)")) all.insert(one);
  }
  return all;
}

TEST(TabletScript, FindsEachIdOnce) {
  const std::string body = bodyOf(fullPage());
  const std::set<std::string> ids = found(tabletScript(), "getElementById\\(\"([a-z]+)\"\\)");
  EXPECT_EQ(ids, (std::set<std::string>{"back", "next", "unkept", "walk"}));
  for (const std::string& id : ids) EXPECT_EQ(timesIn(body, " id=\"" + id + "\""), 1u) << id;
}

TEST(TabletScript, FindsEveryClassAndMemberItAsksFor) {
  const std::string body = bodyOf(fullPage());
  const std::set<std::string> classes = classesOf(body);
  std::size_t asked = 0;
  for (const std::string& query : found(tabletScript(), "(?:all|querySelector)\\(\"([^\"]+)\"")) {
    for (const std::string& one : found(query, "\\.([a-z]+)")) {
      EXPECT_TRUE(classes.count(one)) << query;
      ++asked;
    }
    for (const std::string& one : found(query, "\\[([a-z-]+)\\]")) {
      EXPECT_NE(body.find(" " + one + "=\""), std::string::npos) << query;
    }
    for (const std::string& tag : found(query, "(?:^|, )([a-z]+)")) {
      EXPECT_NE(body.find("<" + tag + " "), std::string::npos) << query;
    }
  }
  EXPECT_GE(asked, 8u);
  const std::set<std::string> members = found(tabletScript(), "dataset\\.([a-z]+)");
  EXPECT_GE(members.size(), 7u);
  for (const std::string& one : members) {
    EXPECT_NE(body.find(" data-" + one + "=\""), std::string::npos) << one;
  }
}

// A class that no rule is for stays small and grey at the machine; a rule for none is left over.
TEST(TabletScript, StyleAndPageKnowTheSameClasses) {
  const std::set<std::string> styled = found(tabletStyle(), "\\.([a-z]+)[^;{}]*(?=\\{|,)");
  std::set<std::string> used = classesOf(bodyOf(fullPage()));
  for (const char* one : {"step", "setup", "zero", "copy", "still"}) {
    EXPECT_EQ(used.erase(one), 1u) << "asked for by the script alone: " << one;
  }
  for (const std::string& one : used) EXPECT_TRUE(styled.count(one)) << one << " has no look";
  for (const std::string& one : styled) EXPECT_TRUE(used.count(one)) << one << " is nowhere";
}

// Figures that are read from the spindle, and what a wet finger has to hit.
TEST(TabletScript, FiguresAndButtonsAreLarge) {
  const std::string style(tabletStyle());
  EXPECT_NE(style.find(".at { font-size: clamp(34px,"), std::string::npos);
  EXPECT_NE(style.find("nav button { flex: 1; min-height: 72px;"), std::string::npos);
  for (const char* rule : {"button {", ".found input {"}) {
    const std::size_t at = style.find(std::string("\n") + rule);
    ASSERT_NE(at, std::string::npos) << rule;
    EXPECT_NE(style.substr(at, style.find('}', at) - at).find("min-height: 56px"),
              std::string::npos)
        << rule;
  }
  EXPECT_NE(style.find("white-space: nowrap"), std::string::npos) << "no sign torn from its figure";
}

// Ticks are kept by edition, and figures found by part and setup: another part's setup of the same
// name must not take them over.
TEST(TabletScript, WhatIsKeptBelongsToOneSetupOfOneEdition) {
  MadeSheet front = settledPlate(Paper::a4), back = settledPlate(Paper::a4);
  back.part.name = "Back plate";
  back.plan();
  const auto page = [&](const char* edition, const char* date) {
    return bodyOf(tabletPage("Clock", edition, date, {setupOf(front), setupOf(back)}));
  };
  const std::string one = page("first edition", "2026-11-25");
  EXPECT_EQ(found(one, "data-key=\"([^\"]*)\""),
            (std::set<std::string>{"Front plate/1", "Back plate/1"}));
  std::set<std::string> editions;
  for (const std::string& body :
       {one, page("second edition", "2026-11-25"), page("first edition", "2026-11-26")}) {
    const std::set<std::string> named = found(body, "<body data-edition=\"([^\"]*)\"");
    ASSERT_EQ(named.size(), 1u);
    editions.insert(*named.begin());
  }
  EXPECT_EQ(editions.size(), 3u);
}

// Without the script every step is in sight: nothing but its own buttons waits for it.
TEST(TabletScript, HidesNothingThatCountsUntilItRuns) {
  const std::string body = bodyOf(fullPage());
  EXPECT_EQ(found(body, "<(article|section|div|li)[^>]* hidden").size(), 0u);
  EXPECT_EQ(timesIn(body, "<nav id=\"walk\" hidden>"), 1u);
  EXPECT_EQ(timesIn(body, "aria-pressed=\"true\""), 0u);
}

/// The figures of a page's rows, each place with its letters.
std::vector<std::string> rowsOn(const std::string& body) {
  std::vector<std::string> rows;
  const std::regex regex(
      "<span class=\"place\">([^<]*)</span>((?:<span class=\"at\"><b>[^<]*</b> [^<]*</span>)*)");
  for (std::sregex_iterator it(body.begin(), body.end(), regex), end; it != end; ++it) {
    const std::string figures = std::regex_replace((*it)[2].str(), std::regex("<[^>]*>"), " ");
    std::istringstream words(figures);
    std::string row = (*it)[1];
    for (std::string word; words >> word;) row += " " + word;
    rows.push_back(row);
  }
  return rows;
}

// By hand: the centre goes from 7/8 to 1 5/8 along X.
TEST(TabletScript, PageShowsWhereTheCutterGoes) {
  const TabletSetup setup = setupOf(milledSheet());
  const auto mill = std::find_if(setup.steps.begin(), setup.steps.end(), [](const TabletStep& one) {
    return one.title.starts_with("Fit end mill") && !one.lines.empty();
  });
  ASSERT_NE(mill, setup.steps.end());
  ASSERT_EQ(mill->rows.size(), 2u);
  EXPECT_EQ(mill->rows[0], (TabletRow{"S", "+0.8750", "+1.5000", "down the middle, from here"}));
  EXPECT_EQ(mill->rows[1], (TabletRow{"S", "+1.6250", "+1.5000", "to here"}));
  const std::vector<std::string> rows = rowsOn(bodyOf(tabletPage("", "", "today", {setup})));
  const std::vector<std::string> run{"S X +0.8750 Y +1.5000", "S X +1.6250 Y +1.5000"};
  EXPECT_NE(std::search(rows.begin(), rows.end(), run.begin(), run.end()), rows.end());
}

// All rows of a solved plate come through with both figures under their letters.
TEST(TabletScript, PageShowsEveryRowOfEveryStep) {
  for (const MadeSheet& made : {frontPlate(), inMillimetres(frontPlate())}) {
    const TabletSetup setup = setupOf(made);
    std::vector<std::string> wanted;
    for (const TabletStep& step : setup.steps) {
      for (const TabletRow& row : step.rows) {
        wanted.push_back(row.place + " X " + row.x + " Y " + row.y);
      }
    }
    ASSERT_GT(wanted.size(), made.table.rows.size());
    const std::string body = bodyOf(tabletPage("", "", "today", {setup}));
    EXPECT_EQ(rowsOn(body), wanted);
    const bool isMetric = made.table.step.unit == Unit::millimetre;
    EXPECT_EQ(timesIn(body, "data-unit=\"mm\""), isMetric ? 1u : 0u);
    EXPECT_EQ(timesIn(body, "In millimetres."), isMetric ? 1u : 0u);
    EXPECT_EQ(timesIn(body, "In inches."), isMetric ? 0u : 1u);
    EXPECT_EQ(timesIn(body, "DRAFT"), 1u);
    for (std::size_t i = 1; i <= setup.steps.size(); ++i) {
      EXPECT_EQ(timesIn(body, "<p class=\"count\">" + std::to_string(i) + " of " +
                                  std::to_string(setup.steps.size()) + "</p>"),
                1u);
    }
  }
}

// The lathe's own letters, the length first; of what was turned the diameter alone is measured.
TEST(TabletScript, PageShowsTheCutsOfTheLathe) {
  const Turned one(3);
  const TabletSetup setup = setupOf(one);
  ASSERT_EQ(setup.steps.size(), one.work.cuts.size() + 1);
  for (std::size_t i = 0; i < one.work.cuts.size(); ++i) {
    const Cut& cut = one.work.cuts[i];
    ASSERT_EQ(setup.steps[i].rows.size(), 1u);
    EXPECT_EQ(setup.steps[i].rows[0].x, cut.length ? cut.length->text : "") << i;
    EXPECT_EQ(setup.steps[i].rows[0].y, cut.dia ? cut.dia->text : "") << i;
    EXPECT_TRUE(setup.steps[i].title[0] >= 'A' && setup.steps[i].title[0] <= 'Z');
  }
  const std::string body = bodyOf(tabletPage("", "", "today", {setup}));
  const std::vector<std::string> rows = rowsOn(body);
  std::size_t finished = 0;
  for (const LatheRow& row : one.work.rows) {
    EXPECT_NE(std::find(rows.begin(), rows.end(),
                        row.id + " Z " + row.length.text + " X " + row.dia->text),
              rows.end())
        << row.id;
    // To be measured, without a length.
    EXPECT_EQ(
        rows[rows.size() - one.work.rows.size() + finished],
        setup.steps.back().rows[finished].place + " X " + setup.steps.back().rows[finished].y);
    ++finished;
  }
  EXPECT_EQ(setup.steps.back().rows.size(), finished);
  EXPECT_EQ(timesIn(body, "data-found=\"size\""), finished);
  EXPECT_EQ(timesIn(body, "data-found=\"y\""), 0u);
  EXPECT_EQ(timesIn(body, "DRAFT"), 0u);
}

}  // namespace
}  // namespace inchwright
