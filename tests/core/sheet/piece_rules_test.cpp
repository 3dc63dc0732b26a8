// What every block keeps to, however wide: each piece is as high as what stands in it, so that
// pieces laid below each other never run into one another, and nothing leaves its column.
#include <gtest/gtest.h>

#include <functional>

#include "core/sheet/bounds.h"
#include "core/sheet/closeness_block.h"
#include "core/sheet/head_block.h"
#include "core/sheet/milled_block.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/places_block.h"
#include "core/sheet/rows_block.h"
#include "core/sheet/zero_block.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

/// Ascenders may reach so far into the hairline above, mm.
constexpr double kHairsBreadth = 0.3;

struct Block {
  const char* name;
  Pieces (*pieces)(const SheetContent&, double width);
};

constexpr Block kBlocks[] = {{"zero", zeroPieces},     {"warnings", warningPieces},
                             {"checks", checkPieces},  {"rows", rowsPieces},
                             {"milled", milledPieces}, {"queries", queryPieces},
                             {"edges", edgePieces},    {"closeness", closenessPieces},
                             {"curves", curvePieces},  {"direct checks", directCheckPieces}};

/// The columns of a sheet on A4: all of it upright, and on its side the words beside the rows,
/// which take what they need.
std::vector<double> columnsOf(const SheetContent& content) {
  std::vector<double> widths{191};
  const double beside = 271 - rowsWidth(content, RowShape::fractionsBelow);
  if (beside >= 88) widths.push_back(std::min(beside, 122.0));
  return widths;
}

void expectTextsKeepTo(const Piece& piece, double width) {
  const PaperBox room = PaperBox{0, 0, width, piece.height}.grownBy(kHairsBreadth);
  for (const TextItem& text : textsOf(drawn(piece))) {
    const PaperBox box = boundsOf(text);
    if (room.holds(box)) continue;
    ADD_FAILURE() << '"' << text.text << "\" " << box.left << ' ' << box.top << ' ' << box.right
                  << ' ' << box.bottom << " leaves " << width << " by " << piece.height;
    return;
  }
}

TEST(PieceRules, TextsStayInTheirPiece) {
  for (unsigned seed = 1; seed <= 150; ++seed) {
    RandomSheets random(seed);
    const MadeSheet made = random.next(random.between(0, 25));
    const SheetContent content = contentOf(made);
    for (const Block& block : kBlocks) {
      for (const double width : columnsOf(content)) {
        SCOPED_TRACE("seed " + std::to_string(seed) + " " + block.name + " " +
                     std::to_string(width));
        for (const Piece& piece : block.pieces(content, width)) {
          expectTextsKeepTo(piece, width);
          if (piece.heading) expectTextsKeepTo(*piece.heading, width);
        }
        if (HasFailure()) return;
      }
    }
  }
}

}  // namespace
}  // namespace inchwright
