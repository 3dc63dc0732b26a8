#include "core/sheet/paragraph.h"

#include <algorithm>
#include <list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "core/sheet/style.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// A word of a run that is laid out elsewhere.
struct Word {
  std::string_view text;
  const Run* run = nullptr;
  double width = 0;

  const Sketch::Look& look() const { return run->look; }
};

double widthOf(std::string_view word, const Run& run) {
  return run.figure ? figureWidth(word, run.look.height, run.look.face)
                    : textWidth(word, run.look.height, run.look.face);
}

double spaceOf(const Sketch::Look& look) {
  return textWidth(" ", look.height, look.face);
}

/// Runs broken into lines. Refers to the runs.
struct Broken {
  std::list<std::string> pieces;  ///< of words that are wider than a line
  std::vector<Word> words;
  std::vector<std::size_t> ends;  ///< of each line, in words
};

/// The words of all runs; one that is wider than a line is cut into pieces that are not.
void addWords(const Run& run, double width, Broken& broken) {
  for (std::size_t at = 0; at < run.text.size();) {
    const std::size_t start = run.text.find_first_not_of(' ', at);
    if (start == std::string::npos) break;
    at = std::min(run.text.find(' ', start), run.text.size());
    const std::string_view word = std::string_view(run.text).substr(start, at - start);
    const double wide = widthOf(word, run);
    if (wide <= width) {
      broken.words.push_back({word, &run, wide});
      continue;
    }
    // Every piece of a figure stands right of the room for a sign.
    const double room = run.figure ? width - signWidth(run.look.height, run.look.face) : width;
    for (std::string& piece : wrapText(word, run.look.height, room, run.look.face)) {
      const std::string& kept = broken.pieces.emplace_back(std::move(piece));
      broken.words.push_back({kept, &run, widthOf(kept, run)});
    }
  }
}

Broken breakIntoLines(const std::vector<Run>& runs, double width) {
  Broken broken;
  for (const Run& run : runs) addWords(run, width, broken);
  double x = 0;
  for (std::size_t i = 0; i < broken.words.size(); ++i) {
    const Word& word = broken.words[i];
    const bool first = i == (broken.ends.empty() ? 0 : broken.ends.back());
    double space = first ? 0 : std::max(spaceOf(broken.words[i - 1].look()), spaceOf(word.look()));
    if (!first && x + space + word.width > width + 1e-9) {
      broken.ends.push_back(i);
      x = 0;
      space = 0;
    }
    x += space + word.width;
  }
  if (!broken.words.empty()) broken.ends.push_back(broken.words.size());
  return broken;
}

struct LineExtent {
  double above = 0;  ///< the baseline
  double below = 0;

  double height() const { return above + below; }

  /// Figures have neither accents nor descenders, and need less room; a semicolon behind one does.
  void add(std::string_view text, const Run& run) {
    const bool bare =
        run.figure && text.find_first_not_of("+-.0123456789") == std::string_view::npos;
    const double height = run.look.height;
    above = std::max(above, height * (run.figure ? 1.16 : kAboveBaseline));
    below = std::max(below, height * (bare ? 0.2 : kLineSpacing - kAboveBaseline));
  }
};

LineExtent extentOf(std::span<const Word> line) {
  LineExtent extent;
  for (const Word& word : line) extent.add(word.text, *word.run);
  return extent;
}

/// The height of plain runs that certainly stand on one line, as those of most rows do; empty where
/// they have to be broken to tell.
std::optional<double> heightOnOneLine(const std::vector<Run>& runs, double width) {
  constexpr double kTiny = 1e-6;
  LineExtent extent;
  double wide = 0;
  for (const Run& run : runs) {
    const bool plain = !run.figure && !run.text.empty() && run.text.find(' ') != 0;
    if (!plain) return std::nullopt;
    // The wider of two spaces stands between two runs: no more than both.
    wide += 2 * spaceOf(run.look) + textWidth(run.text, run.look.height, run.look.face);
    extent.add(run.text, run);
  }
  if (runs.empty() || wide + kTiny > width) return std::nullopt;
  return extent.height();
}

/// Neighbours of one run become one item, so that a phrase can be searched for.
LaidLine setLine(std::span<const Word> words) {
  LaidLine line;
  const LineExtent extent = extentOf(words);
  line.baseline = extent.above;
  line.height = extent.height();
  double x = 0;
  for (std::size_t i = 0; i < words.size();) {
    const Word& first = words[i];
    double spaceAfter = spaceOf(first.look());
    if (first.run->figure) {
      line.sketch.figure(x, line.baseline, first.text, first.look());
      x += first.width + spaceAfter;
      ++i;
      continue;
    }
    std::string text(first.text);
    for (++i; i < words.size() && words[i].run == first.run; ++i) {
      text += ' ';
      text += words[i].text;
    }
    line.sketch.text(x, line.baseline, text, first.look());
    x += textWidth(text, first.look().height, first.look().face);
    if (i < words.size()) spaceAfter = std::max(spaceAfter, spaceOf(words[i].look()));
    x += spaceAfter;
  }
  return line;
}

/// Calls `each` with the words of every line.
template <class Each>
void eachLine(const Broken& broken, Each each) {
  std::size_t begin = 0;
  for (const std::size_t end : broken.ends) {
    each(std::span(broken.words).subspan(begin, end - begin));
    begin = end;
  }
}

}  // namespace

std::vector<LaidLine> layParagraph(const std::vector<Run>& runs, double width) {
  std::vector<LaidLine> lines;
  eachLine(breakIntoLines(runs, width),
           [&](std::span<const Word> line) { lines.push_back(setLine(line)); });
  return lines;
}

std::vector<double> lineHeights(const std::vector<Run>& runs, double width) {
  if (const std::optional<double> height = heightOnOneLine(runs, width)) return {*height};
  std::vector<double> heights;
  eachLine(breakIntoLines(runs, width),
           [&](std::span<const Word> line) { heights.push_back(extentOf(line).height()); });
  return heights;
}

std::vector<LaidLine> layText(std::string_view text, const Sketch::Look& look, double width) {
  return layParagraph({{std::string(text), look}}, width);
}

std::vector<Run> emphasiseFigures(std::string_view text, const Sketch::Look& plain,
                                  const Sketch::Look& strong) {
  std::vector<Run> runs;
  std::string words;
  const auto flush = [&] {
    if (!words.empty()) runs.push_back({words, plain});
    words.clear();
  };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = text.find_first_not_of(' ', at);
    if (start == std::string_view::npos) break;
    at = std::min(text.find(' ', start), text.size());
    const std::string_view word = text.substr(start, at - start);
    const bool figure = word.size() > 1 && (word[0] == '+' || word[0] == '-') && word[1] >= '0' &&
                        word[1] <= '9' && word.back() != ')';
    if (figure) {
      flush();
      runs.push_back({std::string(word), strong, true});
    } else {
      words += (words.empty() ? "" : " ") + std::string(word);
    }
  }
  flush();
  return runs;
}

LaidLine stacked(const std::vector<LaidLine>& lines) {
  LaidLine all;
  if (!lines.empty()) all.baseline = lines.front().baseline;
  for (const LaidLine& line : lines) {
    all.sketch.add(line.sketch, 0, all.height);
    all.height += line.height;
  }
  return all;
}

}  // namespace inchwright
