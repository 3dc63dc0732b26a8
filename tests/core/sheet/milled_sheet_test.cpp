// Slots and pockets on the sheet: every run is driven to, so its figures are as large as those.
#include "tests/core/sheet/milled_sheet.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/sheet/bounds.h"
#include "core/sheet/style.h"

namespace inchwright::test {
namespace {

std::vector<const TextItem*> textsOn(const std::vector<Page>& pages) {
  std::vector<const TextItem*> all;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) all.push_back(text);
    }
  }
  return all;
}

std::size_t countOf(const std::vector<const TextItem*>& all, const std::string& text,
                    double least = 0) {
  return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const TextItem* one) {
    return one->text == text && one->height >= least;
  }));
}

// Worked by hand: a pocket from 1 to 2 1/2 along X and from 1 to 2 along Y, with rounds of 1/4 in
// its corners, cut by
// 1/2: the centre goes round from 1 1/4 to 2 1/4 and from 1 1/4 to 1 3/4.
TEST(MilledSheet, RunsStandInLargeFigures) {
  MilledPlate plate;
  plate.pocket("1", "1 1/2", "1", "1", "1/4", "1/4");
  plate.job.shop.cutters = {MilledPlate::cutter("1/2")};
  const MadeSheet made = sheetOf(plate);
  ASSERT_EQ(made.table.milled.size(), 1u);
  const MilledCut& cut = made.table.milled[0];
  ASSERT_GT(cut.runs.size(), 8u);
  const std::vector<Page> pages = made.pages();
  const auto all = textsOn(pages);
  const double large = Style(1000).second();
  std::size_t figures = 0;
  for (const CutterRun& run : cut.runs) {
    for (const Coordinate* at : {&run.from.x, &run.from.y}) {
      EXPECT_GE(countOf(all, signedText(*at), large), 1u) << at->text;
    }
    figures += 3;
  }
  EXPECT_GE(countOf(all, "to"), cut.runs.size());
  EXPECT_GE(static_cast<std::size_t>(std::count_if(
                all.begin(), all.end(), [&](const TextItem* one) { return one->height >= large; })),
            figures);
  EXPECT_GE(countOf(all, "+1.2500", large), 4u);
  EXPECT_EQ(countOf(all, "round, to size"), 4u);
  EXPECT_EQ(countOf(all, "drill " + cut.drill + " here first"), cut.drillFirst ? 1u : 0u);
}

TEST(MilledSheet, EachRunHasABoxForEachDepthUpToFour) {
  MilledPlate plate;
  plate.pocket("1", "1 1/2", "1", "1", "1/4", "1/4");
  plate.job.shop.cutters = {MilledPlate::cutter("1/2")};
  MadeSheet made = sheetOf(plate);
  MilledCut& cut = made.table.milled.at(0);
  const auto boxesWith = [&](std::size_t depths) {
    cut.passes.assign(depths, cut.passes.front());
    std::ptrdiff_t boxes = 0;
    for (const Page& page : made.pages()) {
      boxes += std::count_if(page.items.begin(), page.items.end(), [](const DrawItem& item) {
        const auto* box = std::get_if<PolylineItem>(&item);
        return box != nullptr && box->closed && box->points.size() == 4 &&
               box->points[2].x - box->points[0].x < 5;
      });
    }
    return boxes;
  };
  const std::ptrdiff_t one = boxesWith(1), runs = std::ssize(cut.runs);
  for (const int depths : {2, 3, 4}) {
    EXPECT_EQ(boxesWith(static_cast<std::size_t>(depths)) - one, (depths - 1) * runs) << depths;
  }
  EXPECT_EQ(boxesWith(5), one) << "one for all of them";
}

TEST(MilledSheet, StaysOnThePaperFromAnyDistance) {
  for (const double distance : {300.0, 1000.0, 2000.0, 3000.0}) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      MilledPlate plate;
      plate.pocket("1", "1 1/2", "1", "1", "1/4", "1/4");
      plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/2", "3/16");
      MadeSheet made = sheetOf(plate, distance);
      made.options.paper = paper;
      const std::vector<Page> pages = made.pages();
      for (const Page& page : pages) {
        const PaperBox sheet{4, 4, page.width - 4, page.height - 4};
        for (const DrawItem& item : page.items) {
          const PaperBox box = boundsOf(item);
          EXPECT_TRUE(sheet.holds(box)) << distance << ": " << box.left << " " << box.top << " "
                                        << box.right << " " << box.bottom;
        }
      }
    }
  }
}

}  // namespace
}  // namespace inchwright::test
