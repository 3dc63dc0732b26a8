#pragma once

#include "core/sheet/draw_list.h"

namespace inchwright {

/// An upright rectangle on paper, mm, y down.
struct PaperBox {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;

  double width() const { return right - left; }
  double height() const { return bottom - top; }
  bool meets(const PaperBox& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
  bool holds(const PaperBox& other) const {
    return left <= other.left && top <= other.top && right >= other.right && bottom >= other.bottom;
  }
  PaperBox grownBy(double margin) const {
    return {left - margin, top - margin, right + margin, bottom + margin};
  }

  bool operator==(const PaperBox&) const = default;
};

/// How far a line of text reaches above and below its baseline, as a share of the height of its
/// figures. Figures and capitals keep to the baseline; small letters and accents reach further.
struct TextReach {
  double above = 1;
  double below = 0;
};
TextReach reachOf(std::string_view text);

/// The box a text fills: the sum of its advances by the reach of its characters. Exact for turns
/// by multiples of 90°; for others the upright box around it. `+1.1875` in figures of 4 mm is about
/// 16 mm wide and 4 mm high.
PaperBox boundsOf(const TextItem& text);

/// The box an item fills, strokes included.
PaperBox boundsOf(const DrawItem& item);

}  // namespace inchwright
