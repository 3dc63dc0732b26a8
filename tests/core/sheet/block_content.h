#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/say/doubt_words.h"
#include "core/sheet/flow.h"
#include "core/sheet/sheet_number.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {

/// Of sums of advances; far below what an eye sees, mm.
inline constexpr double kRounding = 1e-6;

/// What the blocks of a sheet draw on, filled in as a Composition does. The sheet outlives it.
inline SheetContent contentOf(const MadeSheet& made) {
  SheetContent content{made.job, made.part, made.solution, made.table, &made.picture, made.options};
  content.held = &made.held;
  content.words = setupWords(made.part, made.table, made.options.english);
  content.doubts = doubtTexts(made.part, made.solution, made.options.english);
  content.number = sheetNumber(content);
  content.rows = extentsOf(made.table, made.options.english);
  return content;
}

inline Sketch drawn(const Piece& piece) {
  Sketch sketch;
  piece.drawOnto(sketch, 0, 0);
  return sketch;
}

inline std::vector<TextItem> textsOf(const Sketch& sketch) {
  std::vector<TextItem> texts;
  for (const DrawItem& item : sketch.items()) {
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(*text);
  }
  return texts;
}

/// Of a block, where its pieces lie below each other.
inline std::vector<TextItem> textsOf(const Pieces& pieces) {
  return textsOf(joined(pieces).sketch);
}

/// All that is said in a block, in the order of painting, with a space after each text.
inline std::string saidIn(const Pieces& pieces) {
  std::string all;
  for (const TextItem& text : textsOf(pieces)) all += text.text + " ";
  return all;
}

/// The boxes to tick of a sketch: square, empty and not filled.
inline std::vector<PaperBox> tickBoxesOf(const Sketch& sketch) {
  std::vector<PaperBox> boxes;
  for (const DrawItem& item : sketch.items()) {
    const auto* shape = std::get_if<PolylineItem>(&item);
    if (!shape || !shape->closed || shape->filled || shape->points.size() != 4) continue;
    const PaperBox box{shape->points[0].x, shape->points[0].y, shape->points[2].x,
                       shape->points[2].y};
    if (std::abs(box.width() - box.height()) < 1e-9) boxes.push_back(box);
  }
  return boxes;
}

}  // namespace inchwright
