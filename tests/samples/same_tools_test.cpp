// The table, the sheet, the plan and the steps at the machine name the very same tools in the same
// order, whatever is owned.

#include <gtest/gtest.h>

#include <random>

#include "core/checks/whole_part.h"
#include "core/document/document.h"
#include "core/plan/table.h"
#include "core/say/done_words.h"
#include "core/say/making_words.h"
#include "core/sheet/tape_up.h"
#include "core/solution/solution.h"

namespace inchwright {
namespace {

std::string upper(std::string text) {
  for (char& c : text) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return text;
}

std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c != ' ' && c != '\n') out += c;
  }
  return out;
}

/// All words of the sheet, without blanks and line ends.
std::string wordsOf(const std::vector<Page>& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) all += squeezed(text->text);
    }
  }
  return upper(all);
}

void expectSame(const Job& job, const Part& part, const Setup& setup) {
  if (setup.chucked) return;
  const Result<Solution> solution = solve(part);
  ASSERT_TRUE(solution.ok());
  const Result<SetupTable> table = makeTable(job, part, *solution, setup);
  ASSERT_TRUE(table.ok()) << table.error().text;
  const CheckedSetup planned = planAndCheck(job, part, *solution, setup, ToolsOwned(job.shop));
  const std::string sheet = wordsOf(tapeUpSheet(job, part, *solution, *table, SheetOptions()));
  for (const TableRow& row : table->rows) {
    const HolePlan* plan = nullptr;
    for (const PlannedHole& hole : planned.holes) {
      if (hole.id == row.id) plan = &*hole.plan;
    }
    for (const PlannedSlot& slot : planned.milled) {
      if (slot.id == row.feature) plan = &*slot.steps;
    }
    if (!plan) continue;  // a point
    EXPECT_EQ(*row.plan, *plan) << row.id;
    std::string run, heading, ticks;
    for (const HoleStep* step : fittingsOf(*plan)) {
      run += (run.empty() ? "" : ", ") + stepWords(*step, table->step.unit);
      heading += (heading.empty() ? "" : "\u00B7") + stepWords(*step, table->step.unit);
      MadePlace made;
      made = withDone(made, *step, true);
      EXPECT_TRUE(isDone(made, *step)) << doneName(*step);
      if (!step->struckOut.empty()) {
        EXPECT_NE(sheet.find(upper(squeezed("never drill " + step->struckOut))), std::string::npos)
            << row.id;
      }
    }
    if (!plan->lacking.empty()) {
      run.insert(0, "incomplete: ");
      heading.insert(0, "incomplete: ");
    }
    EXPECT_EQ(stepsWords(row, table->step.unit), run);
    EXPECT_NE(sheet.find(upper(squeezed(heading))), std::string::npos) << heading;
  }
}

TEST(SameTools, OnEverySample) {
  for (const char* name : {"back_plate", "barrel_bridge", "bracket", "click_work", "cock",
                           "front_plate", "pallet_cock", "pendulum_hanger", "wheel_train"}) {
    SCOPED_TRACE(name);
    const Result<Job> job =
        loadDocument(std::string(INCHWRIGHT_SOURCE_DIR) + "/samples/" + name + ".inchwright");
    ASSERT_TRUE(job.ok());
    for (const Part& part : job->parts) {
      for (const auto& setup : part.setups) expectSame(*job, part, setup);
    }
  }
}

std::string oneOf(std::mt19937& random, std::initializer_list<const char*> choices) {
  return choices.begin()[random() % choices.size()];
}

TEST(SameTools, OnHolesAndShopsAtRandom) {
  std::mt19937 random(1507);
  for (int round = 0; round < 60; ++round) {
    std::string features, readings;
    for (int i = 0; i < 6; ++i) {
      const std::string id = "H" + std::to_string(i);
      const std::string make = oneOf(random, {"drill", "ream", "bore", "tap", "counterbore"});
      features += ",{\"id\":\"" + id + "\",\"kind\":\"hole\",\"face\":\"top\",\"make\":\"" + make +
                  "\",\"depth\":\"" + oneOf(random, {"through", "1/4", "3/8"}) + "\"";
      if (make == "tap") {
        features += ",\"thread\":\"" + oneOf(random, {"1/4-20 UNC", "M3", "2 BA", "9/7-3"}) + "\"";
      } else {
        features += ",\"diameter\":\"" +
                    oneOf(random, {"1/8", "1/4", "0.205", "6 mm", "3/4", "1 1/4"}) + "\"";
      }
      features += "}";
      readings += ",{\"id\":\"x" + id + "\",\"axis\":\"x\",\"from\":\"L\",\"to\":\"" + id +
                  "\",\"text\":\"" + std::to_string(i + 1) + "\"},{\"id\":\"y" + id +
                  "\",\"axis\":\"y\",\"from\":\"F\",\"to\":\"" + id + "\",\"text\":\"1\"}";
    }
    const std::string shop =
        oneOf(random, {"{}", R"({"drills":["metric 1 to 10 by 0.1"]})", R"({"drills":["number"]})",
                       R"({"reamers":[]})",
                       R"({"drills":[],"reamers":[],"taps":[],"cutters":[],"boring":[]})",
                       R"({"reamers":[{"size":"1/4","by":"hand"}],"boring":{"dial":"slide"}})"});
    const std::string unit = oneOf(random, {"in", "mm"});
    const std::string text =
        R"({"inchwright":1,"job":{"unit":"in"},"machine":{"unit":")" + unit + R"("},"shop":)" +
        shop + R"(,"parts":[{"name":"P","material":"brass","features":[
          {"id":"L","kind":"edge","axis":"x","side":"left"},
          {"id":"F","kind":"edge","axis":"y","side":"front"})" +
        features + R"(],"readings":[)" + readings.substr(1) +
        R"(],"setups":[{"name":"1","face":"top","zero":{"x":{"at":"L"},"y":{"at":"F"}}}]}]})";
    const Result<Job> job = readDocument(text);
    ASSERT_TRUE(job.ok()) << job.error().text << " " << job.error().place << "\n" << text;
    SCOPED_TRACE(text);
    expectSame(*job, job->parts[0], job->parts[0].setups[0]);
    if (HasFailure()) return;
  }
}

}  // namespace
}  // namespace inchwright
