#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/geometry/path.h"
#include "core/part/outlined.h"

namespace inchwright {

// The three ways of the trade to cut a round or an arc of an outline, as pure geometry: inches,
// and degrees anticlockwise as the work lies on the machine.

/// A curve as it lies: from `start` anticlockwise to `end` about its centre.
struct CurveAsItLies {
  PlaneCircle circle;
  double start = 0;       ///< degrees
  double sweep = 0;       ///< degrees, above 0; 360 for a full circle
  bool isInside = false;  ///< the metal lies outside the circle: a hollow, a pocket's corner
  // Whether the outline turns away there, so that a cutter that runs on leaves the metal; it does
  // not where a straight side goes on in touch.
  bool startsInAir = false;
  bool endsInAir = false;
};

/// What the table's dial shows from touching point to touching point, in the order of cut.
struct DialReadings {
  double start = 0;  ///< degrees, 0 ≤ … < 360
  double end = 0;
  /// The table turns clockwise, seen from above, for an outside and anticlockwise for an inside:
  /// then a right-hand cutter cuts conventionally.
  bool isTurnedClockwise = true;
  bool overrunRefused = false;  ///< asked for where an end runs into the metal: left out

  bool operator==(const DialReadings&) const = default;
};

/// A work's angle α is under the cutter at dial φ − α, φ = 0, 90, 180, 270 for a cutter to the
/// right, away, left, towards; at α − φ where the dial goes up while the table turns clockwise.
DialReadings dialReadings(const CurveAsItLies& curve, CutterAt at, bool dialCountsClockwise,
                          double overrun);

/// How far the spindle stands from the table's centre: R + r outside, R − r inside. Empty where the
/// cutter does not fit in.
std::optional<double> spindleDistance(const CurveAsItLies& curve, double cutterDiameter);

/// What stays between two places a standing cutter went down at, `apart` degrees of the curve from
/// each other: the height of the ridge. Empty where they are too far apart to meet at all.
///
/// Outside h = (R + r) cos φ/2 − √(r² − (R + r)² sin² φ/2) − R, inside
/// h = R − (R − r) cos φ/2 − √(r² − (R − r)² sin² φ/2).
std::optional<double> ridgeBetween(const CurveAsItLies& curve, double cutterDiameter, double apart);

/// Where the cutter's centre goes, and the ridge that stays.
struct CutterPoints {
  std::vector<PlanePoint> points;  ///< evenly, first and last at the ends of the curve
  std::optional<double> ridge;     ///< empty: too far apart

  bool operator==(const CutterPoints&) const = default;
};

inline constexpr int kMostCutterPoints = 10'000;

/// By count, both ends counted. Requires: 2 ≤ count ≤ kMostCutterPoints, the cutter fits.
CutterPoints pointsByCount(const CurveAsItLies& curve, double cutterDiameter, int count);
/// The fewest that keep to a ridge above 0; empty where it would take more than kMostCutterPoints.
std::optional<CutterPoints> pointsByRidge(const CurveAsItLies& curve, double cutterDiameter,
                                          double greatestRidge);

}  // namespace inchwright
