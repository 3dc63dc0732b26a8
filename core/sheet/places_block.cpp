#include "core/sheet/places_block.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/writing.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr Typeface kFace = Typeface::bold;

/// The width from the left of the sign to the point, over all figures given.
double widestWhole(const std::vector<std::string>& figures, double height) {
  double widest = 0;
  for (const std::string_view figure : figures) {
    const std::size_t point = std::min(figure.find('.'), figure.size());
    widest = std::max(widest, figureWidth(figure.substr(0, point), height, kFace));
  }
  return widest;
}

double widest(const std::vector<std::string>& figures, double height) {
  double width = 0;
  for (const std::string& figure : figures) {
    width = std::max(width, figureWidth(figure, height, kFace));
  }
  return width;
}

/// Sets a figure so that its point stands `whole` right of `x`.
void setAligned(Sketch& sketch, double x, double whole, double baseline, std::string_view figure,
                double height) {
  const std::size_t point = std::min(figure.find('.'), figure.size());
  const double own = figureWidth(figure.substr(0, point), height, kFace);
  sketch.figure(x + whole - own, baseline, figure, {height, kFace});
}

/// Lines beside what is already set where there is room, else below it; the piece grows to hold
/// them.
void setWords(Piece& piece, const SheetContent& content, const std::string& words, double left,
              double baseline, double indent, double width) {
  const Sketch::Look plain{content.style.body(), Typeface::regular};
  const double room = width - left;
  const bool besideFits =
      room > 0 && (textWidth(words, plain.height) <= room || room >= 14 * plain.height);
  if (besideFits) {
    const LaidLine lines = stacked(layText(words, plain, room));
    const double top = baseline - plain.height * kAboveBaseline;
    piece.sketch.add(lines.sketch, left, top);
    piece.height = std::max(piece.height, top + lines.height);
  } else {
    const LaidLine lines = stacked(layText(words, plain, width - indent));
    piece.sketch.add(lines.sketch, indent, piece.height);
    piece.height += lines.height;
  }
}

std::string stockInWords(const EdgeRow& edge, Unit unit) {
  return writePlain(edge.stockLeft, unit) + (unit == Unit::inch ? " in" : " mm") + " to come off";
}

}  // namespace

Pieces checkPieces(const SheetContent& content, double width) {
  const std::vector<CheckPlace>& checks = content.table.checks;
  if (checks.empty()) return {};
  const Style& style = content.style;
  const double height = style.second();
  std::vector<std::string> xs;
  std::vector<std::string> ys;
  for (const CheckPlace& check : checks) {
    xs.push_back(signedText(check.x));
    ys.push_back(signedText(check.y));
  }
  Pieces pieces{titlePiece(content, "BEFORE CUTTING, DRIVE TO AND LOOK", width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  const double box = std::min(4.6 * style.hand, height);
  const double tag = textWidth("X", style.body(), Typeface::bold) + 0.6;
  const double xLeft = box + 1.6 + tag;
  const double between = 1.2 + height * 0.2;
  // Y goes below X where the column is too narrow for both.
  const bool below = xLeft + widest(xs, height) + between + tag + widest(ys, height) > width;
  const double yLeft = below ? xLeft : xLeft + widest(xs, height) + between + tag;
  for (std::size_t i = 0; i < checks.size(); ++i) {
    Piece piece;
    piece.heading = again;
    const double first = height * 1.03 + 0.9;
    const double second = below ? first + height * 1.35 : first;
    drawTickBox(piece.sketch, {0.2, first - (height + box) / 2}, box);
    piece.sketch.text(xLeft - tag, first, "X", {style.body(), Typeface::bold});
    setAligned(piece.sketch, xLeft, widestWhole(xs, height), first, xs[i], height);
    piece.sketch.text(yLeft - tag, second, "Y", {style.body(), Typeface::bold});
    setAligned(piece.sketch, yLeft, widestWhole(ys, height), second, ys[i], height);
    piece.height = second + 0.8;
    setWords(piece, content, checks[i].look, yLeft + widest(ys, height) + 2, second, box + 1.6,
             width);
    piece.height += 0.4;
    piece.sketch.line({0, piece.height}, {width, piece.height}, {Ink::black, kHairline, {}});
    pieces.push_back(std::move(piece));
  }
  pieces.push_back(gap(2.2));
  return pieces;
}

Pieces edgePieces(const SheetContent& content, double width) {
  const std::vector<EdgeRow>& edges = content.table.edges;
  if (edges.empty()) return {};
  const Style& style = content.style;
  const double height = style.second();
  std::vector<std::string> figures;
  double nameWidth = 0;
  for (const EdgeRow& edge : edges) {
    figures.push_back(signedText(edge.value));
    nameWidth = std::max(nameWidth, textWidth(edge.id, height, kFace));
  }
  nameWidth = std::min(nameWidth, height * 3.5);
  Pieces pieces{titlePiece(content, "EDGES ON THE READOUT", width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  const double left = 2.4;
  const double axis = left + nameWidth + height * 0.5;
  const double figure = axis + textWidth("X", style.tool(), Typeface::bold) + 1;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const EdgeRow& edge = edges[i];
    Piece piece;
    piece.heading = again;
    const double baseline = height * 1.03 + 0.9;
    piece.height = baseline + 0.8;
    if (textWidth(edge.id, height, kFace) <= nameWidth + 1e-9) {
      piece.sketch.text(left, baseline, edge.id, {height, kFace});
      piece.height = std::max(piece.height, baseline + reachOf(edge.id).below * height + 0.2);
    } else {
      const LaidLine lines = stacked(layText(edge.id, {height * 0.45, kFace}, nameWidth));
      piece.sketch.add(lines.sketch, left, 0.3);
      piece.height = std::max(piece.height, lines.height + 0.6);
    }
    piece.sketch.text(axis, baseline, edge.alongX ? "X" : "Y", {style.tool(), kFace});
    setAligned(piece.sketch, figure, widestWhole(figures, height), baseline, figures[i], height);
    std::string words;
    if (edge.disputed) words = "DISPUTED";
    const auto also = [&](const std::string& text) {
      words += (words.empty() ? "" : " \u00B7 ") + text;
    };
    if (edge.side) also(std::string(nameOf(*edge.side)) + " side");
    if (!edge.stockLeft.isZero()) also(stockInWords(edge, content.job.unit));
    if (!words.empty()) {
      setWords(piece, content, words, figure + widest(figures, height) + 2, baseline, left, width);
    }
    if (edge.disputed) drawTornEdge(piece.sketch, 0, 0.8, piece.height - 0.4);
    piece.height += 0.4;
    piece.sketch.line({0, piece.height}, {width, piece.height}, {Ink::black, kHairline, {}});
    pieces.push_back(std::move(piece));
  }
  pieces.push_back(gap(2.2));
  return pieces;
}

}  // namespace inchwright
