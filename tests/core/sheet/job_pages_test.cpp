// The pages about the whole job: what stands on them, and that a layout is as large as it says.
#include "core/sheet/job_pages.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/sheet/bounds.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

/// The plate as a job of its own.
struct PlateJob {
  explicit PlateJob(bool settled = false) : made(solvedPlate(settled)) { take(); }

  void take() {
    made.plan();
    paper.reset();
    paper.emplace(JobOnPaper{made.job, {}, made.options});
    const auto setup = setupInJob(made.job, made.part, made.solution, made.part.setups[0],
                                  made.table, made.options);
    ASSERT_TRUE(setup.ok());
    PartInJob part{made.part, made.solution, {}, {}};
    part.setups.push_back(*setup);
    paper->parts.push_back(part);
  }

  MadeSheet made;
  std::optional<JobOnPaper> paper;
};

std::string wordsOn(const std::vector<Page>& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + "\n";
    }
  }
  return all;
}

void expectAll(const std::string& all, std::initializer_list<const char*> words) {
  for (const char* one : words) EXPECT_NE(all.find(one), std::string::npos) << one << "\n" << all;
}

void expectOnPaper(const std::vector<Page>& pages) {
  for (const Page& page : pages) {
    const PaperBox paper{6, 6, page.width - 6, page.height - 6};
    for (const DrawItem& item : page.items) {
      const PaperBox box = boundsOf(item);
      EXPECT_TRUE(paper.holds(box))
          << box.left << " " << box.top << " " << box.right << " " << box.bottom;
    }
  }
}

TEST(JobPages, CoverNamesPartsSetupsSheetsAndWhatIsInDoubt) {
  PlateJob job;
  const std::vector<Page> pages = coverPages(*job.paper);
  const std::string all = wordsOn(pages);
  expectAll(all, {"Front plate \u00B7 make 2 in brass \u00B7 left hand", "Clock plates",
                  "sheet 2, second edition", "2026-11-25", "DRAFT: ", "queries open", "page 1 of 1",
                  "qualified practice"});
  // The number under which the setup's own sheet goes.
  const std::string number = job.paper->parts[0].setups[0].number;
  EXPECT_NE(all.find(number), std::string::npos);
  EXPECT_NE(wordsOn(job.made.pages()).find(number), std::string::npos);
  EXPECT_EQ(job.paper->parts[0].setups[0].pages, job.made.pages().size());
  expectAll(wordsOn(coverPages(*PlateJob(true).paper)), {"Nothing is in doubt."});
  expectOnPaper(pages);
}

// 4 long with 1/16 at each end is 4 1/8; 2 3/4 deep; the thickness has no sides.
TEST(JobPages, StockCountsWhatIsLeftAndTheSaw) {
  const PlateJob job;
  const std::string all = wordsOn(stockPages(*job.paper));
  expectAll(all, {"4 in", "1/8 in", "4 1/8 in", "2 3/4 in", "nothing", "not placed",
                  "8 3/8 in of bar", "a third of the height"});
  expectOnPaper(stockPages(*job.paper));
}

TEST(JobPages, ToolsAreCountedOverTheJob) {
  PlateJob job;
  const std::string all = wordsOn(toolPages(*job.paper));
  expectAll(all, {"drill C", "ream 1/4", "drill #43", "tap #4-40 UNC", "Front plate 1"});
  EXPECT_EQ(all.find("Not to be had"), std::string::npos);
  // Twelve holes are spotted.
  EXPECT_NE(all.find("spot\n12\n"), std::string::npos) << all;
  job.made.part.features[4].drilled()->diameter = lettered("2 1/7");
  job.take();
  expectAll(wordsOn(toolPages(*job.paper)),
            {"Not to be had from what is owned", "Front plate 1, A: "});
}

TEST(JobPages, FirstOffHasEveryReadingWithItsLimits) {
  PlateJob job;
  for (Reading& reading : job.made.part.readings) {
    if (reading.id == "r2") reading.figure = lettered("1.1875 +.002 -.001");
    if (reading.id == "r5") reading.figure = lettered("(4)");
  }
  const std::vector<Page> pages = firstOffPages(*job.paper);
  const std::string all = wordsOn(pages);
  for (const Reading& reading : job.made.part.readings) {
    EXPECT_NE(all.find("\n" + reading.id + "\n"), std::string::npos) << reading.id;
  }
  expectAll(all, {"A \u2013 B\n", "1.1865", "1.1895", "measured by", "each \u00D8"});
  // A figure in brackets has no limits of its own.
  EXPECT_NE(all.find("(4)\n____"), std::string::npos) << all;
  // 11/16 by the customary 1/64: 0.671875 to 0.703125, inwards.
  expectAll(all, {"0.6719", "0.7031"});
  expectOnPaper(pages);
}

