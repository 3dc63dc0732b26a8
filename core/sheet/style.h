#pragma once

#include <algorithm>

#include "core/sheet/draw_list.h"

namespace inchwright {

/// How near and how far away a sheet can be read, mm: beyond these its figures would be too small
/// for a pencil, or fill the paper.
inline constexpr double kNearestReading = 300;
inline constexpr double kFarthestReading = 3000;

/// The heights of a sheet's lettering in mm (of figures), from the distance it is read from.
///
/// What is read from the spindle grows with the distance: 8 mm at 1 m for the coordinates (27
/// minutes of arc), and 5.8 mm (20 minutes of arc) for the figures that are needed once.
/// What is read with the sheet in hand grows less.
struct Style {
  /// `readingDistance` in mm; held to the two above.
  explicit Style(double readingDistance)
      : scale(std::clamp(readingDistance, kNearestReading, kFarthestReading) / 1000),
        hand(std::clamp(scale, 0.9, 1.4)) {}

  double scale;
  double hand;

  double figure() const { return 8 * scale; }
  double second() const { return 5.8 * scale; }
  double tool() const { return 4.4 * scale; }
  double title() const { return 3.4 * hand; }
  double label() const { return 3.6 * hand; }
  double body() const { return 2.8 * hand; }
  double cell() const { return 1.9 * hand; }
  double caution() const { return 2.1; }
};

/// From baseline to baseline, for a height of figures: room for accents and descenders.
inline constexpr double kLineSpacing = 1.68;
/// From the top of a line to its baseline.
inline constexpr double kAboveBaseline = 1.32;

/// The weights of rules, mm.
inline constexpr double kHairline = 0.15;
inline constexpr double kThin = 0.25;
inline constexpr double kMedium = 0.5;
inline constexpr double kHeavy = 0.9;

}  // namespace inchwright
