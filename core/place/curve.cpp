#include "core/place/curve.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

// 0 ≤ … < 360; what is within a millionth below a full turn is 0.
double onDial(double degrees) {
  double on = std::fmod(degrees, 360);
  if (on < 0) on += 360;
  return on > 360 - 1e-6 ? 0 : on;
}

double cutterRadiusOfWay(const CurveAsItLies& curve, double cutterDiameter) {
  return curve.circle.radius + (curve.isInside ? -1 : 1) * cutterDiameter / 2;
}

}  // namespace

DialReadings dialReadings(const CurveAsItLies& curve, CutterAt at, bool dialCountsClockwise,
                          double overrun) {
  DialReadings out;
  out.isTurnedClockwise = !curve.isInside;
  const bool isWhole = curve.sweep >= 360;
  out.overrunRefused = overrun > 0 && (isWhole || !curve.startsInAir || !curve.endsInAir);
  const double beyond = out.overrunRefused ? 0 : std::max(overrun, 0.0);
  // The cutter goes anticlockwise over the work round an outside, clockwise round an inside.
  double from = curve.start - beyond;
  double to = curve.start + curve.sweep + beyond;
  if (curve.isInside) std::swap(from, to);
  const double phi = 90.0 * static_cast<int>(at);
  const double sign = dialCountsClockwise ? -1 : 1;
  out.start = onDial(sign * (phi - from));
  out.end = onDial(sign * (phi - to));
  return out;
}

std::optional<double> spindleDistance(const CurveAsItLies& curve, double cutterDiameter) {
  const double distance = cutterRadiusOfWay(curve, cutterDiameter);
  if (!(cutterDiameter > 0) || distance < 0) return std::nullopt;
  return distance;
}

std::optional<double> ridgeBetween(const CurveAsItLies& curve, double cutterDiameter,
                                   double apart) {
  const double way = cutterRadiusOfWay(curve, cutterDiameter);
  const double r = cutterDiameter / 2;
  const double half = apart * kDegree / 2;
  const double beside = way * std::sin(half);
  const double under = r * r - beside * beside;
  if (under < 0 || half >= std::numbers::pi / 2) return std::nullopt;
  const double along = way * std::cos(half);
  const double root = std::sqrt(under);
  const double radius = curve.circle.radius;
  if (curve.isInside) return radius - along - root;
  return along - root - radius;
}

CutterPoints pointsByCount(const CurveAsItLies& curve, double cutterDiameter, int count) {
  CutterPoints out;
  const double way = cutterRadiusOfWay(curve, cutterDiameter);
  // Round a full circle the last point is the first again, and is left out.
  const bool isWhole = curve.sweep >= 360;
  const double apart = curve.sweep / (isWhole ? count : count - 1);
  for (int i = 0; i < count; ++i) {
    const double angle = (curve.start + apart * i) * kDegree;
    out.points.push_back({curve.circle.centre.x + way * std::cos(angle),
                          curve.circle.centre.y + way * std::sin(angle)});
  }
  out.ridge = ridgeBetween(curve, cutterDiameter, apart);
  return out;
}

std::optional<CutterPoints> pointsByRidge(const CurveAsItLies& curve, double cutterDiameter,
                                          double greatestRidge) {
  const bool isWhole = curve.sweep >= 360;
  const auto keeps = [&](int count) {
    const auto ridge =
        ridgeBetween(curve, cutterDiameter, curve.sweep / (isWhole ? count : count - 1));
    return ridge && *ridge <= greatestRidge;
  };
  if (!keeps(kMostCutterPoints)) return std::nullopt;
  int fewest = 2;
  for (int most = kMostCutterPoints; fewest < most;) {
    const int middle = (fewest + most) / 2;
    if (keeps(middle)) {
      most = middle;
    } else {
      fewest = middle + 1;
    }
  }
  return pointsByCount(curve, cutterDiameter, fewest);
}

}  // namespace inchwright
