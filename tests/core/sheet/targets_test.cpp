// What can be pointed at on a sheet, and the English it is in.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

std::string textOf(const std::vector<Page>& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + "\n";
    }
  }
  return all;
}

TEST(SheetTargets, EveryHoleIsWhereItIsDrawn) {
  const MadeSheet made = frontPlate();
  const std::vector<Page> pages = made.pages();
  std::set<std::string> holes;
  for (const Page& page : pages) {
    for (const PaperTarget& target : page.targets) {
      EXPECT_GE(target.from.x, 0) << target.place;
      EXPECT_LE(target.to.x, page.width) << target.place;
      EXPECT_LE(target.to.y, page.height) << target.place;
      if (target.radius <= 0) continue;
      EXPECT_EQ(target.kind, TargetKind::pictured);
      holes.insert(target.place);
      const bool drawn = std::any_of(page.items.begin(), page.items.end(), [&](const auto& item) {
        const auto* circle = std::get_if<CircleItem>(&item);
        return circle != nullptr && std::abs(circle->centre.x - target.from.x) < 1e-9 &&
               std::abs(circle->centre.y - target.from.y) < 1e-9;
      });
      EXPECT_TRUE(drawn) << target.place;
    }
  }
  std::set<std::string> pictured;
  for (const DrawnHole& hole : made.picture.circles) pictured.insert(hole.id);
  EXPECT_FALSE(pictured.empty());
  EXPECT_EQ(holes, pictured);
}

TEST(SheetTargets, EdgesComeBeforeTheHolesThatLieOnThem) {
  for (const Page& page : frontPlate().pages()) {
    bool hole = false;
    for (const PaperTarget& target : page.targets) {
      if (target.kind != TargetKind::pictured) continue;
      EXPECT_FALSE(hole && target.radius <= 0) << target.place;
      hole = hole || target.radius > 0;
    }
  }
}

TEST(SheetTargets, EveryRowAndItsTwoCoordinatesCanBePointedAt) {
  const MadeSheet made = frontPlate();
  std::map<std::string, std::vector<PaperTarget>> found;
  for (const Page& page : made.pages()) {
    for (const PaperTarget& target : page.targets) {
      if (target.kind == TargetKind::pictured) continue;
      found[target.place].push_back(target);
      EXPECT_LT(target.from.x, target.to.x) << target.place;
      EXPECT_LT(target.from.y, target.to.y) << target.place;
      EXPECT_LE(target.to.x, page.width) << target.place;
    }
  }
  ASSERT_FALSE(made.table.rows.empty());
  for (const TableRow& row : made.table.rows) {
    const auto& targets = found[row.id];
    ASSERT_EQ(targets.size(), 3u) << row.id;
    EXPECT_EQ(targets[0].kind, TargetKind::row);
    EXPECT_EQ(targets[1].kind, TargetKind::figureX);
    EXPECT_EQ(targets[2].kind, TargetKind::figureY);
    for (const std::size_t figure : {1u, 2u}) {
      // Within their row.
      EXPECT_GE(targets[figure].from.x, targets[0].from.x) << row.id;
      EXPECT_LE(targets[figure].to.x, targets[0].to.x) << row.id;
      EXPECT_GE(targets[figure].from.y, targets[0].from.y) << row.id;
      EXPECT_LE(targets[figure].to.y, targets[0].to.y) << row.id;
    }
    EXPECT_LE(targets[1].to.x, targets[2].from.x) << row.id;
  }
}

TEST(SheetTargets, NothingIsPicturedWithoutAPicture) {
  const MadeSheet made = frontPlate();
  for (const Page& page :
       Composition({made.job, made.part, made.solution, made.table, nullptr, made.options})
           .pages()) {
    for (const PaperTarget& target : page.targets) {
      EXPECT_NE(target.kind, TargetKind::pictured) << target.place;
    }
  }
}

TEST(SheetEnglish, OwnWordsAreAmericanAndTheUsersStayAsTheyAre) {
  MadeSheet made = frontPlate();
  made.part.name = "Centre plate";
  made.part.material = "grey iron";
  made.part.setups[0].turn = 90;
  made.part.setups[0].zero[0] = {};
  made.part.setups[0].zero[0].at = "C";
  made.part.setups[0].zero[0].offset = lettered("-1/4");
  made.plan({Unit::millimetre, "0.01"});
  const auto say = [&] {
    return textOf(tapeUpSheet(made.job, made.part, made.solution, made.table, made.options));
  };
  const std::string uk = say();
  made.options.english = English::us;
  const std::string us = say();
  for (const char* word : {"anticlockwise", "MILLIMETRES", "towards"}) {
    EXPECT_NE(uk.find(word), std::string::npos) << word;
    EXPECT_EQ(us.find(word), std::string::npos) << word;
  }
  for (const char* word :
       {"counterclockwise", "MILLIMETERS", "toward you", "Centre plate", "grey iron"}) {
    EXPECT_NE(us.find(word), std::string::npos) << word;
  }
}

}  // namespace
}  // namespace inchwright
