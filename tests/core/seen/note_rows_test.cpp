// Notes lettered by the pen, read by the nets that are built in.

#include <gtest/gtest.h>

#include <map>

#include "core/seen/notes.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfRows = 200;  // the sheet's inch, pixels; capitals are 24 high

/// Letters of plain strokes on a field 10 wide and 16 high; `q` is a stacked 1/4.
class Letterer : public Pen {
 public:
  Letterer() : Pen(800, 260) {}

  void text(const std::string& text, double x, double y) {
    for (const char c : text) {
      if (c == 'q') {
        letter('1', x, y - 8, 1.1);
        letter('4', x, y + 18, 1.1);
        line(x - 2, y + 14, x + 15, y + 14, 3);
        x += 18;
      } else {
        if (c != ' ') letter(c, x, y, 1.5);
        x += c == ' ' ? 6 : c == 'I' || c == '1' ? 18 : 21;
      }
    }
  }
  std::vector<NoteRow> rows() const {
    return noteRows(letteringOf(cover, kOfRows, {}, Stop()), kOfRows, Unit::inch,
                    builtInNets().glyphs);
  }

 private:
  using Line = std::vector<std::pair<double, double>>;

  void letter(char c, double x, double y, double size) {
    static const std::map<char, std::vector<Line>> kLetters{
        {'D', {{{0, 0}, {0, 16}, {5, 16}, {8, 14}, {10, 11}, {10, 5}, {8, 2}, {5, 0}, {0, 0}}}},
        {'R',
         {{{0, 16}, {0, 0}, {6, 0}, {9, 1}, {10, 4}, {9, 7}, {6, 8}, {0, 8}}, {{5, 8}, {10, 16}}}},
        {'I', {{{5, 0}, {5, 16}}}},
        {'1', {{{5, 0}, {5, 16}}}},
        {'L', {{{0, 0}, {0, 16}, {9, 16}}}},
        {'E', {{{9, 0}, {0, 0}, {0, 16}, {9, 16}}, {{0, 8}, {7, 8}}}},
        {'A', {{{0, 16}, {5, 0}, {10, 16}}, {{2, 11}, {8, 11}}}},
        {'M', {{{0, 16}, {0, 0}, {5, 10}, {10, 0}, {10, 16}}}},
        {'N', {{{0, 16}, {0, 0}, {10, 16}, {10, 0}}}},
        {'T', {{{0, 0}, {10, 0}}, {{5, 0}, {5, 16}}}},
        {'H', {{{0, 0}, {0, 16}}, {{10, 0}, {10, 16}}, {{0, 8}, {10, 8}}}},
        {'O',
         {{{5, 0},
           {2, 1},
           {0, 5},
           {0, 11},
           {2, 15},
           {5, 16},
           {8, 15},
           {10, 11},
           {10, 5},
           {8, 1},
           {5, 0}}}},
        {'S',
         {{{9, 2},
           {7, 0},
           {3, 0},
           {1, 2},
           {1, 5},
           {3, 7},
           {7, 9},
           {9, 11},
           {9, 14},
           {7, 16},
           {3, 16},
           {1, 14}}}},
        {'4', {{{7, 16}, {7, 0}, {0, 11}, {10, 11}}}},
        {'P', {{{0, 16}, {0, 0}, {6, 0}, {9, 1}, {10, 4}, {9, 7}, {6, 8}, {0, 8}}}},
        {'C',
         {{{9, 3}, {7, 1}, {5, 0}, {2, 1}, {0, 5}, {0, 11}, {2, 15}, {5, 16}, {7, 15}, {9, 13}}}},
    };
    for (const Line& one : kLetters.at(c)) {
      for (std::size_t i = 0; i + 1 < one.size(); ++i)
        line(x + one[i].first * size, y + one[i].second * size, x + one[i + 1].first * size,
             y + one[i + 1].second * size, 3);
    }
  }
};

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
    Letterer pen;
    pen.text(text, 60, 60);
    std::vector<std::string> rows;
    for (const NoteRow& row : pen.rows()) rows.push_back(rowText(row));
    EXPECT_EQ(rows, wanted) << text;
  }
}

TEST(NoteRows, RowsOfOneBlockAreReadByThemselves) {
  Letterer pen;
  pen.text("q DRILL", 60, 60);
  pen.text("4 HOLES", 70, 115);
  const auto rows = pen.rows();
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
