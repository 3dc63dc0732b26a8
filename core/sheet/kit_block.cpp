#include "core/sheet/kit_block.h"

#include <memory>

#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// The place, its old size struck out, what counts instead: each as large as a figure to work to.
Piece figuresPiece(const KitLine& line, const Style& style, double width) {
  const double height = style.label();
  const double base = height * kAboveBaseline;
  Piece piece;
  double x = 0;
  const auto put = [&](const std::string& text, Typeface face, bool struck) {
    const double wide = textWidth(text, height, face);
    if (x > 0 && x + wide > width) {
      piece.height += height * kLineSpacing;
      x = 0;
    }
    piece.sketch.text(x, piece.height + base, text, {height, face});
    if (struck) {
      const double y = piece.height + base - height * 0.42;
      piece.sketch.line({x - 0.6, y}, {x + wide + 0.6, y}, {Ink::black, kMedium, {}});
    }
    x += wide + height;
  };
  put(line.place, Typeface::bold, false);
  if (!line.struckOut.empty()) put(line.struckOut, Typeface::regular, true);
  if (!line.instead.empty()) put(line.instead, Typeface::bold, false);
  piece.height += height * kLineSpacing;
  piece.keepWithNext = true;
  return piece;
}

}  // namespace

Pieces kitPieces(const std::vector<KitLine>& lines, const Style& style, double width) {
  if (lines.empty()) return {};
  const double body = style.body();
  Piece title;
  title.keepWithNext = true;
  title.sketch.line({0, 0.3}, {width, 0.3}, {Ink::black, kMedium, {}});
  const LaidLine heading =
      stacked(layText("MADE SO FAR, AND WHAT IT GOES WITH", {body, Typeface::bold}, width));
  title.sketch.add(heading.sketch, 0, 0.5);
  title.height = heading.height + 0.7;
  Pieces pieces{title};
  const auto again = std::make_shared<const Piece>(title);
  for (const KitLine& line : lines) {
    const bool large = !line.struckOut.empty() || !line.instead.empty();
    const double indent = line.mind ? body * 2 : 0;
    if (large) {
      pieces.push_back(figuresPiece(line, style, width));
      pieces.back().heading = again;
    }
    std::vector<Run> runs;
    if (!large) runs.push_back({line.place, {body, Typeface::bold}});
    runs.push_back({line.words, {body}});
    Pieces words;
    for (const LaidLine& laid : layParagraph(runs, width - indent)) {
      Piece& piece = words.emplace_back();
      piece.sketch.add(laid.sketch, indent, 0);
      piece.height = laid.height;
      piece.heading = again;
    }
    if (line.mind) drawMindMark(words.front().sketch, {body * 0.8, body * 0.82}, body * 1.3);
    std::move(words.begin(), words.end(), std::back_inserter(pieces));
    pieces.push_back(space(0.8));
  }
  pieces.push_back(space(1.4));
  return pieces;
}

}  // namespace inchwright
