// What every page keeps to, whatever is on it: no text covers another or leaves the paper, no
// figure is smaller than the reading distance asks for, and nothing is left out.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "core/sheet/bounds.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

/// Printers leave about 5 mm blank at each edge; the sheet's own margin is wider.
constexpr double kLeastMargin = 6;
/// Rounding of sums of advances; far below what an eye sees.
constexpr double kSlack = 1e-6;

std::vector<const TextItem*> textsOn(const Page& page) {
  std::vector<const TextItem*> texts;
  for (const DrawItem& item : page.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text);
  }
  return texts;
}

void expectTextsApart(const Page& page) {
  const std::vector<const TextItem*> texts = textsOn(page);
  std::vector<PaperBox> boxes;
  for (const TextItem* text : texts) boxes.push_back(boundsOf(*text).grownBy(-kSlack));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t j = i + 1; j < boxes.size(); ++j) {
      if (!boxes[i].meets(boxes[j])) continue;
      ADD_FAILURE() << "\"" << texts[i]->text << "\" covers \"" << texts[j]->text << "\" at "
                    << texts[j]->at.x << ", " << texts[j]->at.y;
      return;
    }
  }
}

void expectTextsOnPaper(const Page& page) {
  const PaperBox paper{kLeastMargin, kLeastMargin, page.width - kLeastMargin,
                       page.height - kLeastMargin};
  for (const TextItem* text : textsOn(page)) {
    if (paper.holds(boundsOf(*text))) continue;
    ADD_FAILURE() << "\"" << text->text << "\" leaves the paper at " << text->at.x << ", "
                  << text->at.y;
    return;
  }
}

std::vector<const TextItem*> allTexts(const std::vector<Page>& pages) {
  std::vector<const TextItem*> texts;
  for (const Page& page : pages) {
    for (const TextItem* text : textsOn(page)) texts.push_back(text);
  }
  return texts;
}

bool saysSmaller(const std::vector<const TextItem*>& texts) {
  return std::any_of(texts.begin(), texts.end(), [](const TextItem* text) {
    return text->text.find("Figures smaller") != std::string::npos;
  });
}

/// Every coordinate stands on the sheet in its order, at its height.
void expectRows(const MadeSheet& made, const std::vector<Page>& pages) {
  const std::vector<const TextItem*> texts = allTexts(pages);
  const double height = 8 * made.options.readingDistance / 1000;
  if (saysSmaller(texts)) return;
  std::vector<std::string> figures;
  for (const TextItem* text : texts) {
    if (std::abs(text->height - height) < kSlack && text->text.size() > 1 &&
        (text->text[0] == '+' || text->text[0] == '-')) {
      figures.push_back(text->text);
    }
  }
  std::vector<std::string> wanted;
  for (const TableRow& row : made.table.rows) {
    if (!goesByCoordinates(*row.plan)) continue;
    wanted.push_back(signedText(row.x));
    wanted.push_back(signedText(row.y));
  }
  EXPECT_EQ(figures, wanted);
}

void expectRules(const MadeSheet& made) {
  const std::vector<Page> pages = made.pages();
  ASSERT_FALSE(pages.empty());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    SCOPED_TRACE("page " + std::to_string(i + 1) + " of " + std::to_string(pages.size()));
    expectTextsApart(pages[i]);
    expectTextsOnPaper(pages[i]);
  }
  expectRows(made, pages);
}

TEST(PageRules, HoldForThePlate) {
  expectRules(frontPlate());
}

TEST(PageRules, HoldForRandomSheets) {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    RandomSheets random(seed);
    expectRules(random.next(random.between(0, 60)));
    if (HasFailure()) return;
  }
}

TEST(PageRules, HoldForUpToTwoHundredRows) {
  for (const int rows : {1, 2, 3, 4, 5, 6, 7, 11, 40, 200}) {
    SCOPED_TRACE(std::to_string(rows) + " rows");
    RandomSheets random(static_cast<unsigned>(rows));
    expectRules(random.next(rows));
  }
}

TEST(PageRules, HoldAtTwoMetresOnBothPapers) {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    MadeSheet made = frontPlate();
    made.options.paper = paper;
    made.options.readingDistance = 2000;
    expectRules(made);
    EXPECT_FALSE(saysSmaller(allTexts(made.pages())));
  }
}

TEST(PageRules, FiguresTooLongForThePaperSaySo) {
  MadeSheet made = frontPlate();
  made.options.readingDistance = 3000;
  made.table.rows[0].x = inches(-1234567.125, made.table.step);
  const std::vector<Page> pages = made.pages();
  EXPECT_TRUE(saysSmaller(allTexts(pages)));
  EXPECT_FALSE(saysSmaller(allTexts(frontPlate().pages())));
  for (const Page& page : pages) expectTextsOnPaper(page);
}

TEST(PageRules, EveryPageNamesThePartTheUnitTheSheetAndItself) {
  RandomSheets random(7);
  MadeSheet made = random.next(70);
  made.part.name = "Plate";
  const std::vector<Page> pages = made.pages();
  ASSERT_GT(pages.size(), 2U);
  std::set<std::string> numbers;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    std::set<std::string> words;
    for (const TextItem* text : textsOn(pages[i])) words.insert(text->text);
    EXPECT_TRUE(words.count("Plate"));
    EXPECT_TRUE(words.count("INCHES") || words.count("MILLIMETRES"));
    EXPECT_TRUE(words.count(std::to_string(i + 1) + " of " + std::to_string(pages.size())));
  }
}

}  // namespace
}  // namespace inchwright