/// The lengths of all lines on a page that stand alone, by their direction.
std::set<long> lengthsOn(const Page& page, bool upright) {
  std::set<long> lengths;
  for (const DrawItem& item : page.items) {
    const auto* line = std::get_if<PolylineItem>(&item);
    if (!line || line->points.size() != 2) continue;
    const PlanePoint way = line->points[1] - line->points[0];
    if ((upright ? way.x : way.y) != 0) continue;
    lengths.insert(std::lround(std::abs(upright ? way.y : way.x) * 1000));
  }
  return lengths;
}

// Measured on the page itself: the bars, the sides of the plate and the way between two holes.
TEST(JobPages, ALayoutIsFullSize) {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    PlateJob job;
    job.paper->options.paper = paper;
    const std::vector<Page> pages = layoutPages(*job.paper);
    ASSERT_EQ(pages.size(), 1u);
    EXPECT_TRUE(lengthsOn(pages[0], false).count(101'600));  // the bar of 4 in and the plate's side
    EXPECT_TRUE(lengthsOn(pages[0], true).count(101'600));
    EXPECT_TRUE(lengthsOn(pages[0], true).count(69'850));    // 2 3/4 in
    EXPECT_TRUE(lengthsOn(pages[0], false).count(104'775));  // the stock, 4 1/8 in
    expectAll(wordsOn(pages), {"4 in: measure this bar before use", "not to measure by"});
    expectOnPaper(pages);
  }
  EXPECT_EQ(layoutBar(Unit::millimetre), 100);
}

// What is in doubt is told on every page that gives figures.
TEST(JobPages, NothingInDoubtIsLaidOutWithoutAWord) {
  PlateJob open;
  expectAll(wordsOn(layoutPages(*open.paper)), {"DRAFT: settle what the cover page asks"});
  for (const auto& make : {stockPages, toolPages, firstOffPages}) {
    expectAll(wordsOn(make(*open.paper)), {"DRAFT: "});
    EXPECT_EQ(wordsOn(make(*PlateJob(true).paper)).find("DRAFT"), std::string::npos);
  }
  PlateJob settled(true);
  EXPECT_EQ(wordsOn(layoutPages(*settled.paper)).find("DRAFT"), std::string::npos);
  const auto drawn = [&]() -> DrawnPart& { return settled.paper->parts[0].setups[0].drawn; };
  ASSERT_FALSE(drawn().circles.empty());
  const std::size_t whole = layoutPages(*settled.paper)[0].items.size();
  const Id first = drawn().circles[0].id;
  drawn().circles[0].disputed = true;
  const std::vector<Page> broken = layoutPages(*settled.paper);
  expectAll(wordsOn(broken), {("In dispute, drawn broken: " + first + ".").c_str()});
  // Half of the 96 pieces of its ring are left out; one line of words is added.
  EXPECT_EQ(broken[0].items.size(), whole - 48 + 1);
  drawn().circles[0].disputed = false;
  drawn().missing.push_back(TableSide::right);
  const std::vector<Page> open_sided = layoutPages(*settled.paper);
  expectAll(wordsOn(open_sided), {"Sides that nothing places are left out: right."});
  EXPECT_EQ(open_sided[0].items.size(), whole);  // one side less, one line of words more
  drawn().missing.clear();
  drawn().marks.push_back({"P", drawn().circles[0].centre + PlanePoint{3, 3}});
  EXPECT_NE(wordsOn(layoutPages(*settled.paper)).find("\nP\n"), std::string::npos);
}

// A mile of plate is told, not laid out.
TEST(JobPages, AFaceTooLargeForPaperIsTold) {
  PlateJob job(true);
  DrawnPart& drawn = job.paper->parts[0].setups[0].drawn;
  for (PlanePoint& point : drawn.outline) point = point * 1e5;
  const std::vector<Page> pages = layoutPages(*job.paper);
  ASSERT_EQ(pages.size(), 1u);
  expectAll(wordsOn(pages), {"too large to be laid out", "more than 64 sheets"});
  expectOnPaper(pages);
}

/// How far a place lies from the nearest of these names, mm.
double toNearestName(const Page& page, const std::set<std::string>& names, PlanePoint at) {
  double nearest = 1e9;
  for (const DrawItem& item : page.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (text == nullptr || names.count(text->text) == 0) continue;
    const PaperBox box = boundsOf(item);
    nearest = std::min(nearest, std::hypot(at.x - std::clamp(at.x, box.left, box.right),
                                           at.y - std::clamp(at.y, box.top, box.bottom)));
  }
  return nearest;
}

/// Each hole's cross, where it is whole, has a name of such a hole beside it; how many there are.
std::size_t namedCrosses(const std::vector<Page>& pages, const std::vector<DrawnHole>& holes) {
  std::map<double, std::set<std::string>> names;  // by the length of a hole's cross
  for (const DrawnHole& hole : holes) {
    names[std::max(hole.diameter, hole.seatDiameter) + 5].insert(hole.id);
  }
  std::size_t crosses = 0;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      const auto* line = std::get_if<PolylineItem>(&item);
      if (line == nullptr || line->points.size() != 2) continue;
      const PlanePoint a = line->points[0], b = line->points[1];
      for (const auto& [across, alike] : names) {
        if (a.y != b.y || std::abs(b.x - a.x - across) > 1e-6) continue;
        ++crosses;
        EXPECT_LE(toNearestName(page, alike, (a + b) * 0.5), across / 2 + 4);
      }
    }
  }
  return crosses;
}

// Every hole keeps its name where the work is crowded, and no name lies on the words above.
TEST(JobPages, ALayoutNamesAllItsHoles) {
  RandomSheets random(23);
  int laid = 0;
  for (int round = 0; round < 12; ++round) {
    MadeSheet made = random.next(random.between(1, 40));
    JobOnPaper paper{made.job, {}, made.options};
    const auto setup = setupInJob(made.job, made.part, made.solution, made.part.setups[0],
                                  made.table, made.options);
    ASSERT_TRUE(setup.ok());
    paper.parts.push_back({made.part, made.solution, {}, {}});
    paper.parts.back().setups.push_back(*setup);
    const std::vector<Page> pages = layoutPages(paper);
    std::string all = wordsOn(pages);
    if (all.find("too large") != std::string::npos) continue;
    ++laid;
    // A very long name goes over several lines.
    std::erase(all, '\n');
    for (const DrawnHole& hole : setup->drawn.circles) {
      EXPECT_NE(all.find(hole.id), std::string::npos) << hole.id;
    }
    expectOnPaper(pages);
    for (const Page& page : pages) {
      // As far down as the words above the drawing reach.
      double lowest = 0;
      for (const DrawItem& item : page.items) {
        const auto* text = std::get_if<TextItem>(&item);
        if (text && text->height == 2.4) lowest = std::max(lowest, boundsOf(item).bottom);
      }
      for (const DrawItem& item : page.items) {
        if (!std::holds_alternative<PolylineItem>(item)) continue;
        EXPECT_GE(boundsOf(item).top, lowest);
      }
    }
  }
  EXPECT_GT(laid, 3);
}

TEST(JobPages, ALayoutNamesEachHoleBesideIt) {
  PlateJob job(true);
  const auto& holes = job.paper->parts[0].setups[0].drawn.circles;
  EXPECT_EQ(namedCrosses(layoutPages(*job.paper), holes), holes.size());
}

// A plate of 20 by 16 inches: each hole's cross stands whole on some sheet, and neighbouring sheets
// put it 8 mm apart from where their shared corner crosses say.
TEST(JobPages, ALargeLayoutGoesOverSeveralSheets) {
  PlateJob job(true);
  MadeSheet& made = job.made;
  for (const Axis axis : kAxes) {
    for (Position& position : made.solution.positions.along(axis).positions) {
      position.ticks = *position.ticks.times(Rational(5));
    }
  }
  job.take();
  const std::vector<Page> pages = layoutPages(*job.paper);
  // 511.2 (the stock) by 349.3 mm on 177 by about 245 mm of room, less what neighbours share.
  EXPECT_EQ(pages.size(), 6u);
  expectOnPaper(pages);
  const std::string all = wordsOn(pages);
  for (const TableRow& row : made.table.rows) {
    EXPECT_NE(all.find("\n" + row.id + "\n"), std::string::npos) << row.id;
  }
  expectAll(all, {"Sheet 2 down, 3 across of 2 by 3", "page 6 of 6"});
  const auto& holes = job.paper->parts[0].setups[0].drawn.circles;
  EXPECT_GE(namedCrosses(pages, holes), holes.size());
  for (const Page& page : pages) {
    EXPECT_TRUE(lengthsOn(page, false).count(101'600));
    EXPECT_TRUE(lengthsOn(page, true).count(101'600));
  }
}

TEST(JobPages, LongJobsGoOnWithTheirHeading) {
  RandomSheets random(11);
  for (int round = 0; round < 12; ++round) {
    MadeSheet made = random.next(random.between(0, 60));
    JobOnPaper paper{made.job, {}, made.options};
    const auto setup = setupInJob(made.job, made.part, made.solution, made.part.setups[0],
                                  made.table, made.options);
    ASSERT_TRUE(setup.ok());
    paper.parts.push_back({made.part, made.solution, {}, {}});
    paper.parts.back().setups.push_back(*setup);
    for (const auto& make : {coverPages, stockPages, toolPages, firstOffPages}) {
      const std::vector<Page> pages = make(paper);
      ASSERT_FALSE(pages.empty());
      for (const Page& page : pages) {
        for (const DrawItem& item : page.items) {
          const auto* text = std::get_if<TextItem>(&item);
          if (text == nullptr) continue;
          EXPECT_LE(boundsOf(*text).bottom, page.height - 6) << text->text;
          EXPECT_LE(boundsOf(*text).right, page.width - 6) << text->text;
        }
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
