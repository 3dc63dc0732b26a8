#pragma once

#include <array>
#include <vector>

#include "core/seen/net.h"
#include "core/seen/strokes.h"

namespace inchwright::seen {

inline constexpr int kPatchWide = 36;
inline constexpr int kPatchHigh = 20;
/// What lies round a place, 100 pixels to the sheet's inch.
using Patch = std::array<std::uint8_t, kPatchWide * kPatchHigh>;

/// The print as its level lines show it, or its plumb ones with rows and columns changed over.
struct View {
  Grey cover;
  Grey half;  ///< the cover half as fine, where the sheet's inch has pixels to spare
  double inch = 0;
  std::vector<Stroke> strokes;  ///< level ones
  std::vector<Chain> lines;     ///< those gathered over small gaps
  std::vector<Chain> plumbs;  ///< the plumb ones, over the gaps of a centre line: their x runs down
};

/// Where a dimension line may end, and how far it looks like it.
struct End {
  double x = 0;
  double y = 0;
  bool crossed = false;  ///< a line that carries a place out crosses here, longer than a letter
  float left = 0;        ///< 0 … 1: a dimension line runs on to the left
  float right = 0;
};

Patch patchAt(const View& view, double x, double y);
/// The places: crossings of thin lines with plumb ones, ink on both sides of a plumb line, and
/// free ends. Not yet judged.
std::vector<End> placesOfEnds(const View& view, const Stop& stop = Stop());
/// Judges them.
void judge(const View& view, const Net& net, std::vector<End>& ends, const Stop& stop);

}  // namespace inchwright::seen
