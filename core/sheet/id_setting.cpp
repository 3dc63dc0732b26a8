#include "core/sheet/id_setting.h"

#include <algorithm>

#include "core/sheet/paragraph.h"
#include "core/sheet/text_measure.h"

namespace inchwright {

bool setId(Piece& piece, std::string_view id, double left, double baseline, double width,
           double height) {
  constexpr std::size_t kMostLines = 3;
  constexpr double kSlack = 1e-9;
  const Sketch::Look big{height, Typeface::bold};
  if (textWidth(id, big.height, big.face) <= width + kSlack) {
    piece.sketch.text(left, baseline, id, big);
    piece.height = std::max(piece.height, baseline + reachOf(id).below * height + 0.3);
    return true;
  }
  const std::vector<LaidLine> lines = layText(id, {height * 0.45, Typeface::bold}, width);
  if (lines.size() > kMostLines) {
    piece.sketch.text(left, baseline, "\u2026", {height * 0.6, Typeface::bold});
    piece.height = std::max(piece.height, baseline + reachOf("\u2026").below * height * 0.6);
    return false;
  }
  const LaidLine all = stacked(lines);
  piece.sketch.add(all.sketch, left, 0.6);
  piece.height = std::max(piece.height, all.height + 1.0);
  return true;
}

}  // namespace inchwright
