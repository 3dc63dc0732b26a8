#include "app/session/held_text.h"

#include <gtest/gtest.h>

namespace inchwright::app {
namespace {

std::string read(const char* text, const std::vector<StockPiece>& before = {}) {
  const auto pieces = readPieces(QString::fromUtf8(text), before, Unit::inch);
  return pieces.ok() ? piecesText(*pieces).toStdString() : pieces.error().text;
}

TEST(HeldText, PiecesAreReadAsTheyAreWritten) {
  for (const char* text : {"", "1 x 4 1/32 y 1.520; 2 x 4.010", "short one z .250",
                           "a x 101,6 mm; b x 4 y 1 1/2 z 1/4"}) {
    EXPECT_EQ(read(text), text);
  }
  EXPECT_EQ(read(" 1   x  4 ;; 2 X 5; "), "1 x 4; 2 x 5");
  const auto pieces = readPieces(QStringLiteral("1 y 1 1/2"), {}, Unit::inch);
  ASSERT_TRUE(pieces.ok());
  EXPECT_FALSE((*pieces)[0].size[0]);
  EXPECT_EQ((*pieces)[0].size[1]->value, Length::ticks(Length::kTicksPerInch * 3 / 2));
}

TEST(HeldText, WhatIsNoPieceIsRefused) {
  EXPECT_EQ(read("4.031"), "“4.031” is no piece: say such as 1 x 4.031 y 1.520");
  EXPECT_EQ(read("1 x 4; 1 x 5"), "“1 x 5” is no piece: say such as 1 x 4.031 y 1.520");
  EXPECT_EQ(read("1 x 4 x 5").substr(0, 5), "“1 ");
  EXPECT_NE(read("1 x 4//2"), "1 x 4//2");
  EXPECT_NE(read("1 x"), "1 x");
}

TEST(HeldText, WhatIsNotChangedOfAPieceKeepsAllItHas) {
  StockPiece piece;
  piece.name = "1";
  piece.size[0] = *readLength("4");
  piece.extra = {{"from", "\"the long bar\""}};
  const auto same = readPieces(QStringLiteral("1 x 4; 2 x 3"), {piece}, Unit::inch);
  ASSERT_TRUE(same.ok());
  EXPECT_EQ((*same)[0], piece);
  EXPECT_EQ((*same)[1].name, "2");
}

}  // namespace
}  // namespace inchwright::app
