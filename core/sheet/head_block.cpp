#include "core/sheet/head_block.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/writing.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kBandHeight = 11;
/// The name of the part, and the stamp: on the first page, and on those that follow.
constexpr double kNameHeight = 8.5;
constexpr double kNameAgain = 5.0;

std::string inWords(int count) {
  constexpr std::array kWords{"none",  "one",   "two",  "three", "four",   "five",  "six",
                              "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  if (count >= 0 && count < static_cast<int>(kWords.size())) {
    return kWords[static_cast<std::size_t>(count)];
  }
  return std::to_string(count);
}

std::string setupInWords(const SheetContent& content) {
  const SetupTable& table = content.table;
  std::string words = std::string(nameOf(table.face)) + " face up, ";
  words += table.turn == 0 ? "not turned"
                           : "turned " + std::to_string(table.turn) + "\u00B0 " +
                                 inEnglish("anticlockwise", content.options.english);
  words += " \u00B7 make " + inWords(content.part.quantity);
  if (!content.part.material.empty()) words += " in " + content.part.material;
  if (!content.part.hand.empty()) words += " \u00B7 " + content.part.hand + " hand";
  return words;
}

/// The name as big as it goes: in one line if it can be, else in two; a very long one in more.
std::vector<LaidLine> nameLines(const std::string& name, double width, double mostHeight) {
  struct Try {
    double height;
    std::size_t mostLines;
  };
  std::vector<LaidLine> lines;
  for (const Try& one : {Try{8.5, 1}, {7.5, 1}, {6.5, 1}, {6.5, 2}, {5.0, 2}, {3.6, 2}}) {
    if (one.height > mostHeight) continue;
    lines = layText(name, {one.height, Typeface::bold}, width);
    if (lines.size() <= one.mostLines) break;
  }
  return lines;
}

/// The name, with the stamp of a draft at its right.
Piece namePiece(const SheetContent& content, double width, double mostHeight) {
  const bool draft = content.solution.isDraft();
  const double stampWidth = textWidth("DRAFT", mostHeight, Typeface::bold) + 7;
  const double room = draft ? width - stampWidth - 5 : width;
  const LaidLine name = stacked(nameLines(content.part.name, room, mostHeight));
  Piece piece;
  piece.sketch.add(name.sketch, 0, -1.5);
  piece.height = name.height - 1.5;
  if (draft) {
    const PaperBox stamp{width - stampWidth + 0.6, 0.6, width - 0.6, mostHeight + 5.4};
    piece.sketch.box(stamp, {Ink::black, 1.2, {}});
    piece.sketch.text((stamp.left + stamp.right) / 2, stamp.bottom - 2.4, "DRAFT",
                      {mostHeight, Typeface::bold, TextAlign::centre});
    piece.height = std::max(piece.height, stamp.bottom + 1.5);
  }
  return piece;
}

/// The bar that says which unit and step the figures are in: white on black.
Piece unitPiece(const SheetContent& content, double width) {
  const Step& step = content.table.step;
  const std::string unit =
      step.unit == Unit::inch ? "INCHES" : inEnglish("MILLIMETRES", content.options.english);
  const std::string steps = "step " + writeDecimal(step.size, step.unit);
  const Sketch::Look big{6.8, Typeface::bold, TextAlign::left, Ink::white};
  const Sketch::Look less{4.2, Typeface::bold, TextAlign::right, Ink::white};
  const double wide =
      textWidth(unit, big.height, big.face) + textWidth(steps, less.height, less.face);
  const bool oneLine = wide + 12 < width;
  Piece piece;
  piece.height = oneLine ? kBandHeight : kBandHeight + 6.5;
  piece.sketch.fill({0, 0, width, piece.height});
  piece.sketch.text(3.5, 8.9, unit, big);
  piece.sketch.text(width - 3.5, oneLine ? 7.6 : kBandHeight + 4, steps, less);
  return piece;
}

struct Cell {
  std::string label;
  std::string value;
};

std::vector<Cell> cellsOf(const SheetContent& content, std::size_t page, std::size_t pages) {
  std::vector<Cell> cells{{"PRINT", content.job.print}, {"JOB", content.job.title}};
  // Short, it mostly stands beside the job's name, and takes no line of its own from the picture.
  cells.push_back({"PAGE", std::to_string(page) + " of " + std::to_string(pages)});
  cells.push_back({"DATE", content.options.date});
  cells.push_back({"SHEET", content.number});
  cells.push_back({"EDITION", editionName(content.edition, content.options.isNoted)});
  return cells;
}

/// Label above value, side by side as far as the width goes.
Piece cellsPiece(const SheetContent& content, double width, const std::vector<Cell>& cells) {
  constexpr double kBetween = 4.5;
  const Sketch::Look label{content.style.cell(), Typeface::regular, TextAlign::left, Ink::black};
  const Sketch::Look value{content.style.body(), Typeface::bold};
  Piece piece;
  double x = 0;
  double rowHeight = 0;
  for (const Cell& cell : cells) {
    const LaidLine lines = stacked(layText(cell.value, value, width));
    double wide = textWidth(cell.value, value.height, value.face);
    wide = std::max({std::min(wide, width), 14.0, textWidth(cell.label, label.height, label.face)});
    if (x > 0 && x + wide > width) {
      piece.height += rowHeight + 0.8;
      x = rowHeight = 0;
    }
    const double labelled = label.height * 1.2;
    piece.sketch.text(x, piece.height + labelled, cell.label, label);
    piece.sketch.add(lines.sketch, x, piece.height + labelled + 0.2);
    rowHeight =
        std::max(rowHeight, labelled + 0.2 + std::max(lines.height, value.height * kLineSpacing));
    x += wide + kBetween;
  }
  piece.height += rowHeight;
  return piece;
}

}  // namespace

Piece headPiece(const SheetContent& content, double width, std::size_t page, std::size_t pages) {
  const Sketch::Look strong{content.style.title(), Typeface::bold};
  const Sketch::Look plain{content.style.title(), Typeface::regular};
  const std::vector<Run> setup{{"SETUP " + content.table.setup, strong},
                               {setupInWords(content), plain}};
  const LaidLine words = stacked(layParagraph(setup, width));
  Piece setupPiece;
  setupPiece.sketch = words.sketch;
  setupPiece.height = words.height;
  return joined({namePiece(content, width, page > 1 ? kNameAgain : kNameHeight),
                 unitPiece(content, width), space(0.8), setupPiece, space(0.6),
                 cellsPiece(content, width, cellsOf(content, page, pages))});
}

Piece footPiece(const SheetContent& content, double width) {
  const Sketch::Look plain{content.style.caution(), Typeface::regular};
  const Sketch::Look strong{content.style.caution(), Typeface::bold};
  const std::vector<Run> words{
      {"Sheet " + content.number +
           " replaces every earlier one of this part and setup: destroy those.",
       strong},
      {"Eye protection on, guards on, work clamped, speeds from the tool's maker. The machine's "
       "manual, local rules and qualified practice come first.",
       plain}};
  Piece piece;
  piece.sketch.line({0, 0.4}, {width, 0.4}, {Ink::black, kThin, {}});
  const LaidLine lines = stacked(layParagraph(words, width));
  piece.sketch.add(lines.sketch, 0, 0.6);
  piece.height = lines.height + 0.6;
  return piece;
}

}  // namespace inchwright
