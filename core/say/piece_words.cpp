#include "core/say/piece_words.h"

#include "core/base/listed.h"
#include "core/say/figure_words.h"

namespace inchwright {

std::string pieceWords(const PieceLeft& piece, const Step& shown) {
  std::string text;
  for (std::size_t i = 0; i < piece.left.size(); ++i) {
    if (!piece.left[i]) continue;
    text += (text.empty() ? "" : ", ") + std::string(nameOf(static_cast<Side>(i))) + " " +
            atStep(*piece.left[i], shown);
  }
  return "piece " + piece.name + ": left to come off " + text +
         (piece.cleansUp ? "" : ": it does not clean up");
}

std::vector<std::string> otherwiseWords(const PutInOtherwise& put, const Step& shown) {
  const bool ends = put.how == PutInOtherwise::How::endForEnd;
  const auto side = [&](Side at, Length left) {
    const std::string name(nameOf(at));
    return left.isZero() ? name : name + " with " + atStep(left, shown) + " left on it";
  };
  std::vector<std::string> lines;
  lines.push_back(
      std::string(ends ? "Put in end for end" : "Turned over along the jaws") + ", " +
      side(put.atStop, put.leftAtStop) + " at the stop, " + side(put.atJaw, put.leftAtJaw) +
      " at the fixed jaw: " + (put.pieces.size() > 1 ? "pieces " : "piece ") + listed(put.pieces) +
      (ends ? "; zero stays where it is, X and Y are then"
            : "; zero stays where it is, the places seen through from below are then"));
  for (const PutInOtherwise::Row& row : put.rows) {
    lines.push_back(row.id + ": X " + signedText(row.x) + ", Y " + signedText(row.y));
  }
  return lines;
}

}  // namespace inchwright
