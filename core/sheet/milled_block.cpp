#include "core/sheet/milled_block.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>

#include "core/say/figure_words.h"
#include "core/say/milled_words.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// With more depths than this one box does for all.
constexpr std::size_t kMostBoxes = 4;

/// One run: boxes, its figures one after the other over as many lines as they need, what it is for.
class RunRow {
 public:
  RunRow(const SheetContent& content, std::size_t depths, double width)
      : style_(content.style), width_(width), line_(style_.second() * 1.03 + 0.9) {
    const double box = std::min(4.6 * style_.hand, style_.second());
    const std::size_t boxes = depths > kMostBoxes ? 1 : std::max<std::size_t>(1, depths);
    for (std::size_t i = 0; i < boxes; ++i) {
      drawTickBox(piece_.sketch, {0.2 + x_, line_ - (style_.second() + box) / 2}, box);
      x_ += box + 1;
    }
    left_ = x_ += 0.6;
  }

  void figure(const char* before, const Coordinate& value) {
    const bool isLetter = before[1] == '\0';
    const Sketch::Look look{isLetter ? style_.title() : style_.body(),
                            isLetter ? Typeface::bold : Typeface::regular};
    const std::string text = signedText(value);
    const double tag = textWidth(before, look.height, look.face) + 1.2;
    const double wide = tag + figureWidth(text, style_.second(), Typeface::regular);
    if (x_ > left_ && x_ + wide > width_) next(style_.second() * 1.35);
    piece_.sketch.text(x_, line_, before, look);
    piece_.sketch.figure(x_ + tag, line_, text, {style_.second(), Typeface::regular});
    x_ += wide + 1.6;
  }

  void words(const std::string& text) {
    const Sketch::Look look{style_.body(), Typeface::regular};
    if (x_ > left_ && x_ + textWidth(text, look.height, look.face) > width_) {
      next(look.height * kLineSpacing);
    }
    piece_.sketch.text(x_, line_, text, look);
  }

  Piece take() {
    piece_.height = line_ + 1.4;
    piece_.sketch.line({0, piece_.height}, {width_, piece_.height}, {Ink::black, kHairline, {}});
    return std::move(piece_);
  }

 private:
  void next(double down) {
    x_ = left_;
    line_ += down;
  }

  const Style& style_;
  double width_;
  double line_;  ///< the baseline that is written on
  double left_ = 0;
  double x_ = 0;
  Piece piece_;
};

Piece runPiece(const SheetContent& content, const MilledCut& cut, const CutterRun& run,
               double width) {
  RunRow row(content, cut.passes.size(), width);
  const bool alongX = run.from.y.value == run.to.y.value;
  const bool alongY = run.from.x.value == run.to.x.value;
  row.figure("X", run.from.x);
  if (alongX) row.figure("to", run.to.x);
  row.figure("Y", run.from.y);
  if (alongY && !alongX) row.figure("to", run.to.y);
  if (!alongX && !alongY) {
    row.figure("X", run.to.x);
    row.figure("Y", run.to.y);
  }
  row.words(purposeOf(cut, run));
  return row.take();
}

void addWords(const SheetContent& content, const std::string& text, double width, Pieces& pieces) {
  for (const LaidLine& line : layText(text, {content.style.body(), Typeface::regular}, width)) {
    Piece& piece = pieces.emplace_back();
    piece.sketch.add(line.sketch, 0, 0);
    piece.height = line.height;
  }
  pieces.push_back(space(0.8));
}

}  // namespace

Pieces milledPieces(const SheetContent& content, double width) {
  if (content.table.milled.empty()) return {};
  Pieces pieces{titlePiece(content, "SLOTS AND POCKETS: WHERE THE CUTTER'S CENTRE GOES", width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  // The words of a cut: how it begins, its runs, what to mind.
  auto said = content.words.milled.begin();
  for (const MilledCut& cut : content.table.milled) {
    const std::size_t notes = milledNotes(cut, content.table.step).size();
    addWords(content, *said++, width, pieces);
    if (cut.drillFirst) {
      RunRow row(content, 1, width);
      row.figure("X", cut.drillFirst->x);
      row.figure("Y", cut.drillFirst->y);
      row.words("drill " + cut.drill + " here first");
      pieces.push_back(row.take());
    }
    for (const CutterRun& run : cut.runs) {
      pieces.push_back(runPiece(content, cut, run, width));
      ++said;
    }
    pieces.push_back(space(0.8));
    for (std::size_t i = 1; i < notes; ++i) addWords(content, *said++, width, pieces);
  }
  for (std::size_t i = 1; i < pieces.size(); ++i) pieces[i].heading = again;
  pieces.push_back(space(1.8));
  return pieces;
}

}  // namespace inchwright
