#include "core/sheet/lathe_sheet.h"

#include <gtest/gtest.h>

#include <string>

#include "core/sheet/bounds.h"
#include "tests/core/sheet/turned_arbor.h"

namespace inchwright {
namespace {

bool shows(const std::vector<Page>& pages, const std::string& text) {
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      const auto* words = std::get_if<TextItem>(&item);
      if (words && words->text.find(text) != std::string::npos) return true;
    }
  }
  return false;
}

TEST(LatheSheet, ShowsFiguresCutsAndCautions) {
  const auto pages = Turned(3).pages();
  ASSERT_EQ(pages.size(), 1u);
  for (const char* text : {"Winding arbor", "INCHES", "Length (Z)", "Dia (X)", "D1", "0.750",
                           "0.766", "rough D1", "break all edges", "Chuck key out"}) {
    EXPECT_TRUE(shows(pages, text)) << text;
  }
  EXPECT_FALSE(shows(pages, "DRAFT"));
}

TEST(LatheSheet, SaysWhatIsInDoubt) {
  Turned one(3);
  one.work.zeroAssumed = true;
  EXPECT_TRUE(shows(one.pages(), "nothing says where zero is"));
  one.part.readings.pop_back();
  auto loose = solve(one.part);
  one.solution = *std::move(loose);
  EXPECT_TRUE(shows(one.pages(), "DRAFT"));
}

/// All that can be said of a row or a cut, said of each.
Turned withMuchToSay(Turned one) {
  for (LatheRow& row : one.work.rows) {
    row.behind = "D1";
    row.from = row.length;
    row.topSlide = 1.25;
    row.limits = SizeLimits{row.dia->value, row.dia->value};
    row.disputed = true;
  }
  for (Cut& cut : one.work.cuts) {
    cut.behind = "D1";
    cut.from = cut.length;
  }
  return one;
}

// The rules for every page: nothing over the margin, however many rows and from however far.
TEST(LatheSheet, KeepsToThePaper) {
  for (const int steps : {1, 5, 24}) {
    for (const double distance : {600.0, 1000.0, 1500.0}) {
      SheetOptions options;
      options.readingDistance = distance;
      options.paper = steps == 5 ? Paper::letter : Paper::a4;
      const auto pages = withMuchToSay(Turned(steps, "3/4")).pages(options);
      ASSERT_FALSE(pages.empty());
      for (const Page& page : pages) {
        const PaperBox paper{3, 3, page.width - 3, page.height - 3};
        for (const DrawItem& item : page.items) {
          const PaperBox box = boundsOf(item);
          EXPECT_TRUE(paper.holds(box)) << steps << " at " << distance << ": " << box.left << ' '
                                        << box.top << ' ' << box.right << ' ' << box.bottom;
        }
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
