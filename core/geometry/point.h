#pragma once

#include <cmath>

namespace inchwright {

/// A point in a plane, or a way in it: the one type for all of them. The unit and frame are said
/// where it is used: inches of a face, millimetres from zero on the table, millimetres down a page.
/// Never a print dimension: those are whole ticks (`Length`).
struct PlanePoint {
  double x = 0;
  double y = 0;

  bool operator==(const PlanePoint&) const = default;
};

constexpr PlanePoint operator+(PlanePoint a, PlanePoint b) {
  return {a.x + b.x, a.y + b.y};
}
constexpr PlanePoint operator-(PlanePoint a, PlanePoint b) {
  return {a.x - b.x, a.y - b.y};
}
constexpr PlanePoint operator*(PlanePoint p, double factor) {
  return {p.x * factor, p.y * factor};
}

constexpr double dot(PlanePoint a, PlanePoint b) {
  return a.x * b.x + a.y * b.y;
}
/// Positive where `b` lies anticlockwise of `a`, with y up.
constexpr double cross(PlanePoint a, PlanePoint b) {
  return a.x * b.y - a.y * b.x;
}

/// The distance squared: (0, 0) to (3, 4) is 25.
constexpr double squareBetween(PlanePoint a, PlanePoint b) {
  return dot(b - a, b - a);
}
/// The distance: (0, 0) to (3, 4) is 5.
inline double between(PlanePoint a, PlanePoint b) {
  return std::sqrt(squareBetween(a, b));
}

}  // namespace inchwright
