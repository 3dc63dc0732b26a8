// Notes lettered by the pen, read by the nets that are built in.

#include <gtest/gtest.h>

#include "core/seen/lettering.h"
#include "core/seen/net.h"
#include "core/seen/notes.h"
#include "tests/core/seen/letterer.h"

namespace inchwright::seen {
namespace {

constexpr double kOfRows = 200;  // the sheet's inch, pixels; capitals are 24 high

std::vector<NoteRow> noteRowsIn(const Letterer& pen) {
  return noteRows(letteringOf(pen.cover, kOfRows, {}, Stop()), kOfRows, Unit::inch,
                  builtInNets().glyphs);
}

/// What a row says: its word, the likeliest figure and the count.
std::string rowText(const NoteRow& row) {
  const auto best = std::max_element(
      row.figures.begin(), row.figures.end(),
      [](const FigureRead& a, const FigureRead& b) { return a.mean() < b.mean(); });
  const std::string figure = best == row.figures.end() || best->mean() < -1 ? "" : " " + best->text;
  return row.word + figure + (row.count > 0 ? " of " + std::to_string(row.count) : "");
}

TEST(NoteRows, AWordIsReadWithTheFigureBeforeOrBehindIt) {
  const std::pair<const char*, std::vector<std::string>> cases[] = {
      {"q DRILL", {"DRILL 1/4"}}, {"DRILL q", {"DRILL 1/4"}},
      {"REAM q", {"REAM 1/4"}},   {"q DIA", {"DIA 1/4"}},
      {"q TAP", {"TAP 1/4"}},     {"q RAD", {"RAD 1/4"}},
      {"q DEEP", {"DEEP 1/4"}},   {"q PCD", {"PCD 1/4"}},
      {"ON q PCD", {"PCD 1/4"}},  {"4 HOLES", {"HOLES 4"}},
      {"4 PLACES", {"PLACES 4"}}, {"q DRILL 4 HOLES", {"DRILL 1/4 of 4", "HOLES"}},
      {"q MILLED", {}},           {"TILT q", {}},
  };
  for (const auto& [text, wanted] : cases) {
    Letterer pen(800, 260);
    pen.text(text, 60, 60);
    std::vector<std::string> rows;
    for (const NoteRow& row : noteRowsIn(pen)) rows.push_back(rowText(row));
    EXPECT_EQ(rows, wanted) << text;
  }
}

TEST(NoteRows, RowsOfOneBlockAreReadByThemselves) {
  Letterer pen(800, 260);
  pen.text("q DRILL", 60, 60);
  pen.text("4 HOLES", 70, 115);
  const auto rows = noteRowsIn(pen);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rowText(rows[0]), "DRILL 1/4");
  EXPECT_EQ(rowText(rows[1]), "HOLES 4");
  // A pen's half breadth round what is lettered.
  EXPECT_NEAR(rows[1].box.x, 70, 3);
  EXPECT_NEAR(rows[1].box.y, 115, 3);
  EXPECT_NEAR(rows[1].box.bottom(), 115 + 24, 3);
  EXPECT_NEAR(rows[1].box.right(), 70 + 21 + 6 + 4 * 21 + 14, 4);
  EXPECT_NEAR(rows[0].box.x, 60, 3);
  EXPECT_NEAR(rows[0].box.y, 60 - 8, 3);
}

}  // namespace
}  // namespace inchwright::seen
