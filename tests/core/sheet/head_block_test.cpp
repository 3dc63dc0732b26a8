// The head of a page: which part, which unit, which print, which page; and whether to trust it.
#include "core/sheet/head_block.h"

#include <gtest/gtest.h>

#include <map>

#include "core/sheet/text_measure.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

constexpr double kHeadWidth = 122;

Piece headOf(const MadeSheet& made, double width = kHeadWidth, std::size_t page = 1,
             std::size_t pages = 1) {
  return headPiece(contentOf(made), width, page, pages);
}

/// The value below each label: what stands at the label's left, next below it.
std::map<std::string, std::string> cellsIn(const Piece& head, const MadeSheet& made) {
  const Style style(made.options.readingDistance);
  const std::vector<TextItem> texts = textsOf(head.sketch);
  std::map<std::string, std::string> cells;
  for (const TextItem& label : texts) {
    if (label.height != style.cell()) continue;
    const TextItem* value = nullptr;
    for (const TextItem& one : texts) {
      if (one.at.x != label.at.x || one.at.y <= label.at.y) continue;
      if (!value || one.at.y < value->at.y) value = &one;
    }
    cells[label.text] = value && value->at.y < label.at.y + 6 * style.hand ? value->text : "";
  }
  return cells;
}

TEST(HeadBlock, EachValueStandsBelowItsOwnLabel) {
  const MadeSheet made = settledPlate(Paper::a4);
  for (const double width : {88.0, 122.0, 191.0}) {
    auto cells = cellsIn(headOf(made, width, 2, 13), made);
    EXPECT_EQ(cells["PRINT"], "sheet 2, second edition");
    EXPECT_EQ(cells["JOB"], "Clock plates");
    EXPECT_EQ(cells["PAGE"], "2 of 13");
    EXPECT_EQ(cells["DATE"], "2026-11-25");
    EXPECT_EQ(cells["SHEET"], contentOf(made).number);
    EXPECT_EQ(cells.size(), 6u);
  }
}

// Two values on a line are never read as one.
TEST(HeadBlock, ValuesOnALineStandApart) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  for (const double width : {88.0, 122.0, 191.0}) {
    std::vector<TextItem> values;
    for (const TextItem& text : textsOf(headOf(made, width).sketch)) {
      if (text.height == content.style.body() && text.face == Typeface::bold)
        values.push_back(text);
    }
    ASSERT_GE(values.size(), 5u);
    for (std::size_t i = 1; i < values.size(); ++i) {
      if (values[i].at.y != values[i - 1].at.y) continue;
      EXPECT_GT(boundsOf(values[i]).left, boundsOf(values[i - 1]).right + 3) << values[i].text;
    }
  }
}

// A date that nobody gave stays blank, and takes none of its neighbours' place.
TEST(HeadBlock, ABlankDateLeavesTheOthersWhereTheyAre) {
  MadeSheet made = settledPlate(Paper::a4);
  made.options.date.clear();
  auto cells = cellsIn(headOf(made), made);
  EXPECT_EQ(cells.count("DATE"), 1u);
  EXPECT_EQ(cells["DATE"], "");
  EXPECT_EQ(cells["PAGE"], "1 of 1");
  EXPECT_EQ(cells["SHEET"], contentOf(made).number);
}

// However long job and print are called, nothing in the head covers another or runs out of it.
TEST(HeadBlock, NothingCoversAnotherHoweverLongTheNames) {
  for (const bool settled : {true, false}) {
    MadeSheet made = solvedPlate(settled);
    for (std::size_t length = 1; length < 90; length += 4) {
      made.job.title = std::string(length, 'm');
      made.job.print = std::string(90 - length, 'n');
      made.part.name = "Plate " + std::string(length, 'w');
      for (const double width : {88.0, 191.0}) {
        SCOPED_TRACE(std::to_string(length) + " in " + std::to_string(width));
        const Piece head = headOf(made, width, 10, 12);
        const std::vector<TextItem> texts = textsOf(head.sketch);
        for (std::size_t i = 0; i < texts.size(); ++i) {
          const PaperBox box = boundsOf(texts[i]).grownBy(-kRounding);
          EXPECT_LE(box.right, width) << texts[i].text;
          EXPECT_LE(box.bottom, head.height) << texts[i].text;
          for (std::size_t j = 0; j < i; ++j) {
            EXPECT_FALSE(box.meets(boundsOf(texts[j])))
                << texts[i].text << " over " << texts[j].text;
          }
        }
        if (HasFailure()) return;
      }
    }
  }
}

/// The closed outline without a filling: the frame of the stamp.
std::vector<PaperBox> framesIn(const Piece& head) {
  std::vector<PaperBox> frames;
  for (const DrawItem& item : head.sketch.items()) {
    const auto* shape = std::get_if<PolylineItem>(&item);
    if (shape && shape->closed && !shape->filled) frames.push_back(boundsOf(item));
  }
  return frames;
}

