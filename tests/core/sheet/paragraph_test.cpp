// Runs of text in lines: what is set is as high as was said, as wide as there was room, and whole.
#include "core/sheet/paragraph.h"

#include <gtest/gtest.h>

#include <random>

#include "core/sheet/text_measure.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

using Runs = std::vector<Run>;

/// Runs of any look: words short and long, figures with and without signs, blanks before, between
/// and behind, nothing at all.
class RandomRuns {
 public:
  explicit RandomRuns(unsigned seed) : random_(seed) {}

  Runs next() {
    Runs runs;
    for (int i = between(0, 5); i > 0; --i) runs.push_back(run());
    return runs;
  }
  double width() {
    static constexpr std::array kWidths{24.0, 40.0, 75.5, 120.0, 190.0};
    return kWidths[static_cast<std::size_t>(between(0, 4))];
  }

 private:
  int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }

  Run run() {
    static constexpr std::array kHeights{2.8, 3.4, 4.4, 5.8, 8.0};
    static constexpr std::array kFigures{"-0.1000", "+12.3455", "0.0000", "-1234567.1255", "+0.5;"};
    static constexpr std::array kWords{"set",       "Front",   "plate,", "g\u00E4uge",
                                       "\u00D81/4", "through", "(2 3/8)"};
    Run one;
    one.look.height = kHeights[static_cast<std::size_t>(between(0, 4))];
    one.look.face = between(0, 1) == 0 ? Typeface::regular : Typeface::bold;
    one.figure = between(0, 3) == 0;
    if (one.figure) {
      one.text = kFigures[static_cast<std::size_t>(between(0, 4))];
      return one;
    }
    one.text = std::string(static_cast<std::size_t>(std::max(0, between(-3, 2))), ' ');
    for (int i = between(0, 6); i > 0; --i) {
      one.text += between(0, 19) == 0 ? std::string(static_cast<std::size_t>(between(9, 90)), 'W')
                                      : kWords[static_cast<std::size_t>(between(0, 6))];
      one.text += std::string(static_cast<std::size_t>(std::max(0, between(-2, 2))), ' ');
      if (i > 1 && one.text.back() != ' ') one.text += ' ';
    }
    return one;
  }

  std::mt19937 random_;
};

std::string withoutBlanks(std::string text) {
  std::erase(text, ' ');
  return text;
}

// Rows are measured long before they are drawn: a height that differs would let them run into each
// other.
TEST(Paragraph, IsAsHighAsItWasMeasured) {
  for (unsigned seed = 1; seed <= 4000; ++seed) {
    RandomRuns random(seed);
    const Runs runs = random.next();
    const double width = random.width();
    std::vector<double> set;
    for (const LaidLine& line : layParagraph(runs, width)) set.push_back(line.height);
    ASSERT_EQ(lineHeights(runs, width), set) << "seed " << seed;
  }
}

TEST(Paragraph, KeepsToItsWidthAndLosesNothing) {
  for (unsigned seed = 1; seed <= 4000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    RandomRuns random(seed);
    const Runs runs = random.next();
    const double width = random.width();
    std::string wanted, got;
    for (const auto& run : runs) wanted += withoutBlanks(run.text);
    for (const LaidLine& line : layParagraph(runs, width)) {
      const PaperBox room = PaperBox{0, 0, width, line.height}.grownBy(kRounding);
      double end = -99;
      for (const TextItem& text : textsOf(line.sketch)) {
        const PaperBox box = boundsOf(text);
        ASSERT_TRUE(room.holds(box))
            << '"' << text.text << "\" from " << box.left << " to " << box.right << " of " << width;
        ASSERT_EQ(text.at.y, line.baseline);
        ASSERT_GE(box.left, end) << text.text << " stands in what is before it";
        end = box.right - kRounding;
        got += withoutBlanks(text.text);
      }
    }
    ASSERT_EQ(got, wanted);
  }
}

// A line ends only where the next word has no room.
TEST(Paragraph, FillsItsLines) {
  const Sketch::Look look{4, Typeface::regular};
  const double two = textWidth("set plate", 4), three = textWidth("set plate Front", 4);
  const Runs runs{{"set plate", look}, {"Front", look}};
  EXPECT_EQ(layParagraph(runs, three).size(), 1u);
  EXPECT_EQ(layParagraph(runs, three - 0.01).size(), 2u);
  EXPECT_EQ(layParagraph(runs, two).size(), 2u);
  EXPECT_EQ(layParagraph(runs, two - 0.01).size(), 3u);
  EXPECT_TRUE(layParagraph({{"", look}, {"   ", look}}, 50).empty());
}

// What is searched for is one text: neighbours of one run are not set word by word.
TEST(Paragraph, APhraseOfOneRunIsOneText) {
  const Sketch::Look look{3, Typeface::bold};
  const std::vector<TextItem> texts = textsOf(
      layParagraph({{" touch  the left side", look}, {"-0.1000", look, true}}, 150).at(0).sketch);
  ASSERT_EQ(texts.size(), 2u);
  EXPECT_EQ(texts[0].text, "touch the left side");
  EXPECT_EQ(texts[1].text, "-0.1000");
}

TEST(Paragraph, OnlyFiguresWithASignStandOut) {
  const Sketch::Look plain{3}, strong{6};
  struct Case {
    const char* text;
    std::vector<std::string> runs;  ///< those that stand out in angle brackets
  };
  for (const auto& [text, wanted] : {
           Case{"set X -0.1000", {"set X", "<-0.1000>"}},
           Case{"-0.1000 on X, then +0.2500; stop",
                {"<-0.1000>", "on X, then", "<+0.2500;>", "stop"}},
           Case{"half of it (about -0.5000)", {"half of it (about -0.5000)"}},
           Case{"or +0.5 (now -0.6)", {"or", "<+0.5>", "(now -0.6)"}},
           Case{"turn - and look", {"turn - and look"}},
           Case{"the set-up +X, 0.5000", {"the set-up +X, 0.5000"}},
           Case{"   ", {}},
       }) {
    std::vector<std::string> got;
    for (const auto& run : emphasiseFigures(text, plain, strong)) {
      EXPECT_EQ(run.figure, run.look.height == strong.height);
      got.push_back(run.figure ? "<" + run.text + ">" : run.text);
    }
    EXPECT_EQ(got, wanted) << text;
  }
}

TEST(Paragraph, StackedLinesStandBelowEachOther) {
  const std::vector<LaidLine> lines =
      layParagraph({{"big", {8}}, {std::string(30, 'W'), {3}}, {"small", {3}}}, 40);
  ASSERT_GT(lines.size(), 2u);
  const LaidLine all = stacked(lines);
  EXPECT_EQ(all.baseline, lines.front().baseline);
  double top = 0;
  std::size_t at = 0;
  const std::vector<TextItem> texts = textsOf(all.sketch);
  for (const LaidLine& line : lines) {
    for (std::size_t i = 0; i < textsOf(line.sketch).size(); ++i) {
      EXPECT_DOUBLE_EQ(texts.at(at++).at.y, top + line.baseline);
    }
    top += line.height;
  }
  EXPECT_DOUBLE_EQ(all.height, top);
  EXPECT_EQ(stacked({}).height, 0);
}

}  // namespace
}  // namespace inchwright
