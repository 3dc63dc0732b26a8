#include "app/words/console.h"

#include <gtest/gtest.h>

#include <sstream>

#include "app/words/word.h"

namespace inchwright::app {
namespace {

TEST(Console, ColoursOnlyWhereWanted) {
  std::ostringstream out;
  EXPECT_EQ(toned({out, out, false}, Tone::doubt, "x"), "x");
  EXPECT_EQ(toned({out, out, true}, Tone::doubt, "x"), "\x1b[31mx\x1b[0m");
}

TEST(Console, ADocumentCantSpeakToTheTerminal) {
  EXPECT_EQ(oneLine("a\x1b[2Jb\nc\x7f ⅜"), "a?[2Jb?c? ⅜");
}

TEST(Console, RefusesInOneLineWithWhereAndWhy) {
  std::ostringstream out;
  std::ostringstream err;
  const int status =
      refuse({out, err}, "check", {ErrorCode::badDocument, "no\nsuch thing", "/parts/0", 4}, "a.b");
  EXPECT_EQ(status, kUnusable);
  EXPECT_EQ(err.str(), "inchwright check: a.b: /parts/0: at character 5: no?such thing\n");
  EXPECT_EQ(out.str(), "");
}

TEST(Console, CountsCharactersNotBytes) {
  EXPECT_EQ(columnsOf("1 3/16"), 6u);
  EXPECT_EQ(columnsOf("Ø⅜"), 2u);
  EXPECT_EQ(columnsOf(""), 0u);
}

TEST(Console, AlignsColumnsAndLeavesOutEmptyOnes) {
  const std::vector<std::string> lines =
      alignedRows({{"id", "x", "none", "note"}, {"A", "-1.5", "", "Ø"}, {"B10", "+0.25", "", ""}},
                  {Justify::left, Justify::right, Justify::left, Justify::left});
  EXPECT_EQ(lines, (std::vector<std::string>{"id       x  note", "A     -1.5  Ø", "B10  +0.25"}));
}

}  // namespace
}  // namespace inchwright::app
