#include "core/sheet/text_measure.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace inchwright {
namespace {

// Advances in 1/2000 em, read from the font files with a font editor's table view: a figure 1300,
// the point 600, plus 1200, hyphen 900, space 700. A figure is 1500 high.
TEST(TextWidth, IsTheSumOfTheAdvances) {
  EXPECT_DOUBLE_EQ(textWidth("8", 15), 13);
  EXPECT_DOUBLE_EQ(textWidth("+1.1875", 15), 12 + 6 + 5 * 13);
  EXPECT_DOUBLE_EQ(textWidth("-0.5", 15, Typeface::bold), 9 + 6 + 2 * 13);
  EXPECT_DOUBLE_EQ(textWidth("a b", 7.5, Typeface::mono), 3 * 6.5);
  EXPECT_DOUBLE_EQ(textWidth("", 8), 0);
}

TEST(TextWidth, AllFiguresAreEquallyWide) {
  for (const Typeface face :
       {Typeface::regular, Typeface::bold, Typeface::mono, Typeface::monoBold}) {
    for (char figure = '0'; figure <= '9'; ++figure) {
      EXPECT_DOUBLE_EQ(textWidth(std::string(1, figure), 15, face), 13);
    }
  }
}

TEST(TextWidth, TakesUnknownCharactersAndStrayBytesAsWide) {
  EXPECT_DOUBLE_EQ(textWidth("\u6B63", 15), 30);
  EXPECT_DOUBLE_EQ(textWidth("\xFF", 15), 30);
  EXPECT_DOUBLE_EQ(textWidth("\xE2\x88", 15), 60);  // cut off: two stray bytes
  EXPECT_DOUBLE_EQ(textWidth("\xC0\xAF", 15), 60);  // overlong
}

TEST(CharacterLength, FollowsUtf8) {
  struct Case {
    std::string text;
    std::size_t length;
  };
  for (const Case& one : {Case{"A", 1},
                          {"\u00D8", 2},
                          {"\u2212", 3},
                          {"\U0001F600", 4},
                          {"\xE2\x88", 1},
                          {"\x80", 1},
                          {"\xF8\x80\x80\x80\x80", 1}}) {
    EXPECT_EQ(characterLength(one.text, 0), one.length) << one.text;
  }
}

TEST(WrapText, BreaksAtSpacesAndInsideOnlyWhatIsTooLong) {
  // At height 15 a figure is 13 mm wide and a space 7.
  EXPECT_EQ(wrapText("11 22 33", 15, 60), (std::vector<std::string>{"11 22", "33"}));
  EXPECT_EQ(wrapText("  1   2  ", 15, 40), (std::vector<std::string>{"1 2"}));
  EXPECT_EQ(wrapText("12345", 15, 27), (std::vector<std::string>{"12", "34", "5"}));
  EXPECT_EQ(wrapText("1", 15, 1), (std::vector<std::string>{"1"}));
  EXPECT_TRUE(wrapText("   ", 15, 60).empty());
  EXPECT_TRUE(wrapText("", 15, 60).empty());
}

TEST(WrapText, LosesNothingAndKeepsToTheWidth) {
  for (unsigned seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    const auto below = [&](int limit) {
      return std::uniform_int_distribution<int>(0, limit - 1)(random);
    };
    std::string text;
    for (int i = below(80); i > 0; --i) {
      const std::vector<std::string> some{" ", " ", "a", "W", "\u00D8", "7", "\u201C"};
      text += some[static_cast<std::size_t>(below(static_cast<int>(some.size())))];
    }
    const double width = 8 + below(60);
    std::string kept;
    for (const std::string& line : wrapText(text, 3, width)) {
      EXPECT_LE(textWidth(line, 3), width);
      kept += line;
    }
    const auto bare = [](std::string of) {
      std::erase(of, ' ');
      return of;
    };
    EXPECT_EQ(bare(kept), bare(text));
  }
}

}  // namespace
}  // namespace inchwright
