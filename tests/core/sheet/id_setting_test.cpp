// Names at the left of a row: big where they fit, small in up to three lines, else among the words.
#include "core/sheet/id_setting.h"

#include <gtest/gtest.h>

#include "core/sheet/text_measure.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

TEST(IdSetting, TakesWhatTheNameNeeds) {
  constexpr double kHeight = 8, kBaseline = 10, kWidth = 25;
  struct Case {
    const char* id;
    std::size_t lines;
    double height;
    bool named;
  };
  for (const Case& one : {
           Case{"A", 1, kHeight, true},
           Case{"Q1g", 1, kHeight, true},
           // Small letters are 0.45 of the big ones, an ellipsis 0.6.
           Case{"pallet", 1, kHeight * 0.45, true},
           Case{"pallet arbor", 2, kHeight * 0.45, true},
           Case{"pallet arbor hole left", 3, kHeight * 0.45, true},
           Case{"pallet arbor hole left behind it", 1, kHeight * 0.6, false},
       }) {
    Piece piece;
    piece.height = 2;
    const IdExtent extent = idExtent(one.id, kBaseline, kWidth, kHeight);
    EXPECT_EQ(setId(piece, one.id, 3, kBaseline, kWidth, kHeight), one.named) << one.id;
    EXPECT_EQ(extent.named, one.named) << one.id;
    EXPECT_EQ(piece.height, extent.height) << "as it was measured";
    const std::vector<TextItem> texts = textsOf(piece.sketch);
    ASSERT_EQ(texts.size(), one.lines) << one.id;
    std::string all;
    for (const TextItem& text : texts) {
      const PaperBox box = boundsOf(text);
      EXPECT_DOUBLE_EQ(text.height, one.height) << one.id;
      EXPECT_GE(box.left, 3) << one.id;
      EXPECT_LE(box.right, 3 + kWidth + kRounding) << one.id;
      EXPECT_LE(box.bottom, piece.height) << one.id;
      all += (all.empty() ? "" : " ") + text.text;
    }
    EXPECT_EQ(all, one.named ? one.id : "\u2026");
    const bool isBig = one.height == kHeight;
    EXPECT_EQ(texts[0].at.y == kBaseline, isBig || !one.named) << one.id;
  }
}

// A row is as high as before where its figures are higher than its name.
TEST(IdSetting, NeverMakesAPieceLower) {
  for (const char* id : {"A", "pallet arbor hole", "pallet arbor hole left behind it"}) {
    Piece piece;
    piece.height = 90;
    (void)setId(piece, id, 0, 10, 25, 8);
    EXPECT_EQ(piece.height, 90) << id;
  }
}

}  // namespace
}  // namespace inchwright
