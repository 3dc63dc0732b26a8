#include "core/sheet/lathe_sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>

#include "core/say/lathe_words.h"
#include "core/sheet/bounds.h"
#include "core/sheet/style.h"
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

/// From how far a sheet is read, mm: to both ends of what is allowed, and where rows change shape.
constexpr double kDistances[] = {kNearestReading, 600, 1000, 1200, 1500, 1700, 2000,
                                 kFarthestReading};

/// All that can be said of a row or a cut, said of each.
Turned withMuchToSay(Turned one) {
  for (LatheRow& row : one.work.rows) {
    row.behind = "D1";
    row.from = row.length;
    row.topSlide = 1.25;
    row.limits = SizeLimits{row.dia->value, row.dia->value};
    row.disputed = true;
    row.struckOut = row.dia;
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
    for (const double distance : kDistances) {
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

/// Texts of a page whose boxes meet, the first pair of them.
std::string covering(const Page& page) {
  std::vector<const TextItem*> texts;
  for (const DrawItem& item : page.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (!text) continue;
    for (const TextItem* one : texts) {
      if (boundsOf(*one).grownBy(-1e-6).meets(boundsOf(*text)))
        return one->text + " | " + text->text;
    }
    texts.push_back(text);
  }
  return "";
}

/// The boxes to tick of a page.
std::vector<PaperBox> boxesOf(const Page& page) {
  std::vector<PaperBox> boxes;
  for (const DrawItem& item : page.items) {
    const auto* line = std::get_if<PolylineItem>(&item);
    if (!line || !line->closed || line->stroke.width != kThin) continue;
    const PaperBox box = boundsOf(item);
    if (std::abs(box.width() - box.height()) < 1e-6 && box.right > page.width - 12) {
      boxes.push_back(box);
    }
  }
  return boxes;
}

TEST(LatheSheet, PrintsNothingOverAnother) {
  for (const int steps : {1, 5, 24}) {
    for (const double distance : kDistances) {
      SheetOptions options;
      options.readingDistance = distance;
      const Turned one = withMuchToSay(Turned(steps, "3/4"));
      std::size_t boxes = 0;
      for (const Page& page : one.pages(options)) {
        EXPECT_EQ(covering(page), "") << steps << " at " << distance;
        const std::vector<PaperBox> all = boxesOf(page);
        boxes += all.size();
        for (const DrawItem& item : page.items) {
          const auto* text = std::get_if<TextItem>(&item);
          if (!text) continue;
          for (const PaperBox& box : all) {
            EXPECT_FALSE(boundsOf(*text).grownBy(-1e-6).meets(box))
                << text->text << " lies over a box at " << distance;
          }
        }
      }
      EXPECT_EQ(boxes, one.work.rows.size() + one.work.cuts.size()) << steps << " at " << distance;
    }
  }
}

// Read from far away the figures stand below each other, each behind its letter.
TEST(LatheSheet, FarFiguresSayWhichTheyAre) {
  const Turned one(5);
  for (const auto& [distance, shape] : {std::pair(2000.0, 1), std::pair(3000.0, 2)}) {
    SheetOptions options;
    options.readingDistance = distance;
    const std::vector<Page> pages = one.pages(options);
    std::vector<std::string> figures;
    for (const Page& page : pages) {
      for (const DrawItem& item : page.items) {
        const auto* text = std::get_if<TextItem>(&item);
        if (!text) continue;
        if (text->height == Style(distance).figure()) figures.push_back(text->text);
        if (text->height == Style(distance).second()) figures.push_back("(" + text->text + ")");
      }
    }
    std::vector<std::string> wanted;
    for (const LatheRow& row : one.work.rows) {
      const std::vector<std::string> said =
          shape == 1
              ? std::vector<std::string>{row.id, row.length.text, row.dia->text, "(X)"}
              : std::vector<std::string>{row.id, row.length.text, "(Z)", row.dia->text, "(X)"};
      wanted.insert(wanted.end(), said.begin(), said.end());
    }
    EXPECT_EQ(figures, wanted) << distance;
  }
}

// Found by trying: a name longer than its column was printed over its figures.
TEST(LatheSheet, LongNamesKeepClearOfFigures) {
  for (const char* name : {"seat", "seat of the great wheel",
                           "seat of the great wheel, of its washer and of the spring behind it"}) {
    Turned one(3);
    for (Feature& feature : one.part.features) {
      if (feature.id == "D2") feature.id = name;
    }
    one.solution = solve(one.part).value();
    one.work = latheWork(one.job, one.part, *one.solution, one.part.setups[0]).value();
    for (const double distance : kDistances) {
      SheetOptions options;
      options.readingDistance = distance;
      std::string all;
      for (const Page& page : one.pages(options)) {
        EXPECT_EQ(covering(page), "") << distance;
        for (const DrawItem& item : page.items) {
          if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
        }
      }
      // Over the picture, and at its row or below it; whole or line by line.
      const std::size_t rows = all.find("TURN TO");
      ASSERT_NE(rows, std::string::npos);
      EXPECT_NE(all.find(name, rows), std::string::npos) << distance << ": " << all;
    }
  }
}

/// The texts on the line of a row, from left to right.
std::string rowSaid(const std::vector<Page>& pages, const std::string& id, double height) {
  for (const Page& page : pages) {
    const TextItem* first = nullptr;
    std::string said;
    for (const DrawItem& item : page.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (!text) continue;
      if (!first && text->text == id && text->height == height) first = text;
      if (first && text->at.y == first->at.y) said += (said.empty() ? "" : " ") + text->text;
    }
    if (first) return said;
  }
  return "";
}

// Each stretch with its own length and diameter.
TEST(LatheSheet, EveryRowHasItsOwnFigures) {
  const Turned one(5);
  const std::vector<Page> pages = one.pages();
  ASSERT_EQ(one.work.rows.size(), 5u);
  for (const LatheRow& row : one.work.rows) {
    EXPECT_EQ(rowSaid(pages, row.id, Style(1000).figure()),
              row.id + " " + row.length.text + " " + row.dia->text);
  }
}

/// Where the figures of a height end, by the figure.
std::map<std::string, double> endsOf(const Page& page, double height) {
  std::map<std::string, double> ends;
  for (const DrawItem& item : page.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (text && text->height == height) ends[text->text] = boundsOf(*text).right;
  }
  return ends;
}

// Found by reading: a length below zero ended further left than one above it, and its minus was
// drawn behind its last figure.
TEST(LatheSheet, FiguresEndBelowTheirHeadingAndBeginWithTheirSign) {
  Turned one(5);
  ZeroAlong zero;
  zero.at = "E2";
  one.part.setups[0].zero = {zero};
  one.work = latheWork(one.job, one.part, *one.solution, one.part.setups[0]).value();
  const Page page = one.pages().at(0);
  auto figures = endsOf(page, Style(1000).figure());
  auto headings = endsOf(page, Style(1000).label());
  std::size_t below = 0;
  for (const LatheRow& row : one.work.rows) {
    EXPECT_NEAR(figures[row.length.text], headings["Length (Z)"], 1e-6) << row.length.text;
    EXPECT_NEAR(figures[row.dia->text], headings["Dia (X)"], 1e-6) << row.dia->text;
    if (row.length.text[0] == '-') ++below;
  }
  ASSERT_GT(below, 0u);
  // Minuses are drawn out to the left of the figures' middle.
  std::size_t minuses = 0;
  for (std::size_t i = 1; i < page.items.size(); ++i) {
    const auto* text = std::get_if<TextItem>(&page.items[i - 1]);
    if (!text || text->text[0] != '-' || text->height != Style(1000).figure()) continue;
    const PaperBox figure = boundsOf(page.items[i - 1]), minus = boundsOf(page.items[i]);
    EXPECT_LT(minus.right, (figure.left + figure.right) / 2) << text->text;
    EXPECT_GT(minus.right, figure.left) << text->text;
    ++minuses;
  }
  EXPECT_EQ(minuses, below);
}

// Cuts are counted from 1 in the order of work.
TEST(LatheSheet, CutsAreNumberedInOrder) {
  const Turned one(3);
  const std::vector<Page> pages = one.pages();
  for (std::size_t i = 0; i < one.work.cuts.size(); ++i) {
    const Cut& cut = one.work.cuts[i];
    std::string wanted = std::to_string(i + 1) + " " + cutWords(cut);
    if (cut.length) wanted += " Z " + cut.length->text;
    if (cut.dia) wanted += " X " + cut.dia->text;
    EXPECT_EQ(rowSaid(pages, std::to_string(i + 1), Style(1000).tool()), wanted);
  }
}

TEST(LatheSheet, EveryPageNamesPartUnitAndItself) {
  Turned one(24);
  one.part.material = "silver steel";
  one.part.quantity = 3;
  one.job.title = "Clock";
  one.job.print = "sheet 9";
  SheetOptions options;
  options.date = "2026-11-25";
  const std::vector<Page> pages = one.pages(options);
  ASSERT_GT(pages.size(), 1u);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::vector<Page> alone{pages[i]};
    std::string head;
    for (const DrawItem& item : pages[i].items) {
      if (const auto* text = std::get_if<TextItem>(&item)) head += text->text + " ";
    }
    for (const std::string& words :
         {std::string("Winding arbor"), std::string("INCHES"), std::string("SETUP 1"),
          std::string("silver steel · make 3"), std::string("sheet 9 · Clock · 2026-11-25"),
          "page " + std::to_string(i + 1) + " of " + std::to_string(pages.size()),
          std::string("counts the diameter · step 0.001")}) {
      EXPECT_NE(head.find(words), std::string::npos) << words << ": " << head.substr(0, 300);
    }
  }
}

// Where the readout counts the radius or in millimetres, figures and bar both say so.
TEST(LatheSheet, SaysWhatTheReadoutCounts) {
  Turned one(3);
  one.job.lathe.emplace();
  one.job.lathe->crossCounts = CrossCounts::radius;
  one.work = latheWork(one.job, one.part, *one.solution, one.part.setups[0]).value();
  EXPECT_TRUE(shows(one.pages(), "counts the radius · step"));
  EXPECT_TRUE(shows(one.pages(), "Half dia (X)"));
  EXPECT_TRUE(shows(one.pages(), "0.383")) << "half of 49/64";
  EXPECT_FALSE(shows(one.pages(), "0.766"));
  one.job.lathe->unit = Unit::millimetre;
  one.job.lathe->step = "0.02";
  one.work = latheWork(one.job, one.part, *one.solution, one.part.setups[0]).value();
  EXPECT_TRUE(shows(one.pages(), "MILLIMETRES"));
  EXPECT_FALSE(shows(one.pages(), "INCHES"));
}

}  // namespace
}  // namespace inchwright
