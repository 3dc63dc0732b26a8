#include "core/sheet/paragraph.h"

#include <algorithm>
#include <string>

#include "core/sheet/style.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

struct Word {
  std::string text;
  Sketch::Look look;
  std::size_t run = 0;
  bool figure = false;

  double width() const {
    return figure ? figureWidth(text, look.height, look.face)
                  : textWidth(text, look.height, look.face);
  }
};

/// The words of all runs; one that is wider than a line is cut into pieces that are not.
std::vector<Word> wordsOf(const std::vector<Run>& runs, double width) {
  std::vector<Word> words;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const Run& run = runs[i];
    for (std::size_t at = 0; at < run.text.size();) {
      const std::size_t start = run.text.find_first_not_of(' ', at);
      if (start == std::string::npos) break;
      at = std::min(run.text.find(' ', start), run.text.size());
      const std::string word = run.text.substr(start, at - start);
      for (std::string& piece : wrapText(word, run.look.height, width, run.look.face)) {
        words.push_back({std::move(piece), run.look, i, run.figure});
      }
    }
  }
  return words;
}

/// Neighbours of one run become one item, so that a phrase can be searched for.
LaidLine setLine(const std::vector<Word>& words) {
  LaidLine line;
  double& baseline = line.baseline;
  double below = 0;
  for (const Word& word : words) {
    // Figures have neither accents nor descenders, and need less room.
    baseline = std::max(baseline, word.look.height * (word.figure ? 1.16 : kAboveBaseline));
    below = std::max(below, word.look.height * (word.figure ? 0.2 : kLineSpacing - kAboveBaseline));
  }
  line.height = baseline + below;
  double x = 0;
  for (std::size_t i = 0; i < words.size();) {
    const Word& first = words[i];
    double spaceAfter = textWidth(" ", first.look.height, first.look.face);
    if (first.figure) {
      line.sketch.figure(x, baseline, first.text, first.look);
      x += first.width() + spaceAfter;
      ++i;
      continue;
    }
    std::string text = first.text;
    for (++i; i < words.size() && words[i].run == first.run; ++i) text += ' ' + words[i].text;
    line.sketch.text(x, baseline, text, first.look);
    x += textWidth(text, first.look.height, first.look.face);
    if (i < words.size()) {
      const Sketch::Look& next = words[i].look;
      spaceAfter = std::max(spaceAfter, textWidth(" ", next.height, next.face));
    }
    x += spaceAfter;
  }
  return line;
}

}  // namespace

std::vector<LaidLine> layParagraph(const std::vector<Run>& runs, double width) {
  std::vector<LaidLine> lines;
  std::vector<Word> line;
  double x = 0;
  for (Word& word : wordsOf(runs, width)) {
    double space = 0;
    if (!line.empty()) {
      const Sketch::Look& before = line.back().look;
      space = std::max(textWidth(" ", before.height, before.face),
                       textWidth(" ", word.look.height, word.look.face));
    }
    const double wide = word.width();
    if (!line.empty() && x + space + wide > width + 1e-9) {
      lines.push_back(setLine(line));
      line.clear();
      x = 0;
      space = 0;
    }
    x += space + wide;
    line.push_back(std::move(word));
  }
  if (!line.empty()) lines.push_back(setLine(line));
  return lines;
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
