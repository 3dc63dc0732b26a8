#pragma once

#include <vector>

#include "core/seen/plane.h"

namespace inchwright::seen {

/// A nearly level stroke from (x0, y0) to (x1, y1), x0 < x1, in pixels.
struct Stroke {
  double x0 = 0;
  double x1 = 0;
  double y0 = 0;
  double y1 = 0;
  double thick = 0;  ///< pixels of full ink across

  double length() const { return x1 - x0; }
  double yAt(double x) const { return length() < 1 ? y0 : y0 + (y1 - y0) * (x - x0) / length(); }
};

/// Strokes in line with one another, from the left.
using Chain = std::vector<Stroke>;

/// Level strokes at least `least` pixels long; `inch` is the sheet's. A stroke may rise by a
/// fiftieth of its length and be a sixteenth of an inch thick. In the order of their tops.
std::vector<Stroke> levelStrokes(const Grey& cover, double inch, double least,
                                 const Stop& stop = Stop());

/// Strokes no further apart than `gap` and no more out of line than `stray`, all in pixels,
/// gathered. Every stroke is in one chain.
std::vector<Chain> chained(std::vector<Stroke> strokes, double gap, double stray,
                           const Stop& stop = Stop());

/// The one stroke that runs best through a chain.
Stroke through(const Chain& chain);

}  // namespace inchwright::seen
