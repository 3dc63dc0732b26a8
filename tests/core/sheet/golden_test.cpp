// Pages held by their draw list as text. To renew them after a wanted change, run this test with
// INCHWRIGHT_RENEW_GOLDEN=1, look at the pages old and new, and commit them on their own.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

void expectGolden(const std::string& name, const MadeSheet& made) {
  const std::string path = std::string(INCHWRIGHT_SOURCE_DIR) + "/tests/golden/" + name + ".txt";
  const std::string text = drawListText(made.pages());
  if (std::getenv("INCHWRIGHT_RENEW_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << text;
    return;
  }
  std::ifstream file(path, std::ios::binary);
  ASSERT_TRUE(file) << path << " is missing: run with INCHWRIGHT_RENEW_GOLDEN=1";
  std::ostringstream kept;
  kept << file.rdbuf();
  std::istringstream was(kept.str());
  std::istringstream is(text);
  std::string oldLine;
  std::string newLine;
  for (int line = 1; std::getline(was, oldLine); ++line) {
    std::getline(is, newLine);
    ASSERT_EQ(newLine, oldLine) << path << ":" << line;
  }
  EXPECT_EQ(text, kept.str());
}

TEST(Golden, DraftPlate) {
  expectGolden("plate_draft", frontPlate());
}

TEST(Golden, SettledPlateOnLetter) {
  expectGolden("plate_letter", settledPlate(Paper::letter));
}

TEST(Golden, PlateInMillimetres) {
  expectGolden("plate_mm", inMillimetres(frontPlate()));
}

TEST(Golden, PlateReadFromTwoMetres) {
  MadeSheet made = settledPlate(Paper::a4);
  made.options.readingDistance = 2000;
  made.options.directChecks = {"A to C: 2.500, within 0.001"};
  expectGolden("plate_two_metres", made);
}

TEST(DrawListText, WritesEachKindOfItem) {
  Page page{100, 50, {}};
  page.items.push_back(PolylineItem{{{0, 0}, {1.004, -0.001}}, false, {Ink::black, 0.5, {2, 1}}});
  PolylineItem shape{{{1, 1}, {2, 1}, {2, 2}}, true, {}, false, true, Ink::pale};
  page.items.push_back(shape);
  page.items.push_back(CircleItem{{3, 4}, 2, 90, 180, {Ink::red, 0.25, {}}});
  page.items.push_back(
      TextItem{{5, 6}, "A | 1", 8, TextAlign::right, Typeface::bold, Ink::white, 90});
  EXPECT_EQ(drawListText({page}),
            "page 1 100.00 x 50.00\n"
            "line 0.00,0.00 1.00,0.00 stroke 0.50 black 2.00 1.00\n"
            "shape 1.00,1.00 2.00,1.00 2.00,2.00 fill pale\n"
            "circle 3.00,4.00 radius 2.00 from 90.00 by 180.00 stroke 0.25 red\n"
            "text 5.00,6.00 8.00 bold right white turn 90.00 | A | 1\n");
}

}  // namespace
}  // namespace inchwright
