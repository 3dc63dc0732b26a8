#include "core/sheet/zero_block.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kPad = 2;
/// A box up to this height is not torn between pages: it fits below the head of the smallest one.
constexpr double kMostTogether = 110;
constexpr std::size_t kMostLines = 6;

std::string axisName(const TouchOff& touch) {
  return touch.axis.letter() + std::string("0");
}

/// Lines `left` from the side of the box, a few to a piece.
void appendLines(Pieces& pieces, const std::vector<LaidLine>& lines, double left) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i % kMostLines == 0) pieces.emplace_back();
    pieces.back().sketch.add(lines[i].sketch, left, pieces.back().height);
    pieces.back().height += lines[i].height;
  }
}

/// The frame around an axis: each piece draws its own part of it.
void drawFrame(Pieces& pieces, double width) {
  const Stroke stroke{Ink::black, kMedium, {}};
  const double left = stroke.width / 2;
  const double right = width - left;
  for (Piece& piece : pieces) {
    piece.sketch.line({left, 0}, {left, piece.height}, stroke);
    piece.sketch.line({right, 0}, {right, piece.height}, stroke);
  }
  pieces.front().sketch.line({0, left}, {width, left}, stroke);
  const double bottom = pieces.back().height - left;
  pieces.back().sketch.line({0, bottom}, {width, bottom}, stroke);
}

/// One axis in a box of its own, `width` wide.
Pieces axisPieces(const SheetContent& content, std::size_t index, double width) {
  const TouchOff& touch = content.table.touchOff[index];
  const SetupWords::Touch& said = content.words.touchOff[index];
  const Style& style = content.style;
  const Sketch::Look name{style.second(), Typeface::bold};
  const Sketch::Look plain{style.body(), Typeface::regular};
  const Sketch::Look preset{style.second(), Typeface::regular};
  const Sketch::Look strong{style.body(), Typeface::bold};
  const double inner = width - 2 * kPad;
  const double indent = textWidth("88 ", style.body(), Typeface::bold);

  Pieces pieces{space(0.8)};
  pieces.front().spaceOnly = false;
  appendLines(pieces, layParagraph({{axisName(touch), name}, {said.what, strong}}, inner), kPad);
  for (std::size_t i = 0; i < said.steps.size(); ++i) {
    const std::vector<LaidLine> lines =
        layParagraph(emphasiseFigures(said.steps[i], plain, preset), inner - indent);
    if (lines.empty()) continue;
    pieces.back().height += 0.7;
    const std::size_t first = pieces.size();
    appendLines(pieces, lines, kPad + indent);
    pieces[first].sketch.text(kPad, lines.front().baseline, std::to_string(i + 1), strong);
  }
  pieces.back().height += 1;
  drawFrame(pieces, width);
  const bool together = heightOf(pieces) <= kMostTogether;
  pieces.front().keepWithNext = true;
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) {
    pieces[i].keepWithNext = together || i == 1;
  }
  return pieces;
}

Piece titlePiece(const SheetContent& content, double width) {
  const Style& style = content.style;
  Piece title;
  title.keepWithNext = true;
  const double mark = style.title() * 0.75;
  drawZeroMark(title.sketch, {mark, style.title() * 0.95}, mark);
  const LaidLine words = stacked(layParagraph(
      {{"FIND ZERO", {style.title(), Typeface::bold}}, {content.words.zero, {style.body()}}},
      width - mark * 2.6));
  title.sketch.add(words.sketch, mark * 2.6, 0);
  title.height = words.height + 0.4;
  return title;
}

}  // namespace

Pieces zeroPieces(const SheetContent& content, double width) {
  const std::vector<TouchOff>& touches = content.table.touchOff;
  if (touches.empty() && content.words.zero.empty()) return {};
  Pieces pieces{titlePiece(content, width)};
  // Two boxes side by side where there is room for both.
  const double half = (width - 3) / 2;
  for (std::size_t i = 0; i < touches.size(); ++i) {
    if (i + 1 < touches.size() && half >= 15 * content.style.second()) {
      const Piece left = joined(axisPieces(content, i, half));
      const Piece right = joined(axisPieces(content, i + 1, half));
      if (std::max(left.height, right.height) <= kMostTogether) {
        pieces.push_back(beside(left, right, half + 3));
        pieces.push_back(space(1.6));
        ++i;
        continue;
      }
    }
    Pieces box = axisPieces(content, i, width);
    std::move(box.begin(), box.end(), std::back_inserter(pieces));
    pieces.push_back(space(1.6));
  }
  return pieces;
}

}  // namespace inchwright
