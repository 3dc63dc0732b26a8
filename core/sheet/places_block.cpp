#include "core/sheet/places_block.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/say/figure_words.h"
#include "core/sheet/id_setting.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr Typeface kFace = Typeface::regular;

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

/// Where the words of a row go: beside its figures, or below them from `indent` on.
struct WordColumn {
  double left = 0;
  double indent = 0;
  double width = 0;
};

/// Sets words beside the figures where there is room, else below; the piece grows to hold them.
/// What is more than a few lines goes to further pieces, so that a page can end between them.
Pieces withWords(Piece piece, const SheetContent& content, const std::string& words,
                 const WordColumn& column, double baseline) {
  constexpr std::size_t kMostLines = 6;
  const Sketch::Look plain{content.style.body(), Typeface::regular};
  const double room = column.width - column.left;
  if (room >= 14 * plain.height || (room > 0 && textWidth(words, plain.height) <= room)) {
    const std::vector<LaidLine> lines = layText(words, plain, room);
    if (lines.size() <= kMostLines) {
      const LaidLine all = stacked(lines);
      const double top = baseline - plain.height * kAboveBaseline;
      piece.sketch.add(all.sketch, column.left, top);
      piece.height = std::max(piece.height, top + all.height);
      return {std::move(piece)};
    }
  }
  Pieces pieces{std::move(piece)};
  const std::vector<LaidLine> lines = layText(words, plain, column.width - column.indent);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0 && i % kMostLines == 0) pieces.emplace_back();
    pieces.back().sketch.add(lines[i].sketch, column.indent, pieces.back().height);
    pieces.back().height += lines[i].height;
  }
  return pieces;
}

/// Ends a row with a hairline, and has its block's title repeated wherever the row begins a page.
void appendRow(Pieces& pieces, Pieces row, const std::shared_ptr<const Piece>& title,
               double width) {
  Piece& last = row.back();
  last.height += 0.4;
  last.sketch.line({0, last.height}, {width, last.height}, {Ink::black, kHairline, {}});
  for (Piece& piece : row) {
    piece.heading = title;
    pieces.push_back(std::move(piece));
  }
}

std::string stockInWords(const EdgeRow& edge, Unit unit) {
  return figureText(*edge.stock, unit) +
         (edge.stock->unit != unit ? ""
          : unit == Unit::inch     ? " in"
                                   : " mm") +
         " to come off";
}

/// Where the columns of the edges stand.
struct EdgeColumns {
  double id = 2.4;
  double idWidth = 0;
  double axis = 0;
  double figure = 0;
  double whole = 0;  ///< from the left of the sign to the point
  double words = 0;
};

Pieces edgeRow(const SheetContent& content, const EdgeRow& edge, const EdgeColumns& columns,
               double width) {
  const double height = content.style.second();
  const double baseline = height * 1.03 + 0.9;
  Piece piece;
  piece.height = baseline + 0.8;
  std::string words;
  const auto also = [&](const std::string& text) {
    words += (words.empty() ? "" : " \u00B7 ") + text;
  };
  if (!setId(piece, edge.id, columns.id, baseline, columns.idWidth, height)) also(edge.id);
  piece.sketch.text(columns.axis, baseline, std::string(1, letterOf(edge.axis)),
                    {content.style.tool(), Typeface::bold});
  setAligned(piece.sketch, columns.figure, columns.whole, baseline, signedText(edge.value), height);
  if (edge.disputed) also("DISPUTED");
  if (edge.side) also(std::string(nameOf(*edge.side)) + " side");
  if (edge.stock) also(stockInWords(edge, content.job.unit));
  if (edge.disputed) drawTornEdge(piece.sketch, 0, 0.8, piece.height - 0.4);
  return withWords(std::move(piece), content, words, {columns.words, columns.id, width}, baseline);
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
  const double tag = textWidth("X", style.title(), Typeface::bold) + 1.2;
  const double xLeft = box + 1.6 + tag;
  const double between = 1.2 + height * 0.2;
  // Y goes below X where the column is too narrow for both.
  const bool below = xLeft + widest(xs, height) + between + tag + widest(ys, height) > width;
  const double yLeft = below ? xLeft : xLeft + widest(xs, height) + between + tag;
  for (std::size_t i = 0; i < checks.size(); ++i) {
    Piece piece;
    const double first = height * 1.03 + 0.9;
    const double second = below ? first + height * 1.35 : first;
    drawTickBox(piece.sketch, {0.2, first - (height + box) / 2}, box);
    piece.sketch.text(xLeft - tag, first, "X", {style.title(), Typeface::bold});
    setAligned(piece.sketch, xLeft, widestWhole(xs, height), first, xs[i], height);
    piece.sketch.text(yLeft - tag, second, "Y", {style.title(), Typeface::bold});
    setAligned(piece.sketch, yLeft, widestWhole(ys, height), second, ys[i], height);
    piece.height = second + 0.8;
    const WordColumn words{yLeft + widest(ys, height) + 2, box + 1.6, width};
    appendRow(pieces, withWords(std::move(piece), content, content.words.checks[i], words, second),
              again, width);
  }
  pieces.push_back(space(2.2));
  return pieces;
}

Pieces edgePieces(const SheetContent& content, double width) {
  const std::vector<EdgeRow>& edges = content.table.edges;
  if (edges.empty()) return {};
  const Style& style = content.style;
  const double height = style.second();
  std::vector<std::string> figures;
  EdgeColumns columns;
  for (const EdgeRow& edge : edges) {
    figures.push_back(signedText(edge.value));
    columns.idWidth = std::max(columns.idWidth, textWidth(edge.id, height, Typeface::bold));
  }
  columns.idWidth = std::min(columns.idWidth, height * 3.5);
  columns.axis = columns.id + columns.idWidth + height * 0.5;
  columns.figure = columns.axis + textWidth("X", style.tool(), Typeface::bold) + 1;
  columns.whole = widestWhole(figures, height);
  columns.words = columns.figure + widest(figures, height) + 2;

  Pieces pieces{titlePiece(content, "EDGES ON THE READOUT", width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  for (const EdgeRow& edge : edges) {
    appendRow(pieces, edgeRow(content, edge, columns, width), again, width);
  }
  pieces.push_back(space(2.2));
  return pieces;
}

}  // namespace inchwright
