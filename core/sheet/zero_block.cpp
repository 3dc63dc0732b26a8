#include "core/sheet/zero_block.h"

#include <string>
#include <utility>
#include <vector>

#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kPad = 2;

std::string axisName(const TouchOff& touch) {
  if (touch.depth) return "Z0";
  return touch.alongX ? "X0" : "Y0";
}

/// One axis in a box of its own, `width` wide.
Piece axisPiece(const SheetContent& content, const TouchOff& touch, double width) {
  const Style& style = content.style;
  const Sketch::Look name{style.second(), Typeface::bold};
  const Sketch::Look plain{style.body(), Typeface::regular};
  const Sketch::Look strong{style.body(), Typeface::bold};
  const Sketch::Look preset{style.second(), Typeface::bold};

  Piece piece;
  double y = 0.6;
  const double inner = width - 2 * kPad;
  const auto setLines = [&](const std::vector<LaidLine>& lines, double left) {
    for (const LaidLine& line : lines) {
      piece.sketch.add(line.sketch, left, y);
      y += line.height;
    }
  };
  setLines(layParagraph({{axisName(touch), name}, {touch.what, strong}}, inner), kPad);
  const double indent = textWidth("88 ", style.body(), Typeface::bold);
  for (std::size_t i = 0; i < touch.steps.size(); ++i) {
    const double top = y;
    std::vector<LaidLine> lines =
        layParagraph(emphasiseFigures(touch.steps[i], plain, preset), inner - indent);
    setLines(lines, kPad + indent);
    const double baseline = lines.empty() ? style.body() * kAboveBaseline : lines.front().baseline;
    piece.sketch.text(kPad, top + baseline, std::to_string(i + 1), strong);
    if (lines.empty()) y += style.body() * kLineSpacing;
  }
  piece.height = y + 0.8;
  piece.sketch.box({0.25, 0, width - 0.25, piece.height}, {Ink::black, kMedium, {}});
  return piece;
}

}  // namespace

Pieces zeroPieces(const SheetContent& content, double width) {
  const std::vector<TouchOff>& touches = content.table.touchOff;
  if (touches.empty() && content.table.zero.empty()) return {};
  const Style& style = content.style;
  Piece title;
  title.keepWithNext = true;
  const double mark = style.title() * 0.75;
  drawZeroMark(title.sketch, {mark, style.title() * 0.95}, mark);
  const LaidLine words = stacked(layParagraph(
      {{"FIND ZERO", {style.title(), Typeface::bold}}, {content.table.zero, {style.body()}}},
      width - mark * 2.6));
  title.sketch.add(words.sketch, mark * 2.6, 0);
  title.height = words.height + 0.4;

  Pieces pieces{std::move(title)};
  // Two boxes side by side where there is room for both.
  const double half = (width - 3) / 2;
  const bool pair = touches.size() > 1 && half >= 24 * style.second();
  for (std::size_t i = 0; i < touches.size(); ++i) {
    if (pair && i + 1 < touches.size()) {
      const Piece right = axisPiece(content, touches[i + 1], half);
      pieces.push_back(beside(axisPiece(content, touches[i], half), right, half + 3));
      ++i;
    } else {
      pieces.push_back(axisPiece(content, touches[i], width));
    }
    pieces.push_back(gap(1.6));
  }
  return pieces;
}

}  // namespace inchwright
