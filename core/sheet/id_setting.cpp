#include "core/sheet/id_setting.h"

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

#include "core/sheet/paragraph.h"
#include "core/sheet/text_measure.h"

namespace inchwright {

namespace {

constexpr std::size_t kMostIdLines = 3;

bool fitsInOneLine(std::string_view id, double width, double height) {
  return textWidth(id, height, Typeface::bold) <= width + 1e-9;
}

Sketch::Look smallLook(double height) {
  return {height * 0.45, Typeface::bold};
}

}  // namespace

IdExtent idExtent(std::string_view id, double baseline, double width, double height) {
  if (fitsInOneLine(id, width, height)) return {baseline + reachOf(id).below * height + 0.3, true};
  const std::vector<double> lines = lineHeights({{std::string(id), smallLook(height)}}, width);
  if (lines.size() > kMostIdLines) {
    return {baseline + reachOf("\u2026").below * height * 0.6, false};
  }
  return {std::accumulate(lines.begin(), lines.end(), 1.0), true};
}

bool setId(Piece& piece, std::string_view id, double left, double baseline, double width,
           double height) {
  const IdExtent extent = idExtent(id, baseline, width, height);
  piece.height = std::max(piece.height, extent.height);
  if (fitsInOneLine(id, width, height)) {
    piece.sketch.text(left, baseline, id, {height, Typeface::bold});
  } else if (extent.named) {
    piece.sketch.add(stacked(layText(id, smallLook(height), width)).sketch, left, 0.6);
  } else {
    piece.sketch.text(left, baseline, "\u2026", {height * 0.6, Typeface::bold});
  }
  return extent.named;
}

}  // namespace inchwright