// The stamp is as high as the name is on that page at most, whole in its frame, and the frame is
// clear of the unit's bar.
TEST(HeadBlock, TheStampStandsInItsFrame) {
  const MadeSheet made = frontPlate();
  double last = 99;
  for (const std::size_t page : {1u, 2u}) {
    const Piece head = headOf(made, kHeadWidth, page, 2);
    const std::vector<PaperBox> frames = framesIn(head);
    ASSERT_EQ(frames.size(), 1u);
    const std::vector<TextItem> texts = textsOf(head.sketch);
    const auto stamp = std::find_if(texts.begin(), texts.end(),
                                    [](const TextItem& text) { return text.text == "DRAFT"; });
    ASSERT_NE(stamp, texts.end());
    const PaperBox letters = boundsOf(*stamp);
    EXPECT_GT(letters.left, frames[0].left);
    EXPECT_LT(letters.right, frames[0].right);
    EXPECT_LE(frames[0].right, kHeadWidth + kRounding);
    EXPECT_NEAR((letters.left + letters.right) / 2, (frames[0].left + frames[0].right) / 2, 0.1);
    for (const TextItem& text : texts) {
      EXPECT_EQ(boundsOf(text).meets(frames[0]), text.text == "DRAFT") << text.text;
      EXPECT_TRUE(text.ink != Ink::white || boundsOf(text).top > frames[0].bottom) << text.text;
    }
    EXPECT_LT(stamp->height, last) << "smaller behind the first page";
    last = stamp->height;
  }
  EXPECT_TRUE(framesIn(headOf(settledPlate(Paper::a4))).empty());
}

/// White on black: what the bar says.
std::string barSaid(const Piece& head) {
  std::string said;
  for (const TextItem& text : textsOf(head.sketch)) {
    if (text.ink == Ink::white) said += (said.empty() ? "" : " | ") + text.text;
  }
  return said;
}

TEST(HeadBlock, TheBarSaysUnitAndStep) {
  MadeSheet made = settledPlate(Paper::a4);
  EXPECT_EQ(barSaid(headOf(made)), "INCHES | step 0.0005");
  made.plan({Unit::inch, "0.0002"});
  EXPECT_EQ(barSaid(headOf(made)), "INCHES | step 0.0002");
  made = inMillimetres(made);
  EXPECT_EQ(barSaid(headOf(made)), "MILLIMETRES | step 0.005");
  made.options.english = English::us;
  EXPECT_EQ(barSaid(headOf(made)), "MILLIMETERS | step 0.005");
}

// Where the bar is too narrow for both, the step goes below the unit, and the bar with it.
TEST(HeadBlock, ANarrowBarTakesTwoLines) {
  const MadeSheet made = inMillimetres(settledPlate(Paper::a4));
  bool inOne = false, inTwo = false;
  for (double width = 88; width <= 191; ++width) {
    const Piece head = headOf(made, width);
    PaperBox bar{};
    for (const DrawItem& item : head.sketch.items()) {
      const auto* shape = std::get_if<PolylineItem>(&item);
      if (shape && shape->filled) bar = boundsOf(item);
    }
    EXPECT_NEAR(bar.width(), width, kRounding);
    std::vector<TextItem> white;
    for (const TextItem& text : textsOf(head.sketch)) {
      if (text.ink == Ink::white) white.push_back(text);
    }
    ASSERT_EQ(white.size(), 2u);
    for (const TextItem& text : white) EXPECT_TRUE(bar.holds(boundsOf(text))) << width;
    EXPECT_FALSE(boundsOf(white[0]).meets(boundsOf(white[1]))) << width;
    const bool two = white[1].at.y > white[0].at.y;
    (two ? inTwo : inOne) = true;
  }
  EXPECT_TRUE(inOne && inTwo);
}

std::string setupSaid(const MadeSheet& made) {
  const std::string all = saidIn({headOf(made, 2000)});
  const std::size_t from = all.find("SETUP");
  return all.substr(from, all.find(" PRINT") - from);
}

TEST(HeadBlock, SaysHowThePartLiesAndHowManyToMake) {
  MadeSheet made = settledPlate(Paper::a4);
  EXPECT_EQ(setupSaid(made), "SETUP 1 top face up, not turned · make two in brass · left hand");
  made.part.hand.clear();
  made.part.material.clear();
  for (const auto& [count, words] : {std::pair{1, "one"}, {12, "twelve"}, {13, "13"}}) {
    made.part.quantity = count;
    EXPECT_EQ(setupSaid(made), std::string("SETUP 1 top face up, not turned · make ") + words);
  }
  made.part.setups[0].turn = 90;
  made.part.setups[0].name = "2b";
  made.plan();
  EXPECT_EQ(setupSaid(made), "SETUP 2b top face up, turned 90° anticlockwise · make 13");
  made.options.english = English::us;
  EXPECT_EQ(setupSaid(made), "SETUP 2b top face up, turned 90° counterclockwise · make 13");
}

// An earlier sheet on the bench is told from this one by the number at the foot, the head's own.
TEST(FootBlock, NamesTheSheetThatReplacesOthers) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  for (const double width : {191.0, 278.0}) {
    const Piece foot = footPiece(content, width);
    const std::string said = saidIn({foot});
    EXPECT_NE(said.find("Sheet " + content.number + " replaces every earlier one"),
              std::string::npos)
        << said;
    for (const TextItem& text : textsOf(foot.sketch)) {
      EXPECT_LE(boundsOf(text).right, width);
      EXPECT_LE(boundsOf(text).bottom, foot.height + 0.3);
      EXPECT_GE(text.height, 2.1) << "small, but to be read with the sheet in hand";
    }
  }
}

}  // namespace
}  // namespace inchwright
