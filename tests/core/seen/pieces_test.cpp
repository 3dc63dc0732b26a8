#include "core/seen/pieces.h"

#include <gtest/gtest.h>

#include <string>

namespace inchwright::seen {
namespace {

/// A picture in rows: `#` ink, `+` its soft edge, which is no ink.
Grey pictured(const std::vector<std::string>& rows) {
  Grey g(static_cast<int>(rows.front().size()), static_cast<int>(rows.size()));
  for (int y = 0; y < g.height; ++y) {
    for (int x = 0; x < g.width; ++x)
      g.row(y)[x] = rows[y][x] == '#' ? 255 : rows[y][x] == '+' ? 60 : 0;
  }
  return g;
}

std::vector<std::string> rowsIn(const Grey& g) {
  std::vector<std::string> rows;
  for (int y = 0; y < g.height; ++y) {
    rows.emplace_back();
    for (int x = 0; x < g.width; ++x)
      rows.back() += g.row(y)[x] == 255 ? '#' : g.row(y)[x] == 60 ? '+' : '.';
  }
  return rows;
}

using Rows = std::vector<std::string>;

// A neighbour that reaches into its box, and soft ink away from its own, are not of it.
TEST(Pieces, AreTheirOwnInkWithItsSoftEdge) {
  const Grey cut = pictured({"##+..###",  //
                             "##..####",  //
                             "##+.+###",  //
                             "##++....",  //
                             "##+.+++.",  //
                             "#######+",  //
                             "........"});
  const Pieces pieces = piecesOf(cut, 100, 200);
  ASSERT_EQ(pieces.glyphs.size(), 2U);
  EXPECT_EQ(pieces.glyphs[0].box, (Box{0, 0, 7, 6}));
  EXPECT_EQ(rowsIn(pieces.glyphs[0].ink),
            (Rows{"##+....", "##.....", "##+....", "##+....", "##+.+++", "#######"}));
  EXPECT_EQ(pieces.glyphs[1].box, (Box{4, 0, 4, 3}));
  EXPECT_EQ(rowsIn(pieces.glyphs[1].ink), (Rows{".###", "####", "+###"}));
}

TEST(Pieces, SpecksAreNone) {
  const auto count = [](const Rows& rows) {
    return piecesOf(pictured(rows), 100, 200).glyphs.size();
  };
  EXPECT_EQ(count({"....", ".##.", ".##.", "...."}), 1U);
  EXPECT_EQ(count({"....", ".##.", ".#..", "...."}), 0U) << "three pixels";
  EXPECT_EQ(piecesOf(pictured({"....", ".##.", ".##.", "...."}), 100, 250).glyphs.size(), 0U)
      << "less than a hundredth of an inch";
}

// Two figures that run into each other: cut where they are thinnest.
TEST(Pieces, WhatIsTooWideForAGlyphIsCutWhereItIsThinnest) {
  Grey cut(40, 30);
  for (int y = 5; y < 21; ++y) {
    for (int x = 4; x < 16; ++x) cut.row(y)[x] = 255;
    for (int x = 17; x < 30 && y > 6; ++x) cut.row(y)[x] = 255;
  }
  for (int y = 12; y < 14; ++y) cut.row(y)[16] = 255;
  const Pieces pieces = piecesOf(cut, 100, 200);
  ASSERT_EQ(pieces.glyphs.size(), 2U);
  EXPECT_EQ(pieces.glyphs[0].box, (Box{4, 5, 12, 16}));
  EXPECT_EQ(pieces.glyphs[1].box, (Box{16, 7, 14, 14}));
  // But no nearer to an end than three tenths: 26 wide, in its columns from 7 to 17.
  for (const auto& [at, isCut] :
       {std::pair(6, false), {7, true}, {17, true}, {18, false}, {2, false}, {24, false}}) {
    Grey thin = cut;
    thin.row(12)[4 + at] = thin.row(13)[4 + at] = 255;
    for (int y = 5; y < 21; ++y) {
      if (y != 12) thin.row(y)[4 + at] = 0;
    }
    const Pieces parts = piecesOf(thin, 100, 200);
    ASSERT_EQ(parts.glyphs.size(), 2U) << at;
    EXPECT_EQ(parts.glyphs[0].box.w, isCut ? at : 12) << at;
  }
  // As wide, and half as high again, it may be one.
  for (int y = 21; y < 27; ++y) std::fill_n(cut.row(y) + 4, 12, std::uint8_t{255});
  EXPECT_EQ(piecesOf(cut, 100, 200).glyphs.size(), 1U);
}

}  // namespace
}  // namespace inchwright::seen
