// Parallels, jaws and clamps in the picture of the setup, and what was found before cutting.
#include <gtest/gtest.h>

#include "core/sheet/bounds.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

LaidParallel parallel(const char* gap) {
  LaidParallel one;
  one.thick = lettered("1/8");
  one.tall = lettered("1");
  one.gap = lettered(gap);
  return one;
}

MadeSheet held(const char* gap) {
  MadeSheet made = settledPlate(Paper::a4);
  made.part.setups.front().held.parallels = {parallel(gap)};
  made.plan();
  return made;
}

std::vector<std::string> textsOn(const std::vector<Page>& pages) {
  std::vector<std::string> texts;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text->text);
    }
  }
  return texts;
}

bool says(const std::vector<Page>& pages, std::string_view words) {
  std::string all;
  for (const std::string& text : textsOn(pages)) all += text + " ";
  return all.find(words) != std::string::npos;
}

std::vector<PaperTarget> targetsOf(TargetKind kind, const std::vector<Page>& pages) {
  std::vector<PaperTarget> some;
  for (const PaperTarget& target : pages.front().targets) {
    if (target.kind == kind) some.push_back(target);
  }
  return some;
}

TEST(HeldSheet, NamesEachParallelAndWhatItIsMetBy) {
  // The row D and E lies 2 1/8 from the front: 5/8 from the back, where the fixed jaw is.
  const std::vector<Page> met = held("9/16").pages();
  EXPECT_TRUE(says(met, "PARALLEL 1"));
  EXPECT_TRUE(says(met, "runs into the parallel at the fixed jaw")) << drawListText(met);
  EXPECT_TRUE(says(met, "A triangle: see MIND."));
  const std::vector<Page> clear = held("0").pages();
  EXPECT_FALSE(says(clear, "runs into the parallel"));
  EXPECT_FALSE(says(clear, "A triangle"));
}

TEST(HeldSheet, AParallelCanBeTakenHoldOfWhereItIsDrawn) {
  const std::vector<PaperTarget> one = targetsOf(TargetKind::parallel, held("1/4").pages());
  ASSERT_EQ(one.size(), 1u);
  EXPECT_EQ(one[0].which, 0u);
  EXPECT_EQ(one[0].away.x, 0);
  EXPECT_GT(one[0].away.y, 0);  // away from the far jaw is down the paper
  // As thick on paper as 1/8 in at that scale.
  EXPECT_NEAR(one[0].to.y - one[0].from.y, 3.175 * one[0].away.y, 1e-6);
  EXPECT_EQ(targetsOf(TargetKind::fixedJaw, held("1/4").pages()).size(), 1u);
  const std::vector<PaperTarget> moved = targetsOf(TargetKind::parallel, held("1/2").pages());
  EXPECT_NEAR(moved[0].from.y - one[0].from.y, 6.35 * one[0].away.y, 1e-6);
}

TEST(HeldSheet, AHoleThatIsSpottedThroughItsMateHasABoxInPlaceOfFigures) {
  MadeSheet made = settledPlate(Paper::a4);
  for (Feature& feature : made.part.features) {
    if (feature.id != "D") continue;
    feature.drilled()->locate = Locate::mate;
    feature.drilled()->mate = PartPlace{"Back plate", "D", {}};
  }
  made.plan();
  const std::vector<Page> pages = made.pages();
  EXPECT_TRUE(says(pages, "NOT BY COORDINATES"));
  const std::vector<std::string> texts = textsOn(pages);
  for (const TableRow& row : made.table.rows) {
    const auto large = std::find(texts.begin(), texts.end(), signedText(row.x));
    EXPECT_EQ(large == texts.end(), row.id == "D" && !goesByCoordinates(*row.plan)) << row.id;
  }
  // What is said stands in a box of its own.
  const auto isSaid = [](const DrawItem& item) {
    const auto* text = std::get_if<TextItem>(&item);
    return text && (text->text == "NOT BY COORDINATES" || text->text.starts_with("(about X "));
  };
  int boxes = 0;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      const auto* box = std::get_if<PolylineItem>(&item);
      if (!box || box->points.size() != 4 || !box->closed) continue;
      PlanePoint low = box->points[0], high = low;
      for (const PlanePoint p : box->points) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
      }
      const auto within =
          std::count_if(page.items.begin(), page.items.end(), [&](const DrawItem& other) {
            if (!isSaid(other)) return false;
            const PlanePoint at = std::get<TextItem>(other).at;
            return low.x < at.x && at.x < high.x && low.y < at.y && at.y < high.y;
          });
      boxes += within == 2 && high.y - low.y < 25 ? 1 : 0;
    }
  }
  EXPECT_EQ(boxes, 1);
}

TEST(HeldSheet, AnotherEditionWhereAParallelMoved) {
  const auto number = [](MadeSheet made) {
    SheetContent content{made.job,   made.part,     made.solution,
                         made.table, &made.picture, made.options};
    content.held = &made.held;
    return Composition(std::move(content)).number();
  };
  EXPECT_EQ(number(held("1/4")), number(held("1/4")));
  EXPECT_NE(number(held("1/4")), number(held("1/2")));
}

}  // namespace
}  // namespace inchwright
