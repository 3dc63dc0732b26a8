// Every sheet that goes to the machine, item by item with its place on paper, and what on it can be
// pointed at; the same of the page for a tablet. `paper.txt` says which. To renew them after a
// wanted change, run this test with INCHWRIGHT_RENEW_GOLDEN=1, look at the sheets old and new, read
// what differs, and commit it.
#include <gtest/gtest.h>

#include <cmath>
#include <iomanip>
#include <sstream>

#include "app/words/sheet_pages.h"
#include "core/plan/closeness.h"
#include "core/sheet/tape_up.h"
#include "tests/deceits/told/transcripts.h"

namespace inchwright::app {
namespace {

std::string targetsText(const Page& page) {
  std::ostringstream text;
  text << std::fixed << std::setprecision(2);
  for (const PaperTarget& one : page.targets) {
    text << "target " << static_cast<int>(one.kind) << ' ' << one.place << ' ' << one.which;
    for (const double number : {one.from.x, one.from.y, one.to.x, one.to.y, one.radius, one.away.x,
                                one.away.y, one.up.x, one.up.y}) {
      text << ' ' << (std::abs(number) < .005 ? 0.0 : number);
    }
    text << '\n';
  }
  return text.str();
}

/// The options of the word `sheet` that say what the pages hold.
SheetOptions optionsOf(const Arguments& arguments) {
  SheetOptions options;
  options.date = "2026-11-25";
  options.isNoted = false;
  options.showRounding = arguments.has("--rounding");
  if (arguments.value("--paper") == "letter") options.paper = Paper::letter;
  if (arguments.value("--english") == "us") options.english = English::us;
  options.readingDistance = std::stod(arguments.value("--distance").value_or("1000"));
  return options;
}

class Pages : public Transcripts {
 protected:
  std::string pagesText(const Deceit& one) {
    Texts call = one.asked;
    call.push_back(file(changedDocument(one)));
    const auto arguments = sortArguments(call, {{"--pages", true},
                                                {"--paper", true},
                                                {"--part", true},
                                                {"--setup", true},
                                                {"--unit", true},
                                                {"--step", true},
                                                {"--english", true},
                                                {"--distance", true},
                                                {"--rounding"},
                                                {"--closeness"}});
    if (!arguments.ok()) return "? " + arguments.error().text + "\n";
    const auto kinds = pageKindsNamed(arguments->value("--pages").value_or("setup"));
    const auto opened = openJob(*arguments);
    if (!kinds.ok()) return "? " + kinds.error().text + "\n";
    if (!opened.ok()) return "? " + opened.error().text + "\n";
    const auto planned = planJob(*arguments, *opened);
    if (!planned.ok()) return "? " + planned.error().text + "\n";
    std::vector<SheetOptions> options(planned->size(), optionsOf(*arguments));
    for (std::size_t i = 0; i < planned->size(); ++i) {
      const PlannedSetup& setup = (*planned)[i];
      if (setup.lathe || !arguments->has("--closeness")) continue;
      const OpenedJob::Solved& solved = opened->solved[setup.solved];
      const auto work =
          workAt(opened->job, opened->part(solved), solved.solution, setup.setup, setup.options);
      EXPECT_TRUE(work.ok());
      auto closeness = closenessOnSheet(*work, setup.table, true);
      EXPECT_TRUE(closeness.ok());
      options[i].closeness = *closeness;
    }
    const auto pages = pagesOf(*kinds, *opened, *planned, options);
    if (!pages.ok()) return "? " + pages.error().text + "\n";
    std::string text;
    for (const Page& page : *pages) text += drawListText({page}) + targetsText(page);
    return text;
  }
};

class PagesOf : public Pages, public testing::WithParamInterface<std::string> {};

TEST_P(PagesOf, TheJob) {
  std::string text;
  for (const Deceit& one : linesOfTable("paper.txt", 3)) {
    if (one.document == GetParam()) text += "# " + one.line + "\n" + pagesText(one);
  }
  ASSERT_FALSE(text.empty());
  expectKept("paper_" + GetParam(), text);
}

INSTANTIATE_TEST_SUITE_P(OnPaper, PagesOf,
                         testing::Values("front_plate", "bracket", "click_work", "cock",
                                         "end_shake", "block", "plate", "milled", "slanted",
                                         "shaft"),
                         [](const auto& one) { return std::string(one.param); });

class TabletPageOf : public Transcripts, public testing::WithParamInterface<std::string> {};

TEST_P(TabletPageOf, TheJob) {
  ::setenv("SOURCE_DATE_EPOCH", "1795600000", 1);
  const Scratch written;
  const std::string out = written.path("page.html");
  EXPECT_EQ(say({"sheet", file(soundDocument(GetParam()).dump()), "--out", out}).err, "");
  ::unsetenv("SOURCE_DATE_EPOCH");
  const std::string page = Scratch::read(out);
  // The style and script are the same of all and tried in a browser.
  const std::size_t from = page.find("<body"), script = page.find("<script");
  ASSERT_LT(from, page.size());
  expectKept("tablet_" + GetParam(), page.substr(from, script - from));
}

INSTANTIATE_TEST_SUITE_P(ForATablet, TabletPageOf,
                         testing::Values("front_plate", "block", "end_shake", "click_work", "cock",
                                         "milled", "shaft"),
                         [](const auto& one) { return std::string(one.param); });

}  // namespace
}  // namespace inchwright::app
